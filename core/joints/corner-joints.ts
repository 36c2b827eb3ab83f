import { type SpacePoint, toPlan } from "../foundation/index.ts";
import type { CornerFold, SectionSheet } from "../surfaces/index.ts";
import { cutOfFold } from "./cut-of-fold.ts";
import { edgesWithId } from "./edge-places.ts";
import type { GlueLine, Meetings, SheetJoint } from "./sheet-joint.ts";
import type { SetBack } from "./types.ts";

/** The joints at profile corners: along each ruling the fold and its cut are the same from end to end. */
export function cornerJoints(
  folds: readonly CornerFold[],
  sections: readonly SectionSheet[],
  glue: GlueLine,
): Meetings {
  const joints: SheetJoint[] = [];
  const setBacks: SetBack[] = [];
  for (const fold of folds) {
    const [front, rear] = fold.sheetIds.map((id) => sections.find((sheet) => sheet.id === id));
    if (!front || !rear) continue;
    const cut = cutOfFold(fold.foldRad, front.depths, rear.depths, glue);
    const setBackOf = (sheet: SectionSheet, side: 0 | 1): SetBack => ({
      sheetId: sheet.id,
      edgeId: fold.edgeId,
      edges: edgesWithId(sheet, fold.edgeId).map(() => ({
        shares: [0, 1],
        amountsMm: [cut.setBackMm[side], cut.setBackMm[side]],
        bevelsRad: [cut.bevelRad[side], cut.bevelRad[side]],
        isJoined: true,
      })),
    });
    setBacks.push(setBackOf(front, 0), setBackOf(rear, 1));
    for (const stretch of fold.stretches) {
      const edgeIds = [fold.edgeId, fold.edgeId] as const;
      const { foldRad } = fold;
      const { bevelRad, setBackMm, through } = cut;
      const station = (alongMm: number, at: SpacePoint) => ({ alongMm, at, foldRad, bevelRad, setBackMm });
      joints.push({
        kind: "corner",
        sheets: [front, rear],
        edgeIds,
        cut: cut.cut,
        ...(through !== undefined && { through }),
        lengthMm: stretch.lengthMm,
        stations: [station(0, stretch.from), station(stretch.lengthMm, stretch.to)],
        from: toPlan(stretch.from),
        to: toPlan(stretch.to),
      });
    }
  }
  return { joints, setBacks, problems: [] };
}
