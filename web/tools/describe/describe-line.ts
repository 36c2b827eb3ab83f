import { formatMm, formatNumber, type Vec2 } from "../../../core/foundation/index.ts";
import type { SceneEdge, SceneLine } from "../scene.ts";

/**
 * A drawn line in words: how many nodes and edges it has, how far it reaches, and the area inside when it is
 * closed. Lengths in mm; the area (shoelace formula) from the points that are drawn, in m².
 */
export function describeLine(line: SceneLine): string {
  const points = pointsOf(line);
  const words = [
    `${line.closed ? "closed outline" : "line"} of ${count(line.nodes.length, "node")}, ${wordEdges(line.edges)}`,
    wordReach(points),
    line.closed ? `${formatNumber(areaMm2(points) / 1e6, 2)} m²` : "",
    line.broken ? "it cannot be followed as it is drawn" : "",
  ];
  return words.filter((word) => word !== "").join(", ");
}

/** All points of a line as it is drawn, one after another. */
export const pointsOf = (line: SceneLine): readonly Vec2[] =>
  line.edges.flatMap((edge) => edge.stretches.flatMap(({ points }) => points));

/** A count with its word. */
export const count = (of: number, word: string): string => `${of} ${word}${of === 1 ? "" : "s"}`;

const KINDS: readonly (readonly [SceneEdge["kind"], string])[] = [
  ["line", "straight"],
  ["curve", "curved"],
  ["follow", "following"],
  ["derived", "given by its ends"],
];

/** "3 straight and 2 curved edges". */
function wordEdges(edges: readonly SceneEdge[]): string {
  const counts = KINDS.flatMap(([kind, word]) => {
    const of = edges.filter((edge) => edge.kind === kind).length;
    return of === 0 ? [] : [`${of} ${word}`];
  });
  const last = counts.at(-1);
  if (last === undefined) return "no edges";
  const before = counts.slice(0, -1);
  return `${before.length > 0 ? `${before.join(", ")} and ${last}` : last} ${edges.length === 1 ? "edge" : "edges"}`;
}

function wordReach(points: readonly Vec2[]): string {
  if (points.length === 0) return "";
  const xs = points.map(([x]) => x);
  const ups = points.map(([, up]) => up);
  const size = (values: readonly number[]) => formatMm(Math.max(...values) - Math.min(...values));
  return `${size(xs)} by ${size(ups)} mm, from x ${formatMm(Math.min(...xs))} to ${formatMm(Math.max(...xs))}`;
}

function areaMm2(points: readonly Vec2[]): number {
  const twice = points.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = points[(index + 1) % points.length] ?? [x, y];
    return sum + x * nextY - nextX * y;
  }, 0);
  return Math.abs(twice) / 2;
}
