import type { FenceBand } from "./fence-notches.ts";
import { planPoint } from "./jig-piece.ts";
import type { TopPoint } from "./top-stretches.ts";
import type { Baseboard, Rib } from "./types.ts";

/** Fences hang clear of the baseboard by this, mm. */
const FENCE_CLEARANCE_MM = 10;
/** The baseboard reaches beyond the ribs by this, mm. */
const BASE_MARGIN_MM = 50;

/** Height of the baseboard, above ground (upright) or as the level that the tray is turned over to (inverted). */
export function levelOf(
  tops: readonly TopPoint[],
  bands: readonly FenceBand[],
  { attitude, leastHeightMm }: Pick<Baseboard, "attitude"> & { readonly leastHeightMm: number },
): number {
  if (tops.length === 0) return 0;
  if (attitude === "inverted") {
    return tops.reduce((most, { zMm }) => Math.max(most, zMm), Number.NEGATIVE_INFINITY) + leastHeightMm;
  }
  const leastTopMm = tops.reduce((least, { zMm }) => Math.min(least, zMm), Number.POSITIVE_INFINITY);
  const leastFenceMm = Math.min(...bands.map(({ leastZMm }) => leastZMm));
  return Math.min(leastTopMm - leastHeightMm, leastFenceMm - FENCE_CLEARANCE_MM);
}

/** The board under some ribs: 50 mm wider all round, with the line that each stands on. */
export function baseOfRibs(
  ribs: readonly Rib[],
  { attitude, levelZMm }: Pick<Baseboard, "attitude" | "levelZMm">,
): Baseboard {
  const lines = ribs.map(({ id, runs, atMm, outlineMm }) => {
    const along = outlineMm.map(({ u }) => u);
    return {
      ribId: id,
      from: planPoint(runs, atMm, Math.min(...along)),
      to: planPoint(runs, atMm, Math.max(...along)),
    };
  });
  const ends = lines.flatMap(({ from, to }) => [from, to]);
  const edge = (pick: (...values: number[]) => number, axis: "x" | "y", marginMm: number) =>
    ends.length === 0 ? 0 : pick(...ends.map((p) => p[axis])) + marginMm;
  const corners: Baseboard["corners"] = [
    { x: edge(Math.min, "x", -BASE_MARGIN_MM), y: edge(Math.min, "y", -BASE_MARGIN_MM) },
    { x: edge(Math.max, "x", BASE_MARGIN_MM), y: edge(Math.max, "y", BASE_MARGIN_MM) },
  ];
  return { attitude, levelZMm, corners, lines };
}
