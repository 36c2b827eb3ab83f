import { at } from "../foundation/index.ts";
import { checkPath, type PathProblem } from "./check-path.ts";
import { type CornerArc, cornerArcs } from "./corner-arcs.ts";
import { toCurve } from "./lookup.ts";
import { type PathSegment, segmentsOf } from "./path-segments.ts";
import { splineCubics } from "./spline-runs.ts";
import type { Curve, CurvePiece, LinePiece, Path, PathElement } from "./types.ts";

/** A compiled path, or every problem that keeps it from being one. */
export type CompiledPath =
  | { readonly ok: true; readonly value: Curve }
  | { readonly ok: false; readonly problems: readonly PathProblem[] };

/**
 * A drawn path as a curve: lines, tangent arcs at radiused nodes (two halves that meet in the node), one C2
 * spline for each run of curves, and stretches as they are. Every node of the path lies at an end of a piece.
 * Problems: see `PathProblem`; all of the path's are returned, not the first alone.
 */
export function compilePath(path: Path): CompiledPath {
  const problems = checkPath(path);
  if (problems.length > 0) return { ok: false, problems };
  const segments = segmentsOf(path);
  const arcs = cornerArcs(path, segments);
  const cubics = splineCubics(path, segments);
  const pieces = path.elements.flatMap((element, i): CurvePiece[] => {
    const own = element.kind === "stretch" ? element.pieces : [];
    const segment = segments[i];
    if (!segment) return [...own];
    const cubic = cubics.get(i);
    const leaving = cubic
      ? [{ ...cubic, ...nodesOf(segment) }]
      : lineWithArcs(segment, arcs[i], arcs[(i + 1) % path.elements.length]);
    return [...own, ...leaving];
  });
  return { ok: true, value: toCurve(pieces, path.closed) };
}

/** The second half of the arc at the line's start, what the arcs leave of it, and the first half at its end. */
function lineWithArcs(
  segment: PathSegment,
  startArc: CornerArc | undefined,
  endArc: CornerArc | undefined,
): CurvePiece[] {
  const straight = straightBetween(segment, startArc, endArc);
  return [
    ...(startArc ? [startArc.halves[1]] : []),
    ...(straight ? [straight] : []),
    ...(endArc ? [endArc.halves[0]] : []),
  ];
}

/** A straight rest below this is rounding: the two arcs meet. */
const SHORTEST_REST_MM = 1e-9;

function straightBetween(
  segment: PathSegment,
  startArc: CornerArc | undefined,
  endArc: CornerArc | undefined,
): LinePiece | undefined {
  const startMm = startArc?.tangentMm ?? 0;
  const endMm = segment.chordMm - (endArc?.tangentMm ?? 0);
  if (endMm - startMm < SHORTEST_REST_MM) return undefined;
  const { startNodeId, endNodeId } = nodesOf(segment);
  const unit = [
    (segment.to[0] - segment.from[0]) / segment.chordMm,
    (segment.to[1] - segment.from[1]) / segment.chordMm,
  ] as const;
  const pointAt = (mm: number) => [segment.from[0] + unit[0] * mm, segment.from[1] + unit[1] * mm] as const;
  return {
    kind: "line",
    edgeId: segment.edgeId,
    from: startArc ? pointAt(startMm) : segment.from,
    to: endArc ? pointAt(endMm) : segment.to,
    ...(startNodeId === undefined || startArc ? {} : { startNodeId }),
    ...(endNodeId === undefined || endArc ? {} : { endNodeId }),
  };
}

function nodesOf(segment: PathSegment): { readonly startNodeId?: string; readonly endNodeId?: string } {
  const startNodeId = lastNodeOf(segment.fromElement);
  const endNodeId = firstNodeOf(segment.toElement);
  return {
    ...(startNodeId === undefined ? {} : { startNodeId }),
    ...(endNodeId === undefined ? {} : { endNodeId }),
  };
}

const firstNodeOf = (element: PathElement): string | undefined =>
  element.kind === "node" ? element.id : at(element.pieces, 0).startNodeId;

const lastNodeOf = (element: PathElement): string | undefined =>
  element.kind === "node" ? element.id : at(element.pieces, -1).endNodeId;
