import type { RunPast } from "../cutting/index.ts";
import type { PlanPoint } from "../foundation/index.ts";
import type { FaceDepths } from "../laminate/index.ts";
import {
  faceOver,
  facePast,
  type LyingSheet,
  partIdOf,
  pastLine,
  type Sheet,
  wedgeOver,
} from "../surfaces/index.ts";

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
 * any other depth; with what runs past its edges. Undefined where there is no section at all.
 */
export function restingFace(
  sheets: readonly Sheet[],
  attitude: "upright" | "inverted",
  depthOf: DepthOf = restingDepth(attitude),
  pasts: readonly RunPast[] = [],
): RestingFace | undefined {
  const sections = sheets.filter(
    (sheet): sheet is LyingSheet => sheet.kind !== "fence" && sheet.planLoops.length > 0,
  );
  const own = (sheet: LyingSheet) => pasts.filter(({ sheetId }) => sheetId === sheet.id);
  const images = sections.flatMap((sheet) => imagesOf(sheet, depthOf, own(sheet)));
  if (images.length === 0) return undefined;
  const drawn = pasts.length === 0 ? images : sections.flatMap((sheet) => imagesOf(sheet, depthOf, []));
  const pick = (side: "least" | "most") => drawn.map((image) => image[side]);
  return {
    at: restFinder(images, { attitude, depthOf }, sections),
    least: corner(pick("least"), Math.min),
    most: corner(pick("most"), Math.max),
    reachMm: Math.max(...images.map(reachOf)) + Math.max(0, ...pasts.map(({ lengthMm }) => lengthMm)),
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

function imagesOf(sheet: LyingSheet, depthOf: DepthOf, pasts: readonly RunPast[]): Image[] {
  const depthMm = depthOf(sheet.depths);
  const over = faceWithPasts(sheet, depthMm, pasts);
  const ends = sheet.kind === "section" ? pasts.flatMap((past) => pastLine(sheet, past)) : [];
  return sheet.hands.map((hand) => {
    const sideOfY = hand === "left" ? -1 : 1;
    const points = [...sheet.planLoops.flat(), ...ends].map(({ x, y }) => ({ x, y: sideOfY * y }));
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

/** A face of a sheet with what runs past its edges. */
export function faceWithPasts(
  sheet: LyingSheet,
  depthMm: number,
  pasts: readonly RunPast[],
): ReturnType<typeof faceOver> {
  const over = faceOver(sheet, depthMm);
  if (sheet.kind !== "section" || pasts.length === 0) return over;
  const beyond = pasts.map((past) => facePast(sheet, depthMm, past));
  return (p) => {
    const drawn = over(p);
    if (drawn) return drawn;
    for (const face of beyond) {
      const spot = face(p);
      if (spot) return spot;
    }
    return undefined;
  };
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
