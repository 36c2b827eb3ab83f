import { crossingParameters, frameOnPiece } from "../../../core/curves/index.ts";
import { add2, dot2, leftOf2, scale2, subtract2, type Vec2 } from "../../../core/foundation/index.ts";
import { alongChord, awayPx } from "../nearest.ts";
import type { Place, Snap, SnapSign } from "../types.ts";
import type { Candidate } from "./candidate.ts";
import type { Coordinate } from "./coordinate.ts";
import { inWholeSteps, stepOfGrid, withoutNoise } from "./grid-snap.ts";
import type { NearEdge } from "./near-edges.ts";
import { isAhead, type Ray } from "./rays.ts";
import { ALIGN_PX, type SnapRequest } from "./snap-request.ts";
import { wordOfEdge } from "./snap-words.ts";

/** Where rays meet the edges that lie near. */
export const rayOnEdgeCandidates = (rays: readonly Ray[], near: readonly NearEdge[]): readonly Candidate[] =>
  rays.flatMap((ray) =>
    near.flatMap((one) => {
      const normal = leftOf2(ray.direction);
      return crossingParameters(one.piece, normal, dot2(normal, ray.from)).flatMap(
        (t): readonly Candidate[] => {
          const { at, tangent } = frameOnPiece(one.piece, t);
          if (!isAhead(ray, at)) return [];
          return [
            {
              at,
              reasons: [ray.reason, `on ${wordOfEdge(one)}`],
              signs: [signOf(ray, at), { kind: "lines", at, along: [tangent] }],
              edge: { line: one.line.line, edgeId: one.edge.edgeId },
              handicapPx: 2,
            },
          ];
        },
      );
    }),
  );

/** Where a ray passes a coordinate that the place would be drawn onto. */
export const rayOnCoordinateCandidates = (
  rays: readonly Ray[],
  coordinates: readonly (Coordinate | undefined)[],
): readonly Candidate[] =>
  rays.flatMap((ray) =>
    coordinates.flatMap((coordinate, axis): readonly Candidate[] => {
      const run = ray.direction[axis] ?? 0;
      if (!coordinate || Math.abs(run) < LEAST_RUN) return [];
      const at = add2(ray.from, scale2(ray.direction, (coordinate.value - (ray.from[axis] ?? 0)) / run));
      return isAhead(ray, at)
        ? [
            {
              at,
              reasons: [ray.reason, coordinate.reason],
              signs: [signOf(ray, at), coordinate.sign(at)],
              handicapPx: 3,
            },
          ]
        : [];
    }),
  );

/** A ray that runs nearly along a coordinate line meets it nowhere in particular. */
const LEAST_RUN = 0.05;

/** Onto the nearest ray within reach, in whole steps of the grid along it. */
export function raySnap(request: SnapRequest, rays: readonly Ray[]): Snap | undefined {
  const { place } = request;
  let best: { readonly ray: Ray; readonly at: Vec2 } | undefined;
  let bestPx = ALIGN_PX;
  for (const ray of rays) {
    const at = footOnRay(ray, place);
    const away = awayPx(at, place.at, place.mmPerPx);
    if (away > bestPx || !isAhead(ray, at)) continue;
    bestPx = away;
    best = { ray, at };
  }
  if (!best) return undefined;
  const at = inSteps(best.ray, best.at, request);
  return { at, reasons: [best.ray.reason], signs: [signOf(best.ray, at)] };
}

function footOnRay({ from, direction }: Ray, place: Place): Vec2 {
  // The place of the ray that looks nearest on the screen, far out enough for any board.
  const end = add2(from, scale2(direction, FAR_MM));
  const t = alongChord(from, end, place);
  return add2(from, scale2(direction, FAR_MM * t));
}

const FAR_MM = 50_000;

function inSteps(ray: Ray, at: Vec2, { context, place }: SnapRequest): Vec2 {
  const stepMm = context.snaps.grid ? stepOfGrid(context, Math.max(...place.mmPerPx)) : undefined;
  if (stepMm === undefined) return at;
  const lengthMm = dot2(subtract2(at, ray.from), ray.direction);
  const rounded = inWholeSteps(lengthMm, stepMm);
  if (rounded <= 0) return at;
  const [x, y] = add2(ray.from, scale2(ray.direction, rounded));
  return [withoutNoise(x), withoutNoise(y)];
}

const signOf = ({ kind, from, direction }: Ray, at: Vec2): SnapSign => ({
  kind,
  // The angle that is square stands where the ray leaves.
  at: kind === "squares" ? from : at,
  along: [kind === "squares" ? [direction[1], -direction[0]] : direction, direction],
  guide: [from, at],
});
