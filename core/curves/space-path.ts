import {
  addSpace,
  at,
  COINCIDENT_POINTS_MM,
  crossSpace,
  distanceSpace,
  dotSpace,
  lengthSpace,
  MOST_NODES,
  ROUNDING_RELATIVE,
  type SpacePoint,
} from "../foundation/index.ts";
import type { PathProblem } from "./check-path.ts";
import { isRadius } from "./corner-arcs.ts";
import { cubicSpline, type SplineEnd } from "./cubic-spline.ts";
import { derivativeOnPiece, pointOnPiece } from "./pieces.ts";
import type { CubicPiece, LinePiece } from "./types.ts";

/** A node of an open path in space. */
export interface SpaceNode extends SpacePoint {
  readonly id: string;
  /** A tangent arc here, between two lines only, in the plane of the two. */
  readonly radiusMm?: number;
  /** Default: smooth between two curves, corner beside a line. */
  readonly meets?: "smooth" | "corner";
  readonly next: "line" | "curve";
  /** Knot spacing of the curve that leaves; its chord if absent. */
  readonly knotSpacingMm?: number;
}

/** A cubic or line in space: a piece of plan curve with its height on the same parameter, t from 0 to 1. */
export interface SpaceCubic {
  readonly plan: CubicPiece | LinePiece;
  readonly height: CubicPiece["first"];
}

/** A compiled path in space, or every problem that keeps it from being one. */
export type CompiledSpacePath =
  | { readonly ok: true; readonly value: readonly SpaceCubic[] }
  | { readonly ok: false; readonly problems: readonly PathProblem[] };

/**
 * An open path in space as cubics end to end: lines, tangent arcs at radiused nodes (as cubics of at most ten
 * degrees, 5e-10 of the radius off), and one C2 spline in chord length for each run of curves, clamped to the
 * direction of a line at a smooth node, natural otherwise. Nodes lie at ends of pieces, a radiused one in the
 * middle of its arc. Problems: see `PathProblem`; all of them are returned.
 */
export function compileSpacePath(nodes: readonly SpaceNode[]): CompiledSpacePath {
  const problems = problemsOf(nodes);
  if (problems.length > 0) return { ok: false, problems };
  const arcs = nodes.map((_, i) => cornerArc(nodes, i));
  const misfits = arcs.flatMap((arc, i) => misfitOf(nodes, arcs, arc, i));
  if (misfits.length > 0) return { ok: false, problems: misfits };
  const splines = splineSegments(nodes);
  const pieces = nodes.slice(0, -1).flatMap((node, i): readonly SpaceCubic[] => {
    const ends = { edgeId: node.id, startNodeId: node.id, endNodeId: at(nodes, i + 1).id };
    const spline = splines.get(i);
    return spline ? [cubicOf(spline, ends)] : lineWithArcs(nodes, i, [arcs[i], arcs[i + 1]]);
  });
  return { ok: true, value: pieces };
}

/** The space point at t of a piece. */
export function pointOnSpaceCubic({ plan, height }: SpaceCubic, t: number): SpacePoint {
  const [x, y] = pointOnPiece(plan, t);
  return { x, y, z: height[0] + t * (height[1] + t * (height[2] + t * height[3])) };
}

/** The derivative by t at t of a piece, mm. */
export function velocityOnSpaceCubic({ plan, height }: SpaceCubic, t: number): SpacePoint {
  const [x, y] = derivativeOnPiece(plan, t);
  return { x, y, z: height[1] + t * (2 * height[2] + t * 3 * height[3]) };
}

type Coefficients = CubicPiece["first"];

function problemsOf(nodes: readonly SpaceNode[]): readonly PathProblem[] {
  const count = nodes.length;
  if (count < 2) return [{ kind: "too-few-nodes", count, needed: 2 }];
  if (count > MOST_NODES) return [{ kind: "too-many-nodes", count, most: MOST_NODES }];
  return nodes.flatMap((node, i): readonly PathProblem[] => {
    const [before, after] = [nodes[i - 1], nodes[i + 1]];
    const found: PathProblem[] = [];
    if (after && distanceSpace(node, after) < COINCIDENT_POINTS_MM)
      found.push({ kind: "zero-length-segment", nodeIds: [node.id, after.id] });
    const isBetweenLines = before?.next === "line" && node.next === "line" && after !== undefined;
    if (isRadius(node.radiusMm) && !isBetweenLines)
      found.push({ kind: "radius-needs-lines", nodeId: node.id });
    return found;
  });
}

