import { addSpace, at, crossSpace, dotSpace, lengthSpace, type SpacePoint } from "../foundation/index.ts";

/**
 * A straight prism: a convex face, and the same face moved by `through`. All bodies of folded metal are such, a bend
 * being one for each of its steps.
 */
export interface Prism {
  readonly face: readonly SpacePoint[];
  readonly through: SpacePoint;
}

/** The upright box around a prism: least and most corner. */
export type Box = readonly [SpacePoint, SpacePoint];

export function boxOfPrism(prism: Prism): Box {
  const points = pointsOf(prism);
  const [xs, ys, zs] = [points.map(({ x }) => x), points.map(({ y }) => y), points.map(({ z }) => z)];
  return [
    { x: Math.min(...xs), y: Math.min(...ys), z: Math.min(...zs) },
    { x: Math.max(...xs), y: Math.max(...ys), z: Math.max(...zs) },
  ];
}

/** Whether two boxes have space in common; what lies in boxes apart is apart. */
export const boxesOverlap = ([a, b]: Box, [c, d]: Box): boolean =>
  a.x < d.x && c.x < b.x && a.y < d.y && c.y < b.y && a.z < d.z && c.z < b.z;

/**
 * How deep two prisms stand in one another, mm: the least move that would part them, at most 0 where they are apart.
 * By separating axes: the normals of all faces, and the cross products of edges (Gottschalk 1996, for any convex
 * bodies).
 */
export function overlapMm(one: Prism, other: Prism): number {
  const axes = [...normalsOf(one), ...normalsOf(other)];
  for (const a of edgesOf(one)) for (const b of edgesOf(other)) axes.push(crossSpace(a, b));
  let least = Number.POSITIVE_INFINITY;
  const [onePoints, otherPoints] = [pointsOf(one), pointsOf(other)];
  for (const axis of axes) {
    const length = lengthSpace(axis);
    if (length < 1e-9) continue;
    const [lowA, highA] = span(onePoints, axis);
    const [lowB, highB] = span(otherPoints, axis);
    least = Math.min(least, (Math.min(highA, highB) - Math.max(lowA, lowB)) / length);
    if (least <= 0) return least;
  }
  return least;
}

const pointsOf = ({ face, through }: Prism): readonly SpacePoint[] => [
  ...face,
  ...face.map((p) => addSpace(p, through)),
];

/** Directions of the edges, as unit vectors, so that parallel ones give no axis. */
function edgesOf({ face, through }: Prism): readonly SpacePoint[] {
  const round = face.map((p, i) => addSpace(p, at(face, i - 1), -1));
  return [...round, through].flatMap((edge) => {
    const length = lengthSpace(edge);
    return length > 1e-9 ? [{ x: edge.x / length, y: edge.y / length, z: edge.z / length }] : [];
  });
}

function normalsOf(prism: Prism): readonly SpacePoint[] {
  const edges = edgesOf(prism);
  const through = at(edges, -1);
  const sides = edges.slice(0, -1);
  return [...sides.map((side) => crossSpace(side, through)), crossSpace(at(sides, 0), at(sides, 1))];
}

function span(points: readonly SpacePoint[], axis: SpacePoint): readonly [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const p of points) {
    const along = dotSpace(p, axis);
    if (along < low) low = along;
    if (along > high) high = along;
  }
  return [low, high];
}
