import { distanceFlat, type FlatPoint, formatMm } from "../../../core/foundation/index.ts";
import type { FlatEdge, Part } from "../../../core/patterns/index.ts";
import { flatSpot, pathOf, type Scale } from "../../drawings/index.ts";

/** The number of an edge in the table, just inside its middle. */
export function EdgeNumber({
  edge,
  part,
  scale,
}: {
  readonly edge: FlatEdge;
  readonly part: Part;
  readonly scale: Scale;
}) {
  const number = part.edges.findIndex(({ edgeId }) => edgeId === edge.edgeId) + 1;
  const middle = halfwayAlong(edge.points);
  if (middle === undefined || number === 0) return null;
  const [x, y] = scale.toPx(flatSpot(middle));
  return (
    <g className="edge-mark">
      <title>{`Edge ${number}, ${edge.name}: ${formatMm(part.edges[number - 1]?.flatLengthMm ?? 0)} mm flat`}</title>
      {edge.role === "centre" ? (
        <path className="centre-line" d={pathOf(edge.points.map(flatSpot), scale, "open")} />
      ) : null}
      <circle cx={x} cy={y} r="9" />
      <text className="code" x={x} y={y + 4} textAnchor="middle">
        {number}
      </text>
    </g>
  );
}

/** The place on a line that is as far from its start as from its end. */
function halfwayAlong(points: readonly FlatPoint[]): FlatPoint | undefined {
  const chords = points.slice(1).map((p, i) => distanceFlat(points[i] ?? p, p));
  let left = chords.reduce((sum, chord) => sum + chord, 0) / 2;
  for (const [i, chord] of chords.entries()) {
    const [from, to] = [points[i], points[i + 1]];
    if (from && to && left <= chord) {
      const t = chord === 0 ? 0 : left / chord;
      return { u: from.u + (to.u - from.u) * t, v: from.v + (to.v - from.v) * t };
    }
    left -= chord;
  }
  return points[0];
}
