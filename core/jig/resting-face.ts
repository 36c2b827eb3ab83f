import type { PlanPoint } from "../foundation/index.ts";
import type { FaceDepths } from "../laminate/index.ts";
import { faceOver, type LyingSheet, partIdOf, type Sheet, wedgeOver } from "../surfaces/index.ts";

/** What lies on the jig over one plan point. */
export interface Rest {
  readonly zMm: number;
  readonly partId: string;
}

/** The foam face that lies on the jig, over the whole tray, both hands. */
export interface RestingFace {
  /** Height above ground, and the part; where two parts overlap, the one that a support must stay below. */
  readonly at: (p: PlanPoint) => Rest | undefined;
  /** The box around all drawn outlines in plan; the face itself may reach a little beyond it. */
  readonly least: PlanPoint;
  readonly most: PlanPoint;
  readonly reachMm: number;
}

/** One hand of one sheet, with the box that it lies in. */
interface Image {
  readonly partId: string;
  readonly over: ReturnType<typeof faceOver>;
  readonly depthMm: number;
  readonly sideOfY: 1 | -1;
  readonly least: PlanPoint;
  readonly most: PlanPoint;
}

/**
 * The face that the tray rests on: the lower core face on an upright jig, the upper one on an inverted jig, or one at
 * any other depth. Undefined where there is no section at all.
 */
export function restingFace(
  sheets: readonly Sheet[],
  attitude: "upright" | "inverted",
  depthOf: DepthOf = restingDepth(attitude),
): RestingFace | undefined {
  const sections = sheets.filter(
    (sheet): sheet is LyingSheet => sheet.kind !== "fence" && sheet.planLoops.length > 0,
  );
  const images = sections.flatMap((sheet) => imagesOf(sheet, depthOf));
  if (images.length === 0) return undefined;
  const pick = (side: "least" | "most") => images.map((image) => image[side]);
  return {
    at: restFinder(images, { attitude, depthOf }, sections),
    least: corner(pick("least"), Math.min),
    most: corner(pick("most"), Math.max),
    reachMm: Math.max(...images.map(reachOf)),
  };
}

/** How deep the resting face of a sheet lies behind its drawn surface. */
export type DepthOf = (depths: FaceDepths) => number;

/** Behind the drawn surface lies the lower core face on an upright jig, the upper one on an inverted jig. */
export const restingDepth =
  (attitude: "upright" | "inverted"): DepthOf =>
  ({ coreLowerMm, coreUpperMm }) =>
    attitude === "upright" ? coreLowerMm : coreUpperMm;

/** Looks up what rests over a plan point: a face that is there, else the filling of a joint between two. */
function restFinder(
  images: readonly Image[],
  { attitude, depthOf }: { readonly attitude: "upright" | "inverted"; readonly depthOf: DepthOf },
  sections: readonly LyingSheet[],
): RestingFace["at"] {
  const wedge = wedgeOver(sections, depthOf, "in joints");
  const isMirrored = sections.some(({ hands }) => hands.includes("left"));
  return (p) => {
    const rest = restAt(images, attitude, p);
    if (rest) return rest;
    const filled = wedge(isMirrored ? { x: p.x, y: Math.abs(p.y) } : p);
    const sheet = sections.find(({ id }) => id === filled?.sheetId);
    if (!filled || !sheet) return undefined;
    const side = p.y < 0 ? "left" : "right";
    return { zMm: filled.z, partId: partIdOf(sheet.id, sheet.hands.length === 2 ? side : "whole") };
  };
}

/** Where a sheet slopes, a face off the drawn one ends beside its outline, by its depth at most. */
const reachOf = ({ depthMm }: Pick<Image, "depthMm">): number => Math.abs(depthMm);

function imagesOf(sheet: LyingSheet, depthOf: DepthOf): Image[] {
  const depthMm = depthOf(sheet.depths);
  const over = faceOver(sheet, depthMm);
  return sheet.hands.map((hand) => {
    const sideOfY = hand === "left" ? -1 : 1;
    const points = sheet.planLoops.flat().map(({ x, y }) => ({ x, y: sideOfY * y }));
    const partId = partIdOf(sheet.id, hand);
    return {
      partId,
      over,
      depthMm,
      sideOfY,
      least: corner(points, Math.min),
      most: corner(points, Math.max),
    };
  });
}

const corner = (points: readonly PlanPoint[], pick: (a: number, b: number) => number): PlanPoint =>
  points.reduce((best, p) => ({ x: pick(best.x, p.x), y: pick(best.y, p.y) }));

function restAt(images: readonly Image[], attitude: "upright" | "inverted", p: PlanPoint): Rest | undefined {
  let rest: Rest | undefined;
  for (const image of images) {
    if (!isInBox(image, p)) continue;
    const { partId, over, sideOfY } = image;
    const zMm = over({ x: p.x, y: sideOfY * p.y })?.z;
    if (zMm === undefined) continue;
    const isNearer = rest === undefined || (attitude === "upright" ? zMm < rest.zMm : zMm > rest.zMm);
    if (isNearer) rest = { zMm, partId };
  }
  return rest;
}

function isInBox({ least, most, depthMm }: Image, p: PlanPoint): boolean {
  const reach = reachOf({ depthMm });
  return p.x >= least.x - reach && p.x <= most.x + reach && p.y >= least.y - reach && p.y <= most.y + reach;
}
