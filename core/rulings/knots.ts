import { at } from "../foundation/index.ts";
import type { PathStep } from "./grid-search.ts";
import type { FanApex, SpaceEdge } from "./types.ts";

/**
 * A ruling that the refinement moves. "free": both lengths change against each other, at even progress; "first" or
 * "second": it stands on a corner, an end or a jump of that edge and slides on the other; "fixed": on both.
 */
export interface Knot {
  readonly hold: "free" | "first" | "second" | "fixed";
  readonly firstMm: number;
  readonly secondMm: number;
  /** What lies between this knot and the next. */
  readonly fanAfter: FanApex;
  /** Whether the sheet need not be smooth here: a corner or an end of the held edge, not a mere jump of curvature. */
  readonly isApex: boolean;
}

/** Both edges with what scales their lengths to one; 0 for a point. */
export interface EdgePair {
  readonly first: SpaceEdge;
  readonly second: SpaceEdge;
  readonly firstScale: number;
  readonly secondScale: number;
  /** Half the sum of both lengths. */
  readonly sweptMm: number;
}

export const edgePair = (first: SpaceEdge, second: SpaceEdge): EdgePair => ({
  first,
  second,
  firstScale: first.lengthMm > 0 ? 1 / first.lengthMm : 0,
  secondScale: second.lengthMm > 0 ? 1 / second.lengthMm : 0,
  sweptMm: (first.lengthMm + second.lengthMm) / 2,
});

/** How far a pairing has come on both edges together, 0 to 1 (0 to ½ where one edge is a point). */
export const progressOf = (pair: EdgePair, firstMm: number, secondMm: number): number =>
  (firstMm * pair.firstScale + secondMm * pair.secondScale) / 2;

/** Fewest free knots on a stretch, as the slope at each is taken from five; one serves where the stretch is short. */
const LEAST_FREE = 4;
const SHORT_SHARE = 1 / 24;

/**
 * The knots of a path: its ends, the places where fans begin and end, and where it passes corners and jumps, stay; between
 * them about `count` knots at even progress, free but in fans.
 */
export function knotsOfPath(pair: EdgePair, path: readonly PathStep[], count: number): readonly Knot[] {
  const points = withJumps(pair, path);
  const anchors = points.flatMap((_, index) => (isAnchor(pair, points, index) ? [index] : []));
  return anchors.flatMap((index, k) => {
    const next = anchors[k + 1];
    const here = at(points, index);
    const fanAfter = next === undefined ? "none" : at(points, index + 1).arrival;
    const anchor = { ...holdOf(pair, here), firstMm: here.firstMm, secondMm: here.secondMm, fanAfter };
    if (next === undefined) return [anchor];
    const stretch = points.slice(index, next + 1);
    return [
      anchor,
      ...(fanAfter === "none" ? freeKnots(pair, stretch, count) : fanKnots(pair, stretch, count)),
    ];
  });
}

/** Knots that stand still inside a fan, so that its bend is summed as finely as elsewhere; its ends move between them. */
function fanKnots(pair: EdgePair, points: readonly PathStep[], perSheet: number): readonly Knot[] {
  const [start, end] = [at(points, 0), at(points, -1)];
  const span = progressOf(pair, end.firstMm - start.firstMm, end.secondMm - start.secondMm);
  const count =
    Math.floor((perSheet * span) / progressOf(pair, pair.first.lengthMm, pair.second.lengthMm)) - 1;
  return Array.from({ length: Math.max(0, count) }, (_, k): Knot => {
    const x = (k + 1) / (count + 1);
    return {
      hold: "fixed",
      firstMm: start.firstMm + x * (end.firstMm - start.firstMm),
      secondMm: start.secondMm + x * (end.secondMm - start.secondMm),
      fanAfter: end.arrival,
      isApex: false,
    };
  });
}

/** The path with the places added where it crosses a jump of curvature between two of its steps. */
function withJumps(pair: EdgePair, path: readonly PathStep[]): readonly PathStep[] {
  if (pair.first.jumpsMm.length + pair.second.jumpsMm.length === 0) return path;
  return path.flatMap((to, index) => {
    const from = path[index - 1];
    if (from === undefined) return [to];
    const crossing = (key: "firstMm" | "secondMm", jumps: readonly number[]) =>
      jumps
        .filter((mm) => mm > from[key] && mm < to[key])
        .map((mm) => ({ key, mm, x: (mm - from[key]) / (to[key] - from[key]) }));
    const crossings = [
      ...crossing("firstMm", pair.first.jumpsMm),
      ...crossing("secondMm", pair.second.jumpsMm),
    ];
    const added = crossings
      .sort((a, b) => a.x - b.x)
      .map(({ key, mm, x }): PathStep => {
        const firstMm = key === "firstMm" ? mm : from.firstMm + x * (to.firstMm - from.firstMm);
        const secondMm = key === "secondMm" ? mm : from.secondMm + x * (to.secondMm - from.secondMm);
        return { firstMm, secondMm, arrival: to.arrival };
      });
    return [...added, to];
  });
}

function isAnchor(pair: EdgePair, points: readonly PathStep[], index: number): boolean {
  const [here, next] = [at(points, index), points[index + 1]];
  if (index === 0 || next === undefined || here.arrival !== next.arrival) return true;
  const { firstMm, secondMm, arrival } = here;
  const onFirst = pair.first.cornersMm.includes(firstMm) || pair.first.jumpsMm.includes(firstMm);
  const onSecond = pair.second.cornersMm.includes(secondMm) || pair.second.jumpsMm.includes(secondMm);
  return (arrival !== "first" && onFirst) || (arrival !== "second" && onSecond);
}

function holdOf({ first, second }: EdgePair, { firstMm, secondMm }: PathStep): Pick<Knot, "hold" | "isApex"> {
  const isEnd = (edge: SpaceEdge, mm: number) =>
    mm === 0 || mm === edge.lengthMm || edge.cornersMm.includes(mm);
  const holds = (edge: SpaceEdge, mm: number) => isEnd(edge, mm) || edge.jumpsMm.includes(mm);
  const [onFirst, onSecond] = [holds(first, firstMm), holds(second, secondMm)];
  const hold = onFirst ? (onSecond ? "fixed" : "first") : onSecond ? "second" : "free";
  return { hold, isApex: isEnd(first, firstMm) || isEnd(second, secondMm) };
}

/** Knots at even progress along a stretch of the path without fans. */
function freeKnots(pair: EdgePair, points: readonly PathStep[], perSheet: number): readonly Knot[] {
  const progress = points.map(({ firstMm, secondMm }) => progressOf(pair, firstMm, secondMm));
  const [start, end] = [at(progress, 0), at(progress, -1)];
  const whole = progressOf(pair, pair.first.lengthMm, pair.second.lengthMm);
  const isShort = end - start < SHORT_SHARE * whole;
  const count = Math.max(isShort ? 1 : LEAST_FREE, Math.ceil((perSheet * (end - start)) / whole) - 1);
  let index = 1;
  return Array.from({ length: count }, (_, k): Knot => {
    const target = start + ((end - start) * (k + 1)) / (count + 1);
    while (index + 1 < points.length && at(progress, index) < target) index++;
    const [from, to] = [at(points, index - 1), at(points, index)];
    const [p0, p1] = [at(progress, index - 1), at(progress, index)];
    const x = p1 > p0 ? (target - p0) / (p1 - p0) : 0;
    return {
      hold: "free",
      firstMm: from.firstMm + x * (to.firstMm - from.firstMm),
      secondMm: from.secondMm + x * (to.secondMm - from.secondMm),
      fanAfter: "none",
      isApex: false,
    };
  });
}
