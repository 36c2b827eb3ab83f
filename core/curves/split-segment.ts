import { at, COINCIDENT_POINTS_MM, interpolate2, type Vec2 } from "../foundation/index.ts";
import { checkPath } from "./check-path.ts";
import { cornerArcs } from "./corner-arcs.ts";
import { type PathSegment, segmentsOf } from "./path-segments.ts";
import { pointOnPiece } from "./pieces.ts";
import { knotSpacingOf, splineCubics } from "./spline-runs.ts";
import type { Path, PathElement, PathNode } from "./types.ts";

/**
 * The path with a node put into the segment that leaves an element, at t along it (along the straight between
 * its ends, or along its cubic), without moving the shape: the halves of a curve store their knot spacing.
 * The very same path comes back where it cannot be: no such segment, a path with problems, a half under
 * COINCIDENT_POINTS_MM, a place inside the arc of a neighbour's radius, or a curve that leaves a stretch (which has
 * no knot spacing of its own to store).
 */
export function splitSegment(path: Path, afterNodeId: string, t: number, newNodeId: string): Path {
  const index = path.elements.findIndex((element) => element.id === afterNodeId);
  if (index < 0 || !(t > 0 && t < 1) || checkPath(path).length > 0) return path;
  const segments = segmentsOf(path);
  const segment = segments[index];
  if (!segment) return path;
  return segment.kind === "line"
    ? splitLine(path, index, segment, { t, newNodeId })
    : splitCurve(path, index, segment, { t, newNodeId });
}

interface Cut {
  readonly t: number;
  readonly newNodeId: string;
}

function splitLine(path: Path, index: number, segment: PathSegment, { t, newNodeId }: Cut): Path {
  const arcs = cornerArcs(path, segmentsOf(path));
  const takenAtStartMm = arcs[index]?.tangentMm ?? 0;
  const takenAtEndMm = arcs[(index + 1) % path.elements.length]?.tangentMm ?? 0;
  const beforeMm = t * segment.chordMm;
  const afterMm = segment.chordMm - beforeMm;
  const fits =
    beforeMm >= Math.max(takenAtStartMm, COINCIDENT_POINTS_MM) &&
    afterMm >= Math.max(takenAtEndMm, COINCIDENT_POINTS_MM);
  if (!fits) return path;
  const node: PathNode = {
    kind: "node",
    id: newNodeId,
    at: interpolate2(segment.from, segment.to, t),
    next: "line",
  };
  return withNodeAfter(path, index, at(path.elements, index), node);
}

function splitCurve(path: Path, index: number, segment: PathSegment, { t, newNodeId }: Cut): Path {
  const element = at(path.elements, index);
  const cubic = splineCubics(path, segmentsOf(path)).get(index);
  if (!cubic || element.kind === "stretch") return path;
  const place = pointOnPiece(cubic, t);
  const spacingMm = knotSpacingOf(segment);
  const halves = [spacingMm * t, spacingMm * (1 - t)] as const;
  const chords = [distanceMm(segment.from, place), distanceMm(place, segment.to)];
  if ([...halves, ...chords].some((mm) => mm < COINCIDENT_POINTS_MM)) return path;
  const node: PathNode = {
    kind: "node",
    id: newNodeId,
    at: place,
    next: "curve",
    knotSpacingMm: halves[1],
  };
  return withNodeAfter(path, index, { ...element, knotSpacingMm: halves[0] }, node);
}

const distanceMm = (a: Vec2, b: Vec2): number => Math.hypot(b[0] - a[0], b[1] - a[1]);

function withNodeAfter(path: Path, index: number, element: PathElement, node: PathNode): Path {
  const elements = [...path.elements];
  elements.splice(index, 1, element, node);
  return { ...path, elements };
}
