import { at, distance2, dot2, leftOf2, type Vec2 } from "../foundation/index.ts";
import type { ArrangedEdge, Fragment } from "./arrange-pieces.ts";
import { crossingParameters, extremeParameters } from "./crossings.ts";
import type { Box } from "./piece-box.ts";
import { frameOnPiece, pointOnPiece } from "./pieces.ts";
import type { CurvePiece } from "./types.ts";

/** Pieces of closed loops, each loop in one of several sets; a set holds what its loops go round an odd number of times. */
export interface LoopSets {
  readonly pieces: readonly CurvePiece[];
  readonly boxes: readonly Box[];
  /** The set of each piece. */
  readonly setOf: readonly number[];
  readonly setCount: number;
}

/** For each set whether it holds the points just left, and just right, of an edge. */
export interface Sides {
  readonly left: readonly boolean[];
  readonly right: readonly boolean[];
}

/** The sets on both sides of an edge, judged at the middle of its first fragment. */
export function sidesOfEdge(sets: LoopSets, edge: ArrangedEdge): Sides {
  const [first] = edge.fragments;
  const { at: middle, tangent } = frameOnPiece(at(sets.pieces, first.source), (first.from + first.to) / 2);
  const left = setsAround(sets, middle, leftOf2(tangent), edge.fragments);
  const right = [...left];
  for (const { source } of edge.fragments) {
    const set = at(sets.setOf, source);
    right[set] = !at(right, set);
  }
  return { left, right };
}

/** Turns of the ray that are tried until it keeps clear of corners and does not graze, rad. */
const RAY_TURNS_RAD = [0.1, -0.17, 0.31, -0.43, 0.59, -0.71, 0.03, -0.02];

/** A ray that keeps this clear of every corner counts surely, mm. */
const CLEAR_MM = 1e-3;

/**
 * For each set whether it holds the points next to `middle` toward a direction: a ray counts what it crosses, by
 * parity. Fragments that go through `middle` itself are named and not counted there.
 */
export function setsAround(
  sets: LoopSets,
  middle: Vec2,
  toward: Vec2,
  through: readonly Fragment[],
): boolean[] {
  let best: { readonly holds: boolean[]; readonly clearMm: number } | undefined;
  for (const turnRad of RAY_TURNS_RAD) {
    const [cosine, sine] = [Math.cos(turnRad), Math.sin(turnRad)];
    const ray: Vec2 = [toward[0] * cosine - toward[1] * sine, toward[0] * sine + toward[1] * cosine];
    const counted = countAlong(sets, middle, ray, through);
    if (counted.clearMm >= CLEAR_MM) return counted.holds;
    if (!best || counted.clearMm > best.clearMm) best = counted;
  }
  return best?.holds ?? Array.from({ length: sets.setCount }, () => false);
}

function countAlong(
  { pieces, boxes, setOf, setCount }: LoopSets,
  middle: Vec2,
  ray: Vec2,
  through: readonly Fragment[],
): { readonly holds: boolean[]; readonly clearMm: number } {
  const normal = leftOf2(ray);
  const offset = dot2(normal, middle);
  const holds = Array.from({ length: setCount }, () => false);
  let clearMm = Number.POSITIVE_INFINITY;
  pieces.forEach((piece, index) => {
    if (boxIsBeside(at(boxes, index), middle, ray, normal)) return;
    const alongAt = (t: number): number => {
      const [x, y] = pointOnPiece(piece, t);
      return (x - middle[0]) * ray[0] + (y - middle[1]) * ray[1];
    };
    for (const t of [0, 1, ...(piece.kind === "line" ? [] : extremeParameters(piece, normal))]) {
      if (alongAt(t) > -CLEAR_MM) {
        clearMm = Math.min(clearMm, Math.abs(dot2(normal, pointOnPiece(piece, t)) - offset));
      }
    }
    const here = through.filter(({ source }) => source === index);
    const crossings = crossingParameters(piece, normal, offset).filter(
      (t) =>
        !here.some(
          ({ from, to }) => t > from && t < to && distance2(pointOnPiece(piece, t), middle) <= HERE_MM,
        ),
    );
    const set = at(setOf, index);
    for (const t of crossings) if (alongAt(t) > 0) holds[set] = !holds[set];
  });
  return { holds, clearMm };
}

/** A crossing of a fragment that goes through the ray's start is that start where it lies as near as this. */
const HERE_MM = 1e-3;

/** Whether a box lies wholly behind the ray's start or to one side of the ray. */
function boxIsBeside({ lowX, highX, lowY, highY }: Box, middle: Vec2, ray: Vec2, normal: Vec2): boolean {
  const spanOf = ([x, y]: Vec2): readonly [number, number] => {
    const [a, b] = [(lowX - middle[0]) * x, (highX - middle[0]) * x];
    const [c, d] = [(lowY - middle[1]) * y, (highY - middle[1]) * y];
    return [Math.min(a, b) + Math.min(c, d), Math.max(a, b) + Math.max(c, d)];
  };
  const [least, most] = spanOf(normal);
  return least > CLEAR_MM || most < -CLEAR_MM || spanOf(ray)[1] < -CLEAR_MM;
}
