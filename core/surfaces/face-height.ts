import { dotSpace, type PlanPoint, type SpacePoint } from "../foundation/index.ts";
import { faceUnder } from "../rulings/index.ts";
import { type ChartPlace, heightAtPlace, normalAtPlace } from "./cylinder-chart.ts";
import { insideOf, polygonsContain } from "./inside-polygons.ts";
import { type Cover, coverOf, ruledCoverOf } from "./opened-cover.ts";
import { placeFinder } from "./place-finder.ts";
import type { CylinderChart, EndPlane, LyingSheet, SectionSheet, TransitionSheet } from "./types.ts";

/** A place on a face over a plan point, with the inward normal there. */
export type FacePoint = SpacePoint & { readonly normal: SpacePoint };

/**
 * Height above ground of a sheet's face that lies `depthMm` inward from the drawn surface, over a plan point of
 * the right or whole hand; undefined where the sheet is not. The face ends square under the drawn edge, and at a
 * profile corner on the mitre plane.
 */
export function faceHeightAt(sheet: LyingSheet, depthMm: number, p: PlanPoint): number | undefined {
  return facePointAt(sheet, depthMm, p)?.z;
}

/** As `faceHeightAt`, with the inward normal there. */
export function facePointAt(sheet: LyingSheet, depthMm: number, p: PlanPoint): FacePoint | undefined {
  if (sheet.kind === "transition") return ruledFaceOver(sheet, depthMm, "within")(p);
  return lookFor(sheet, depthMm, coverOf(sheet, polygonsContainer))(p);
}

/** A face made ready for many look-ups: as `facePointAt`. */
export function faceOver(sheet: LyingSheet, depthMm: number): (p: PlanPoint) => FacePoint | undefined {
  if (sheet.kind === "transition") return ruledFaceOver(sheet, depthMm, "within");
  return lookFor(sheet, depthMm, coverOf(sheet, insideOf));
}

/**
 * A face as it would go on past the edges of its sheet: the chart's own surface at that depth, wherever asked. Used
 * where a joint fills the wedge between faces that end square.
 */
export function endlessFaceOver(sheet: LyingSheet, depthMm: number): (p: PlanPoint) => FacePoint | undefined {
  if (sheet.kind === "transition") return ruledFaceOver(sheet, depthMm, "endless");
  const placeUnder = placeFinder(sheet.chart, depthMm);
  return (p) => facePointUnder(sheet.chart, placeUnder(p), depthMm, p);
}

/** A face of a transition over the plan; it ends square under the drawn edges. */
function ruledFaceOver(
  { chart: { surface }, planBox, cover }: TransitionSheet,
  depthMm: number,
  reach: "within" | "endless",
): (p: PlanPoint) => FacePoint | undefined {
  const [least, most] = planBox;
  if (Number.isNaN(least.x)) return () => undefined;
  const find = faceUnder(surface, depthMm, reach);
  const far = Math.abs(depthMm);
  const isThere = cover && reach === "within" ? ruledCoverOf(cover, insideOf) : undefined;
  return (p) => {
    if (
      reach === "within" &&
      (p.x < least.x - far || p.x > most.x + far || p.y < least.y - far || p.y > most.y + far)
    )
      return undefined;
    const face = find(p);
    if (!face) return undefined;
    const foot = { x: p.x - depthMm * face.normal.x, y: p.y - depthMm * face.normal.y };
    if (isThere && !isThere(foot, p)) return undefined;
    return { x: p.x, y: p.y, z: face.z, normal: face.normal };
  };
}

const polygonsContainer = (polygons: readonly (readonly PlanPoint[])[]) => (p: PlanPoint) =>
  polygonsContain(polygons, p);

function facePointUnder(chart: CylinderChart, place: ChartPlace, depthMm: number, p: PlanPoint): FacePoint {
  const normal = normalAtPlace(chart, place);
  const footY = p.y - depthMm * normal.y;
  return { x: p.x, y: p.y, z: heightAtPlace(chart, place, footY) + depthMm * normal.z, normal };
}

function lookFor(
  { chart, planBox, ends }: SectionSheet,
  depthMm: number,
  isInside: Cover,
): (p: PlanPoint) => FacePoint | undefined {
  const [least, most] = planBox;
  const reach = Math.abs(depthMm);
  const placeUnder = placeFinder(chart, depthMm);
  return (p) => {
    if (p.x < least.x - reach || p.x > most.x + reach) return undefined;
    if (p.y < least.y - reach || p.y > most.y + reach) return undefined;
    const point = facePointUnder(chart, placeUnder(p), depthMm, p);
    const foot = { x: p.x - depthMm * point.normal.x, y: p.y - depthMm * point.normal.y };
    if (!isInside(foot, p)) return undefined;
    return ends.some((end) => isBeyond(end, point)) ? undefined : point;
  };
}

const isBeyond = ({ origin, toward }: EndPlane, { x, y, z }: SpacePoint): boolean =>
  dotSpace({ x: x - origin.x, y: y - origin.y, z: z - origin.z }, toward) > 1e-9;

/** Whether a plan point of the right or whole hand lies on the drawn surface of the sheet. */
export const sheetContains = (sheet: LyingSheet, p: PlanPoint): boolean =>
  facePointAt(sheet, 0, p) !== undefined;
