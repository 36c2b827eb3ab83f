import type { PlanPoint } from "../foundation/index.ts";
import type { FaceDepths } from "../laminate/index.ts";
import { endlessFaceOver, faceOver } from "./face-height.ts";
import type { LyingSheet } from "./types.ts";

/** On a border a point counts as inside, and looking beside a joint goes this far beyond its wedge, mm. */
const BESIDE_MM = 0.05;

/** Directions in which a neighbour is looked for, an eighth of a turn apart. */
const AROUND = Array.from(
  { length: 8 },
  (_, i) => [Math.cos((i * Math.PI) / 4), Math.sin((i * Math.PI) / 4)] as const,
);

/**
 * The height of a face where it ends square short of the plan point though a sheet's drawn surface is there: in the
 * wedge of a joint the lower of the faces of both sheets as they go on, which meet on the mitre plane. With `where`
 * "also under free edges", the sheet's own face as it goes on counts under an edge that leans. Undefined where no
 * drawn surface is. A sheet's own image across the centre line counts as its neighbour there. The sheets are those
 * of the right or whole hand.
 */
export function wedgeOver(
  sheets: readonly LyingSheet[],
  depthOf: (depths: FaceDepths) => number,
  where: "in joints" | "also under free edges",
): (p: PlanPoint) => { readonly sheetId: string; readonly z: number } | undefined {
  const leastFaces = where === "in joints" ? 2 : 1;
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
    const isWithin = ({ drawn }: (typeof ready)[number], reachMm: number) =>
      AROUND.some(([dx, dy]) => drawn({ x: p.x + dx * reachMm, y: p.y + dy * reachMm }) !== undefined);
    if (!ready.some((one) => one.drawn(p) !== undefined || isWithin(one, BESIDE_MM))) return undefined;
    const near = ready.filter((one) => isWithin(one, one.reachMm));
    const images = near.filter(({ hasCentreJoint, reachMm }) => hasCentreJoint && Math.abs(p.y) <= reachMm);
    const faces = [
      ...near.map(({ sheet, endless }) => ({ sheetId: sheet.id, z: endless(p)?.z })),
      ...images.map(({ sheet, endless }) => ({ sheetId: sheet.id, z: endless({ x: p.x, y: -p.y })?.z })),
    ].flatMap(({ sheetId, z }) => (z === undefined ? [] : [{ sheetId, z }]));
    if (faces.length < leastFaces) return undefined;
    return faces.reduce<(typeof faces)[number] | undefined>(
      (lowest, face) => (lowest === undefined || face.z < lowest.z ? face : lowest),
      undefined,
    );
  };
}
