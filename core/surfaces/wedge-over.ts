import type { PlanPoint } from "../foundation/index.ts";
import type { FaceDepths } from "../laminate/index.ts";
import { endlessFaceOver, faceOver } from "./face-height.ts";
import type { SectionSheet } from "./types.ts";

/** Looking beside a joint goes this far beyond the wedge itself, mm. */
const BESIDE_MM = 0.05;

/** Directions in which a neighbour is looked for, an eighth of a turn apart. */
const AROUND = Array.from(
  { length: 8 },
  (_, i) => [Math.cos((i * Math.PI) / 4), Math.sin((i * Math.PI) / 4)] as const,
);

/**
 * The height of a face inside the wedge of a joint, where the faces of both sheets end square short of the mitre:
 * the lower of the two as they go on, which meet on the mitre plane. Undefined where there is no joint: a sheet
 * must cover the plan point itself, and another sheet (or the first one's own image across the centre line) must
 * lie within reach. The sheets are those of the right or whole hand.
 */
export function wedgeOver(
  sheets: readonly SectionSheet[],
  depthOf: (depths: FaceDepths) => number,
): (p: PlanPoint) => { readonly sheetId: string; readonly z: number } | undefined {
  const ready = sheets.map((sheet) => ({
    sheet,
    reachMm: Math.abs(depthOf(sheet.depths)) + BESIDE_MM,
    drawn: faceOver(sheet, 0),
    endless: endlessFaceOver(sheet, depthOf(sheet.depths)),
    hasCentreJoint:
      sheet.hands.length === 2 &&
      sheet.loops.some(({ edges }) => edges.some(({ role }) => role === "centre")),
  }));
  return (p) => {
    if (!ready.some(({ drawn }) => drawn(p) !== undefined)) return undefined;
    const near = ready.filter(({ drawn, reachMm }) =>
      AROUND.some(([dx, dy]) => drawn({ x: p.x + dx * reachMm, y: p.y + dy * reachMm }) !== undefined),
    );
    const images = near.filter(({ hasCentreJoint, reachMm }) => hasCentreJoint && Math.abs(p.y) <= reachMm);
    if (near.length + images.length < 2) return undefined;
    const faces = [
      ...near.map(({ sheet, endless }) => ({ sheetId: sheet.id, z: endless(p).z })),
      ...images.map(({ sheet, endless }) => ({ sheetId: sheet.id, z: endless({ x: p.x, y: -p.y }).z })),
    ];
    return faces.reduce((lowest, face) => (face.z < lowest.z ? face : lowest));
  };
}
