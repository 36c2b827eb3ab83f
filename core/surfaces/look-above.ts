import type { CurveFrame } from "../curves/index.ts";
import type { PlanPoint } from "../foundation/index.ts";
import type { FaceDepths } from "../laminate/index.ts";
import type { Fence } from "../project/index.ts";
import { faceOver } from "./face-height.ts";
import type { LyingSheet, SeatStation } from "./types.ts";
import { wedgeOver } from "./wedge-over.ts";

/** Position and tangent of the fence's line at an arc length. */
export type Walk = (alongMm: number) => CurveFrame;

/** What stands above a fence at a place along it; undefined where no sheet does. */
export interface Above {
  /** The lowest sheet over the mid-plane, and the height of its seat there. */
  readonly overAt: (alongMm: number) => { readonly sheetId: string; readonly z: number } | undefined;
  /** Height of the air side over the mid-plane. */
  readonly airAt: (alongMm: number) => number | undefined;
  /** As `overAt`, with the heights at both foam faces. */
  readonly seatAt: (alongMm: number) => SeatStation | undefined;
}

/** Looks from a fence's line to the lowest face over it, among sheets of the right or whole hand. */
export function lookAbove(
  fence: Fence,
  thicknessMm: number,
  walk: Walk,
  sheets: readonly LyingSheet[],
): Above {
  const ready = (depthOf: (depths: FaceDepths) => number): readonly ReadyFace[] =>
    sheets.map((sheet) => ({ sheetId: sheet.id, over: faceOver(sheet, depthOf(sheet.depths)) }));
  const seatDepth = ({ coreLowerMm, airMm }: FaceDepths) => (fence.seat === "core" ? coreLowerMm : airMm);
  const airFaces = ready(({ airMm }) => airMm);
  const seatFaces = ready(seatDepth);
  const wedge = wedgeOver(sheets, seatDepth, "also under free edges");
  const seatOver = (p: PlanPoint) => lowestOver(seatFaces, p) ?? wedge(p);
  const beside = ({ at: middle, tangent }: CurveFrame, offsetMm: number): PlanPoint => ({
    x: middle[0] - tangent[1] * offsetMm,
    y: middle[1] + tangent[0] * offsetMm,
  });
  return {
    airAt: (alongMm) => lowestOver(airFaces, beside(walk(alongMm), 0))?.z,
    overAt: (alongMm) => seatOver(beside(walk(alongMm), 0)),
    seatAt: (alongMm) => {
      const frame = walk(alongMm);
      const over = seatOver(beside(frame, 0));
      if (!over) return undefined;
      // A face of the fence that hangs over the sheet's edge takes the height of its mid-plane.
      const leftZMm = seatOver(beside(frame, thicknessMm / 2))?.z ?? over.z;
      const rightZMm = seatOver(beside(frame, -thicknessMm / 2))?.z ?? over.z;
      const bevelRad = Math.atan2(leftZMm - rightZMm, thicknessMm);
      return {
        alongMm,
        at: beside(frame, 0),
        midZMm: over.z,
        leftZMm,
        rightZMm,
        bevelRad,
        sheetId: over.sheetId,
      };
    },
  };
}

/** The face of a sheet that a fence may meet, ready for look-ups. */
interface ReadyFace {
  readonly sheetId: string;
  readonly over: ReturnType<typeof faceOver>;
}

function lowestOver(faces: readonly ReadyFace[], p: PlanPoint): ReturnType<Above["overAt"]> {
  let lowest: ReturnType<Above["overAt"]>;
  for (const { sheetId, over } of faces) {
    const z = over(p)?.z;
    if (z !== undefined && (lowest === undefined || z < lowest.z)) lowest = { sheetId, z };
  }
  return lowest;
}
