import { at } from "../foundation/index.ts";
import type { Making } from "../project/index.ts";
import type { BoardSheet } from "./board-types.ts";
import { bodyOfRib } from "./body-of-rib.ts";
import type { Stretch } from "./crossing-rib.ts";
import type { Baseboard, Rib } from "./types.ts";

/** A joint of the baseboard keeps so far from the ribs that lie along it, mm. */
const FROM_RIB_MM = 30;
const STEP_MM = 5;

/**
 * The sheets that a baseboard is made of, front to rear and then left to right: as few as the sheet's size allows, laid
 * the way that needs fewer, with their joints clear of ribs that run the same way where there is room.
 */
export function boardSheets(
  [least, most]: Baseboard["corners"],
  ribs: readonly Rib[],
  { baseLengthMm, baseWidthMm }: Making,
): readonly BoardSheet[] {
  const busy = (runs: Rib["runs"]): Stretch[] =>
    ribs
      .filter((rib) => rib.runs === runs)
      .map((rib) => {
        const [fromMm, toMm] = bodyOfRib(rib);
        return [fromMm - FROM_RIB_MM, toMm + FROM_RIB_MM];
      });
  const count = (lengthMm: number, sheetMm: number) => Math.max(1, Math.ceil(lengthMm / sheetMm - 1e-9));
  const [lengthMm, widthMm] = [most.x - least.x, most.y - least.y];
  if (!(lengthMm > 0 && widthMm > 0)) return [];
  const ways = [
    [baseLengthMm, baseWidthMm],
    [baseWidthMm, baseLengthMm],
  ] as const;
  const [alongMm, acrossMm] = at(
    [...ways].sort(
      (a, b) => count(lengthMm, a[0]) * count(widthMm, a[1]) - count(lengthMm, b[0]) * count(widthMm, b[1]),
    ),
    0,
  );
  const xs = borders([least.x, most.x], alongMm, busy("across"));
  const ys = borders([least.y, most.y], acrossMm, busy("along"));
  return xs.slice(1).flatMap((toX, i) =>
    ys.slice(1).map(
      (toY, k): BoardSheet => ({
        id: `B${i * (ys.length - 1) + k + 1}`,
        corners: [
          { x: at(xs, i), y: at(ys, k) },
          { x: toX, y: toY },
        ],
      }),
    ),
  );
}

/** Where one sheet ends and the next begins: even, moved aside from ribs as far as the sheets reach. */
function borders([fromMm, toMm]: Stretch, sheetMm: number, busy: readonly Stretch[]): readonly number[] {
  const pieces = Math.max(1, Math.ceil((toMm - fromMm) / sheetMm - 1e-9));
  const found = [fromMm];
  for (let i = 1; i < pieces; i++) {
    const wishMm = fromMm + ((toMm - fromMm) * i) / pieces;
    const [lowMm, highMm] = [toMm - (pieces - i) * sheetMm, at(found, -1) + sheetMm];
    found.push(freeNear(wishMm, [lowMm, highMm], busy));
  }
  return [...found, toMm];
}

function freeNear(wishMm: number, [lowMm, highMm]: Stretch, busy: readonly Stretch[]): number {
  const isFree = (mm: number) => mm >= lowMm && mm <= highMm && busy.every(([a, b]) => mm <= a || mm >= b);
  for (let asideMm = 0; asideMm <= highMm - lowMm; asideMm += STEP_MM) {
    const place = [wishMm + asideMm, wishMm - asideMm].find(isFree);
    if (place !== undefined) return place;
  }
  return Math.min(Math.max(wishMm, lowMm), highMm);
}
