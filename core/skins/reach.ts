import type { PlanPoint, Problem, SpacePoint } from "../foundation/index.ts";
import { toPlan } from "../foundation/index.ts";
import { type Part, partPlaces, polygonOfLoop } from "../patterns/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { evenLine, isWithin, reachAlong } from "./polygons.ts";

/** Places on the faces that are looked at, and places on the edge that hands reach in from, mm apart. */
const [PLACES_MM, EDGE_MM] = [80, 40];

/**
 * How far the place of the lying tray that is hardest to reach lies from its outer edge, seen from above, mm. Openings are
 * no place to stand in, and so do not count as an edge.
 */
export function farthestInMm(sheets: readonly Sheet[], parts: readonly Part[]): number {
  const lying = parts.filter(({ kind }) => kind !== "fence");
  const edge = lying.flatMap((part) => outerEdge(sheets, part));
  if (edge.length === 0) return 0;
  let farthest = 0;
  for (const part of lying)
    for (const { x, y } of placesOn(sheets, part)) {
      let nearest = Number.POSITIVE_INFINITY;
      for (const point of edge) nearest = Math.min(nearest, Math.hypot(point.x - x, point.y - y));
      farthest = Math.max(farthest, nearest);
    }
  return farthest;
}

/** The problem where that is farther than the hands reach: skin-out-of-reach. */
export const reachProblem = (farthestMm: number, reachMm: number): readonly Problem[] =>
  farthestMm <= reachMm
    ? []
    : [
        {
          kind: "skin-out-of-reach",
          place: { setting: "laminate.reachMm" },
          name: "The middle of the tray",
          farthestMm,
          reachMm,
        },
      ];

function outerEdge(sheets: readonly Sheet[], part: Part): readonly PlanPoint[] {
  const places = partPlaces(sheets, part);
  if (!places) return [];
  const inOpening = new Set(part.edges.flatMap(({ edgeId, opening }) => (opening ? [edgeId] : [])));
  return part.loops.flatMap(({ edges }) =>
    edges
      .filter(({ role, edgeId }) => role === "free" && !inOpening.has(edgeId))
      .flatMap(({ points }) => evenLine(points, 1, EDGE_MM).map((flat) => toPlan(places(flat, 0)))),
  );
}

function placesOn(sheets: readonly Sheet[], part: Part): readonly SpacePoint[] {
  const places = partPlaces(sheets, part);
  if (!places) return [];
  const area = part.loops.map(polygonOfLoop);
  const [fromU, toU] = reachAlong(area, 0);
  const [fromV, toV] = reachAlong(area, Math.PI / 2);
  const found: SpacePoint[] = [];
  for (let u = fromU + PLACES_MM / 2; u < toU; u += PLACES_MM)
    for (let v = fromV + PLACES_MM / 2; v < toV; v += PLACES_MM)
      if (isWithin(area, { u, v })) found.push(places({ u, v }, 0));
  return found;
}
