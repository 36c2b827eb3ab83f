import { at, scale2, subtract2, type Vec2 } from "../foundation/index.ts";
import { cubicSpline, type SplineEnds, type SplineInterval } from "./cubic-spline.ts";
import { indexBefore, type PathSegment } from "./path-segments.ts";
import { frameOnPiece } from "./pieces.ts";
import type { CubicPiece, Path, PathElement } from "./types.ts";

/**
 * The cubic of every `curve` segment of a path, by the index of the element that it leaves. Each run of curves is
 * one C2 spline over the knots of `knotSpacingMm` (the chords where none is stored). A run ends at a line, a
 * stretch, an end of the path, or a corner; all curves and no corner make it periodic.
 */
export function splineCubics(
  path: Path,
  segments: readonly (PathSegment | undefined)[],
): ReadonlyMap<number, CubicPiece> {
  return new Map(runsOf(path, segments).flatMap((run) => cubicsOfRun(path, segments, run)));
}

/** The knots that a curve segment spans in its spline, mm. */
export function knotSpacingOf(segment: PathSegment): number {
  const stored = segment.fromElement.kind === "node" ? segment.fromElement.knotSpacingMm : undefined;
  return stored ?? segment.chordMm;
}

interface Run {
  readonly periodic: boolean;
  /** Indices of its segments, in order. */
  readonly indices: readonly number[];
}

function runsOf(path: Path, segments: readonly (PathSegment | undefined)[]): Run[] {
  const count = segments.length;
  const isCurve = (i: number) => segments[i]?.kind === "curve";
  const continues = (i: number) => {
    const before = indexBefore(path, i);
    return before !== undefined && isCurve(i) && isCurve(before) && isInterior(at(path.elements, i));
  };
  const firsts = segments.flatMap((_, i) => (isCurve(i) && !continues(i) ? [i] : []));
  if (firsts.length === 0 && isCurve(0)) return [{ periodic: true, indices: segments.map((_, i) => i) }];
  return firsts.map((first) => {
    const indices = [first];
    for (let i = (first + 1) % count; i !== first && continues(i); i = (i + 1) % count) indices.push(i);
    return { periodic: false, indices };
  });
}

const isInterior = (element: PathElement): boolean => element.kind === "node" && element.meets !== "corner";

function cubicsOfRun(
  path: Path,
  segments: readonly (PathSegment | undefined)[],
  run: Run,
): [number, CubicPiece][] {
  const curves = run.indices.flatMap((i) => segments[i] ?? []);
  const spacings = curves.map(knotSpacingOf);
  const knots = [0];
  for (const spacing of spacings) knots.push(at(knots, -1) + spacing);
  const points = [at(curves, 0).from, ...curves.map((curve) => curve.to)];
  const tangents = run.periodic
    ? "periodic"
    : {
        start: startTangent(path, segments, at(run.indices, 0)),
        end: endTangent(segments, at(run.indices, -1), path),
      };
  const [first, second] = ([0, 1] as const).map((axis) =>
    cubicSpline(
      knots,
      points.map((point) => point[axis]),
      endsOnAxis(tangents, axis),
    ),
  );
  return curves.map((curve, i) => [
    at(run.indices, i),
    {
      kind: "cubic",
      edgeId: curve.edgeId,
      first: overUnit(at(first ?? [], i), at(spacings, i)),
      second: overUnit(at(second ?? [], i), at(spacings, i)),
    },
  ]);
}

/** Unit tangents at the ends of a run; undefined where the end is natural. */
type RunTangents = "periodic" | { readonly start: Vec2 | undefined; readonly end: Vec2 | undefined };

function endsOnAxis(tangents: RunTangents, axis: 0 | 1): SplineEnds {
  if (tangents === "periodic") return { kind: "periodic" };
  const endOf = (tangent: Vec2 | undefined) =>
    tangent === undefined
      ? ({ kind: "natural" } as const)
      : ({ kind: "clamped", slope: tangent[axis] } as const);
  return { kind: "open", start: endOf(tangents.start), end: endOf(tangents.end) };
}

function startTangent(
  path: Path,
  segments: readonly (PathSegment | undefined)[],
  index: number,
): Vec2 | undefined {
  const element = at(path.elements, index);
  if (element.kind === "stretch") return frameOnPiece(at(element.pieces, -1), 1).tangent;
  const before = indexBefore(path, index);
  const arriving = before === undefined ? undefined : segments[before];
  if (element.meets === "smooth" && arriving?.kind === "line") return directionOf(arriving);
  return element.tangentOutRad === undefined ? undefined : unitAt(element.tangentOutRad);
}

function endTangent(
  segments: readonly (PathSegment | undefined)[],
  index: number,
  path: Path,
): Vec2 | undefined {
  const element = at(segments, index)?.toElement;
  if (element === undefined) return undefined;
  if (element.kind === "stretch") return frameOnPiece(at(element.pieces, 0), 0).tangent;
  const leaving = segments[(index + 1) % path.elements.length];
  if (element.meets === "smooth" && leaving?.kind === "line") return directionOf(leaving);
  return element.tangentInRad === undefined ? undefined : unitAt(element.tangentInRad);
}

const directionOf = (segment: PathSegment): Vec2 =>
  scale2(subtract2(segment.to, segment.from), 1 / segment.chordMm);

const unitAt = (angleRad: number): Vec2 => [Math.cos(angleRad), Math.sin(angleRad)];

/** The interval's cubic in t = u / h. */
function overUnit([a, b, c, d]: SplineInterval, h: number): CubicPiece["first"] {
  return [a, b * h, c * h * h, d * h * h * h];
}
