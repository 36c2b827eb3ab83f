import { type CurvePiece, pointOnPiece } from "../../core/curves/index.ts";
import { distanceSpace, roundTo, type SpacePoint } from "../../core/foundation/index.ts";
import { type Project, resolveLines, type SpaceNode } from "../../core/project/index.ts";
import { drawnHeight } from "../hand/index.ts";

/** Each smooth piece that is bent in space is given so many segments of curve. */
const SEGMENTS = 12;
/** A piece that strays no farther from its chord is straight, mm. */
const STRAIGHT_MM = 0.05;

/**
 * Nodes for the edge of a transition where it runs now, at the heights of the surface it lies on; undefined where it
 * has no course in plan, or lies on no surface.
 */
export function freeEdgeAlong(
  project: Project,
  itemId: string,
  side: "first" | "second",
): readonly SpaceNode[] | undefined {
  const edge = resolveLines(project).transitions[itemId]?.[side];
  const item = project.items.find(({ id }) => id === itemId);
  if (edge?.kind !== "stretch" || item?.kind !== "transition") return undefined;
  const other = item[side === "first" ? "second" : "first"];
  const taken = other.kind === "free" ? other.nodes.length : 0;
  const runs = edge.pieces.map(pointsAlong);
  const end = runs.at(-1)?.at(-1);
  if (!end || runs.some((points) => points.length <= SEGMENTS)) return undefined;
  const places: readonly Omit<SpaceNode, "id">[] = [
    ...runs.flatMap((points) => nodesAlong(points)),
    { ...end, next: "line" },
  ];
  return places.map((place, index) => ({ id: `n${taken + index + 1}`, ...place }));
}

/** Places along a piece, on the surface that it is an edge of; the right hand is the one that is computed. */
const pointsAlong = (piece: CurvePiece): readonly SpacePoint[] =>
  Array.from({ length: SEGMENTS + 1 }, (_, index) => index / SEGMENTS).flatMap((t) => {
    const [x, y] = pointOnPiece(piece, t);
    const z = drawnHeight([x, Math.abs(y)]);
    return z === undefined ? [] : [{ x: roundTo(x, 3), y: roundTo(y, 3), z: roundTo(z, 3) }];
  });

/** All but the last: the next piece begins there. Where pieces meet they may meet in a corner. */
function nodesAlong(points: readonly SpacePoint[]): readonly Omit<SpaceNode, "id">[] {
  const [first] = points;
  if (first && isStraight(points)) return [{ ...first, next: "line" }];
  return points.slice(0, -1).map((point, index) => ({
    ...point,
    next: "curve",
    ...(index === 0 ? { meets: "corner" } : {}),
  }));
}

function isStraight(points: readonly SpacePoint[]): boolean {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return true;
  return points.every((point, index) => {
    const share = index / (points.length - 1);
    const mix = (from: number, to: number) => from + (to - from) * share;
    const wanted = { x: mix(first.x, last.x), y: mix(first.y, last.y), z: mix(first.z, last.z) };
    return distanceSpace(point, wanted) <= STRAIGHT_MM;
  });
}
