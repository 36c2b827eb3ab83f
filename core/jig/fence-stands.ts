import { type FenceSheet, partIdOf, type Sheet } from "../surfaces/index.ts";
import type { FenceStand } from "./board-types.ts";
import { heightAlong, lowerEdgeOf } from "./fence-notches.ts";

/** Stations of a fence's table are no farther apart than this, mm. */
const APART_MM = 100;

/**
 * The fences that stand in an upright jig before the sheets, and carry them: how high the lower edge of their foam is
 * blocked over the baseboard, and how high its upper edge comes out, on the mid-plane. `leftOut` are the ribs that a fence
 * stands in place of.
 */
export const fenceStands = (
  sheets: readonly Sheet[],
  levelZMm: number,
  leftOut: readonly { readonly ribId: string; readonly fencePartId: string }[],
): readonly FenceStand[] =>
  sheets.flatMap((sheet) =>
    sheet.kind === "fence" && sheet.standsFirst
      ? sheet.hands.map((hand): FenceStand => {
          const sideOfY = hand === "left" ? -1 : 1;
          const lower = lowerEdgeOf(sheet);
          const partId = partIdOf(sheet.id, hand);
          return {
            partId,
            inPlaceOf: leftOut.flatMap(({ ribId, fencePartId }) => (fencePartId === partId ? [ribId] : [])),
            stations: stationsOf(sheet).map(({ alongMm, at: { x, y }, midZMm }) => ({
              alongMm,
              at: { x, y: sideOfY * y },
              lowerMm: heightAlong(lower, alongMm) - levelZMm,
              upperMm: midZMm - levelZMm,
            })),
          };
        })
      : [],
  );

/** The stations of a seat, thinned to those that are needed for their distance; the first and the last stay. */
function stationsOf({ seat }: FenceSheet): FenceSheet["seat"] {
  let lastMm = Number.NEGATIVE_INFINITY;
  return seat.filter(({ alongMm }, i) => {
    const next = seat[i + 1];
    const isNeeded = next === undefined || next.alongMm - lastMm > APART_MM;
    if (isNeeded) lastMm = alongMm;
    return isNeeded;
  });
}

/** Which ribs are left out for fences that stand there themselves, in sentences. */
export const wordInPlace = (stands: readonly FenceStand[]): readonly string[] =>
  stands.flatMap(({ partId, inPlaceOf }) =>
    inPlaceOf.length === 0
      ? []
      : [
          `${partId} stands where rib ${inPlaceOf.join(", ")} would, and carries the sheet there: set it in its place before the ribs across, and brace it.`,
        ],
  );
