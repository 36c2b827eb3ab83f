import { at, type PlanPoint } from "../foundation/index.ts";
import type { RuledCover, SectionSheet } from "./types.ts";

/** Whether a sheet is there: given the foot of a place on a face, and the plan point under it. */
export type Cover = (foot: PlanPoint, p: PlanPoint) => boolean;

type Polygons = readonly (readonly PlanPoint[])[];

/**
 * Where a section's sheet is. Square edges end every face over their foot; an upright opening takes away what stands
 * over it. Where openings divide the section a place belongs to the sheet whose outline holds the plan point, or is
 * nearest to it.
 */
export function coverOf(
  { planLoops, cover }: SectionSheet,
  ready: (polygons: Polygons) => (p: PlanPoint) => boolean,
): Cover {
  if (!cover) {
    const isInside = ready(planLoops);
    return (foot) => isInside(foot);
  }
  const isInSection = ready(cover.square);
  const openings = cover.upright.map((polygon) => ready([polygon]));
  const isThere: Cover = (foot, p) => isInSection(foot) && !openings.some((holds) => holds(p));
  return onOwn(isThere, cover, ready);
}

/** Where a transition's sheet is, within its edges: as with a section. */
export function ruledCoverOf(
  cover: RuledCover,
  ready: (polygons: Polygons) => (p: PlanPoint) => boolean,
): Cover {
  const square = cover.square.map((polygon) => ready([polygon]));
  const upright = cover.upright.map((polygon) => ready([polygon]));
  const isThere: Cover = (foot, p) =>
    !square.some((holds) => holds(foot)) && !upright.some((holds) => holds(p));
  return onOwn(isThere, cover, ready);
}

/** Of several sheets that openings leave of an item, the one that a place belongs to. */
function onOwn(
  isThere: Cover,
  { own, others }: Pick<RuledCover, "own" | "others">,
  ready: (polygons: Polygons) => (p: PlanPoint) => boolean,
): Cover {
  if (others.length === 0) return isThere;
  const [isOwn, isOthers] = [ready(own), ready(others)];
  return (foot, p) =>
    isThere(foot, p) && (isOwn(p) || (!isOthers(p) && distanceMm2(own, p) < distanceMm2(others, p)));
}

/** The square of the distance from a point to the nearest border of polygons. */
function distanceMm2(polygons: Polygons, { x, y }: PlanPoint): number {
  let least = Number.POSITIVE_INFINITY;
  for (const polygon of polygons) {
    polygon.forEach((to, i) => {
      const from = at(polygon, i - 1);
      const [dx, dy] = [to.x - from.x, to.y - from.y];
      const size = dx * dx + dy * dy;
      const t = size === 0 ? 0 : Math.min(1, Math.max(0, ((x - from.x) * dx + (y - from.y) * dy) / size));
      const [ex, ey] = [x - from.x - t * dx, y - from.y - t * dy];
      least = Math.min(least, ex * ex + ey * ey);
    });
  }
  return least;
}
