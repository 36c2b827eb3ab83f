import type { PlanPoint } from "../foundation/index.ts";
import {
  type faceOver,
  type LyingSheet,
  partIdOf,
  pastLine,
  type Sheet,
  wedgeOver,
} from "../surfaces/index.ts";
import { AS_DRAWN, type Laid, laidFace } from "./laid/laid-face.ts";
import { type DepthOf, depthIn, restingDepth } from "./resting-depth.ts";

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
 * any other depth; as the foam lies there. Undefined where there is no section at all.
 */
export function restingFace(
  sheets: readonly Sheet[],
  attitude: "upright" | "inverted",
  depthOf: DepthOf = restingDepth(attitude),
  laid: Laid = AS_DRAWN,
): RestingFace | undefined {
  const sections = sheets.filter(
    (sheet): sheet is LyingSheet => sheet.kind !== "fence" && sheet.planLoops.length > 0,
  );
  const images = sections.flatMap((sheet) => imagesOf(sheet, depthOf, laid));
  if (images.length === 0) return undefined;
  const { pasts } = laid;
  const drawn = pasts.length === 0 ? images : sections.flatMap((sheet) => imagesOf(sheet, depthOf, AS_DRAWN));
  const pick = (side: "least" | "most") => drawn.map((image) => image[side]);
  return {
    at: restFinder(images, { attitude, depthOf, laid }, sections),
    least: corner(pick("least"), Math.min),
    most: corner(pick("most"), Math.max),
    reachMm: Math.max(...images.map(reachOf)) + Math.max(0, ...pasts.map(({ lengthMm }) => lengthMm)),
  };
}

interface RestSettings {
  readonly attitude: "upright" | "inverted";
  readonly depthOf: DepthOf;
  readonly laid: Laid;
}

/** Looks up what rests over a plan point: a face that is there, else the filling of a joint between two. */
function restFinder(
  images: readonly Image[],
  { attitude, depthOf, laid }: RestSettings,
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
    const liftMm = laid.overBend?.liftAt(p.x) ?? 0;
    return { zMm: filled.z + liftMm, partId: partIdOf(sheet.id, sheet.hands.length === 2 ? side : "whole") };
  };
}

/** Where a sheet slopes, a face off the drawn one ends beside its outline, by its depth at most; bent too far by a little more. */
const reachOf = ({ depthMm }: Pick<Image, "depthMm">): number => Math.abs(depthMm) + BENT_FARTHER_MM;
const BENT_FARTHER_MM = 20;

function imagesOf(sheet: LyingSheet, depthOf: DepthOf, laid: Laid): Image[] {
  const depthMm = depthIn(sheet, depthOf);
  const over = laidFace(sheet, depthMm, laid);
  const pasts = laid.pasts.filter(({ sheetId }) => sheetId === sheet.id);
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