const unit = (a: SpacePoint, b: SpacePoint): SpacePoint => {
  const size = distanceSpace(a, b);
  return { x: (b.x - a.x) / size, y: (b.y - a.y) / size, z: (b.z - a.z) / size };
};

/** An arc between two lines in their plane: centre + radius (cos a · across + sin a · along), a from 0 to sweep. */
interface SpaceArc {
  readonly radiusMm: number;
  readonly tangentMm: number;
  readonly sweepRad: number;
  readonly centre: SpacePoint;
  readonly across: SpacePoint;
  readonly along: SpacePoint;
}

function cornerArc(nodes: readonly SpaceNode[], i: number): SpaceArc | undefined {
  const [before, node, after] = [nodes[i - 1], at(nodes, i), nodes[i + 1]];
  if (!before || !after || !isRadius(node.radiusMm)) return undefined;
  const [inward, outward] = [unit(before, node), unit(node, after)];
  const sweepRad = Math.atan2(lengthSpace(crossSpace(inward, outward)), dotSpace(inward, outward));
  if (sweepRad * node.radiusMm < 1e-9) return undefined;
  const tangentMm = node.radiusMm * Math.tan(sweepRad / 2);
  const turned = addSpace(outward, inward, -Math.cos(sweepRad));
  const toCentre = addSpace({ x: 0, y: 0, z: 0 }, turned, 1 / lengthSpace(turned));
  const centre = addSpace(addSpace(node, inward, -tangentMm), toCentre, node.radiusMm);
  const across = addSpace({ x: 0, y: 0, z: 0 }, toCentre, -1);
  return { radiusMm: node.radiusMm, tangentMm, sweepRad, centre, across, along: inward };
}

function misfitOf(
  nodes: readonly SpaceNode[],
  arcs: readonly (SpaceArc | undefined)[],
  arc: SpaceArc | undefined,
  i: number,
): readonly PathProblem[] {
  if (!arc) return [];
  const node = at(nodes, i);
  const roomTo = (step: -1 | 1) =>
    distanceSpace(node, at(nodes, i + step)) - (arcs[i + step]?.tangentMm ?? 0);
  const roomMm = Math.min(roomTo(-1), roomTo(1));
  if (arc.tangentMm <= roomMm * (1 + ROUNDING_RELATIVE)) return [];
  const largestMm = Math.max(0, (arc.radiusMm * roomMm) / arc.tangentMm);
  return [{ kind: "radius-does-not-fit", nodeId: node.id, radiusMm: arc.radiusMm, largestMm }];
}

interface Ends {
  readonly edgeId: string;
  readonly startNodeId?: string;
  readonly endNodeId?: string;
}

/** The second half of the arc at the line's start, what the arcs leave of it, and the first half at its end. */
function lineWithArcs(
  nodes: readonly SpaceNode[],
  i: number,
  [startArc, endArc]: readonly [SpaceArc | undefined, SpaceArc | undefined],
): readonly SpaceCubic[] {
  const [from, to] = [at(nodes, i), at(nodes, i + 1)];
  const edgeId = from.id;
  const direction = unit(from, to);
  const start = startArc ? addSpace(from, direction, startArc.tangentMm) : from;
  const end = endArc ? addSpace(to, direction, -endArc.tangentMm) : to;
  const straight = distanceSpace(start, end) > 1e-9 && dotSpace(unit(start, end), direction) > 0;
  const ends = {
    edgeId,
    ...(startArc ? {} : { startNodeId: from.id }),
    ...(endArc ? {} : { endNodeId: to.id }),
  };
  return [
    ...(startArc ? arcCubics(startArc, [0.5, 1], { edgeId, startNodeId: from.id }) : []),
    ...(straight ? [lineCubic(start, end, ends)] : []),
    ...(endArc ? arcCubics(endArc, [0, 0.5], { edgeId, endNodeId: to.id }) : []),
  ];
}

function lineCubic(a: SpacePoint, b: SpacePoint, ends: Ends): SpaceCubic {
  return {
    plan: { kind: "line", from: [a.x, a.y], to: [b.x, b.y], ...ends },
    height: [a.z, b.z - a.z, 0, 0],
  };
}

const cubicOf = ([first, second, height]: Spline, ends: Ends): SpaceCubic => ({
  plan: { kind: "cubic", first, second, ...ends },
  height,
});

type Spline = readonly [Coefficients, Coefficients, Coefficients];

/** Cubics of an arc turn by no more than this: they miss it by 5e-10 of the radius. */
const MOST_ARC_RAD = Math.PI / 18;

/** A stretch of an arc as cubics with its tangents: handles of 4/3 tan(θ/4) radii (Goldapp 1991; from memory). */
function arcCubics(arc: SpaceArc, [from, to]: readonly [number, number], ends: Ends): readonly SpaceCubic[] {
  const count = Math.max(1, Math.ceil(((to - from) * arc.sweepRad) / MOST_ARC_RAD));
  const step = ((to - from) * arc.sweepRad) / count;
  const handle = (4 / 3) * Math.tan(step / 4) * arc.radiusMm;
  const pointAt = (angle: number) =>
    addSpace(
      addSpace(arc.centre, arc.across, arc.radiusMm * Math.cos(angle)),
      arc.along,
      arc.radiusMm * Math.sin(angle),
    );
  const tangentAt = (angle: number) =>
    addSpace(addSpace({ x: 0, y: 0, z: 0 }, arc.across, -Math.sin(angle)), arc.along, Math.cos(angle));
  return Array.from({ length: count }, (_, k) => {
    const [a, b] = [from * arc.sweepRad + k * step, from * arc.sweepRad + (k + 1) * step];
    const [p0, p3] = [pointAt(a), pointAt(b)];
    const [p1, p2] = [addSpace(p0, tangentAt(a), handle), addSpace(p3, tangentAt(b), -handle)];
    const own = {
      edgeId: ends.edgeId,
      ...(k === 0 && ends.startNodeId !== undefined ? { startNodeId: ends.startNodeId } : {}),
      ...(k === count - 1 && ends.endNodeId !== undefined ? { endNodeId: ends.endNodeId } : {}),
    };
    const axis = (key: "x" | "y" | "z"): Coefficients => [
      p0[key],
      3 * (p1[key] - p0[key]),
      3 * (p0[key] - 2 * p1[key] + p2[key]),
      p3[key] - 3 * p2[key] + 3 * p1[key] - p0[key],
    ];
    return cubicOf([axis("x"), axis("y"), axis("z")], own);
  });
}

/** The cubic of every curve segment, by the index of the node that it leaves. */
function splineSegments(nodes: readonly SpaceNode[]): ReadonlyMap<number, Spline> {
  const found = new Map<number, Spline>();
  for (let first = 0; first < nodes.length - 1; first++) {
    if (at(nodes, first).next !== "curve") continue;
    let last = first;
    while (isInterior(nodes, last + 1)) last++;
    splineRun(nodes, first, last).forEach((spline, k) => {
      found.set(first + k, spline);
    });
    first = last;
  }
  return found;
}

/** Whether a run of curves goes on smoothly through a node. */
function isInterior(nodes: readonly SpaceNode[], i: number): boolean {
  const node = nodes[i];
  return node !== undefined && i < nodes.length - 1 && node.next === "curve" && node.meets !== "corner";
}

function splineRun(nodes: readonly SpaceNode[], first: number, last: number): readonly Spline[] {
  const run = nodes.slice(first, last + 2);
  const spacings = run
    .slice(0, -1)
    .map((node, k) => node.knotSpacingMm ?? distanceSpace(node, at(run, k + 1)));
  const knots = [0];
  for (const spacing of spacings) knots.push(at(knots, -1) + spacing);
  const [before, after] = [nodes[first - 1], nodes[last + 2]];
  const [start, end] = [at(run, 0), at(run, -1)];
  const startDirection =
    start.meets === "smooth" && before?.next === "line" ? unit(before, start) : undefined;
  const endDirection = end.meets === "smooth" && end.next === "line" && after ? unit(end, after) : undefined;
  const axis = (key: "x" | "y" | "z"): readonly Coefficients[] => {
    const endOf = (direction: SpacePoint | undefined): SplineEnd =>
      direction ? { kind: "clamped", slope: direction[key] } : { kind: "natural" };
    const ends = { kind: "open", start: endOf(startDirection), end: endOf(endDirection) } as const;
    return cubicSpline(
      knots,
      run.map((node) => node[key]),
      ends,
    ).map(([a, b, c, d], k) => {
      const h = at(spacings, k);
      return [a, b * h, c * h * h, d * h * h * h];
    });
  };
  const [xs, ys, zs] = [axis("x"), axis("y"), axis("z")];
  return spacings.map((_, k) => [at(xs, k), at(ys, k), at(zs, k)]);
}
