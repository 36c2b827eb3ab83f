import { at, distanceFlat, type FlatPoint } from "../foundation/index.ts";
import type { LetIn } from "../project/index.ts";
import { flatLengthMm, type LaidEdge, type LaidLoop } from "./flat-loops.ts";
import type { LetInEdges } from "./let-in-of-sheet.ts";
import { crossingNear, joinPolylines, moveInward, withPoints } from "./set-back-edges.ts";

/** An edge beside a strip is shortened or carried on to meet the foam's end as far as this many widths: down to 30 degrees. */
const REACH_OF_WIDTH = 2;
/** In a corner of the edge itself both sides meet within so many widths. */
const REACH_OF_CORNER = 10;
/** Where an edge goes on straighter than this, the strip ends in a step square to it. */
const GOES_ON_COSINE = 0.8;
/** A step at the end of an edge is no longer than this share of the width, and turns off by more than 45 degrees. */
const [HOOK_OF_WIDTH, HOOK_COSINE] = [0.2, 0.7];
/** An edge no longer than so many widths may lie wholly in the place of the strip beside it. */
const SWALLOWED = 4;

/**
 * A loop whose free edges are moved inward by the width of what is let in along them in place of foam; edges beside
 * them end on the foam's new end. `failed` names the edges that are tighter than the strip is wide, or whose neighbours are
 * too short to meet it: they stay where they were, without a strip.
 */
export function letInEdges(
  loop: LaidLoop,
  letIn: LetInEdges,
): { readonly loop: LaidLoop; readonly failed: readonly string[] } {
  const letInAlong = ({ edgeId, role }: LaidEdge) => (role === "free" ? letIn.get(edgeId) : undefined);
  if (!loop.edges.some((edge) => letInAlong(edge) !== undefined)) return { loop, failed: [] };
  const [only, ...others] = loop.edges;
  const along = only && letInAlong(only);
  if (only && along && others.length === 0) return letInRing(only, along);
  const moved = loop.edges.map((edge) => movedEdge(edge, letInAlong(edge)));
  const { edges, failed } = joinedRound(moved);
  if (failed === undefined) return { loop: { edges }, failed: [] };
  const again = letInEdges(loop, new Map([...letIn].filter(([edgeId]) => edgeId !== failed)));
  return { loop: again.loop, failed: [failed, ...again.failed] };
}

/** A loop of one edge, which closes on itself. */
function letInRing(edge: LaidEdge, letIn: LetIn): ReturnType<typeof letInEdges> {
  const round = [at(edge.points, -2), ...edge.points, at(edge.points, 1)];
  const moved = moveInward(
    round,
    round.map(() => letIn.widthMm),
  );
  return isTurned(round, moved).includes(true)
    ? { loop: { edges: [edge] }, failed: [edge.edgeId] }
    : { loop: { edges: [{ ...edge, letIn, points: moved.slice(1, -1) }] }, failed: [] };
}

/** An edge with the points that it had before, moved or not. */
interface MovedEdge {
  readonly edge: LaidEdge;
  /** All its points, moved; amounts and bevels belong to them. */
  readonly whole: readonly FlatPoint[];
  /** What is left of them; empty where it turned over from end to end, undefined where it did in its middle. */
  readonly line: readonly FlatPoint[] | undefined;
  readonly letIn?: LetIn | undefined;
  readonly widthMm: number;
}

function movedEdge(edge: LaidEdge, letIn: LetIn | undefined): MovedEdge {
  const { points } = edge;
  const widthMm = letIn?.widthMm ?? 0;
  if (widthMm === 0) return { edge, whole: points, line: points, widthMm };
  const plain = withoutHooks(points, widthMm);
  const amounts = plain.map(() => widthMm);
  const moved = moveInward(plain, amounts);
  const from = points.indexOf(at(plain, 0));
  const whole = [...points.slice(0, from), ...moved, ...points.slice(from + plain.length)];
  return { edge, whole, line: withoutTurned(plain, moved, widthMm), letIn, widthMm };
}

/** An edge without the steps of a millimetre or two that the set-back of a neighbour's joint leaves at its ends, square to it. */
function withoutHooks(points: readonly FlatPoint[], widthMm: number): readonly FlatPoint[] {
  const first = hookCount(points, widthMm);
  const last = hookCount(points.toReversed(), widthMm);
  return points.slice(first, points.length - last);
}

/** How many points at the start of a line lead off in another direction than it goes on in. */
function hookCount(points: readonly FlatPoint[], widthMm: number): number {
  const start = at(points, 0);
  const longestMm = HOOK_OF_WIDTH * widthMm;
  let count = 0;
  for (let i = 0; i + 2 < points.length; i++) {
    const [a, b] = [at(points, i), at(points, i + 1)];
    if (distanceFlat(start, b) > longestMm) break;
    const ahead = points.slice(i + 1).find((p) => distanceFlat(p, b) >= widthMm) ?? at(points, -1);
    if (cosine(a, b, b, ahead) < HOOK_COSINE) count = i + 1;
  }
  return count;
}

const cosine = (a: FlatPoint, b: FlatPoint, c: FlatPoint, d: FlatPoint): number =>
  ((b.u - a.u) * (d.u - c.u) + (b.v - a.v) * (d.v - c.v)) / (distanceFlat(a, b) * distanceFlat(c, d));

/** Of every segment whether it runs backward after it was moved: a curve tighter than the move closes up and turns over. */
const isTurned = (before: readonly FlatPoint[], moved: readonly FlatPoint[]): readonly boolean[] =>
  before.slice(1).map((next, i) => {
    const [from, a, b] = [at(before, i), at(moved, i), at(moved, i + 1)];
    return (next.u - from.u) * (b.u - a.u) + (next.v - from.v) * (b.v - a.v) < 0;
  });

/**
 * A moved edge less what turned over: at its ends, where a rounded corner closed up, and in its middle, where what is left on
 * both sides of a corner meets. Empty where it turned over from end to end, undefined where the sides do not meet.
 */
function withoutTurned(
  before: readonly FlatPoint[],
  moved: readonly FlatPoint[],
  widthMm: number,
): readonly FlatPoint[] | undefined {
  const turned = isTurned(before, moved);
  const runs: (readonly FlatPoint[])[] = [];
  for (let from = turned.indexOf(false); from >= 0; ) {
    const next = turned.indexOf(true, from);
    runs.push(moved.slice(from, next < 0 ? moved.length : next + 1));
    from = next < 0 ? -1 : turned.indexOf(false, next);
  }
  const isShort = (line: readonly FlatPoint[]) => flatLengthMm(line) <= SWALLOWED * widthMm;
  let [line = [], ...rest] = runs;
  for (const run of rest) {
    const met = crossingNear(line, run, REACH_OF_CORNER * widthMm);
    if (met) line = [...met.first, ...met.second.slice(1)];
    else if (isShort(line)) line = run;
    else if (!isShort(run)) return undefined;
  }
  return line;
}

interface Round {
  readonly edges: readonly LaidEdge[];
  /** The edge that could not be let in. */
  readonly failed?: string;
}

/** Lets every moved edge and its neighbours end where they meet; short ones that meet nothing lie in the place of the strip. */
function joinedRound(moved: readonly MovedEdge[]): Round {
  const torn = moved.find(({ line }) => line === undefined);
  if (torn) return { edges: [], failed: torn.edge.edgeId };
  const lines = moved.map(({ line }) => line ?? []);
  for (let i = 0; i < moved.length; i++) {
    const k = (i + 1) % moved.length;
    const [a, b] = [at(moved, i), at(moved, k)];
    const widthMm = Math.max(a.widthMm, b.widthMm);
    if (widthMm === 0) continue;
    const met = meeting({ ...a, line: at(lines, i) }, { ...b, line: at(lines, k) }, widthMm);
    if (!met) return withoutShorter(moved, i, k, widthMm);
    [lines[i], lines[k]] = met;
  }
  return {
    edges: moved.map(({ edge, whole, letIn }, i) => ({
      ...withPoints(edge, at(lines, i), whole),
      ...(letIn && { letIn }),
    })),
  };
}

/** The same again without the shorter of two edges that do not meet, if it can lie in the place of a strip. */
function withoutShorter(moved: readonly MovedEdge[], i: number, k: number, widthMm: number): Round {
  const longest = SWALLOWED * widthMm;
  const [shorter] = [i, k]
    .filter((index) => flatLengthMm(at(moved, index).edge.points) <= longest)
    .filter((index) => hasStripBeside(moved, index))
    .toSorted((a, b) => flatLengthMm(at(moved, a).edge.points) - flatLengthMm(at(moved, b).edge.points));
  if (shorter !== undefined && moved.length > 3)
    return joinedRound(moved.filter((_, index) => index !== shorter));
  const [a, b] = [at(moved, i), at(moved, k)];
  return { edges: [], failed: (a.widthMm > 0 ? a : b).edge.edgeId };
}

const hasStripBeside = (moved: readonly MovedEdge[], index: number): boolean =>
  [-1, 1].some((step) => at(moved, (index + step + moved.length) % moved.length).widthMm > 0);

interface Meeting extends MovedEdge {
  readonly line: readonly FlatPoint[];
}

/** Two lines that end and begin where they meet; beside a strip that its neighbour goes on from, in a step at the drawn corner. */
function meeting(
  a: Meeting,
  b: Meeting,
  widthMm: number,
): readonly [readonly FlatPoint[], readonly FlatPoint[]] | undefined {
  if (a.line.length < 2 || b.line.length < 2) return undefined;
  const areBoth = a.widthMm > 0 && b.widthMm > 0;
  const met = areBoth
    ? joinPolylines(a.line, b.line)
    : crossingNear(a.line, b.line, REACH_OF_WIDTH * widthMm);
  if (met) return [met.first, met.second];
  if (areBoth || cosineBetween(a.line, b.line, widthMm) < GOES_ON_COSINE) return undefined;
  return a.widthMm > 0 ? [[...a.line, at(b.line, 0)], b.line] : [a.line, [at(a.line, -1), ...b.line]];
}

/** How straight the second line goes on from the end of the first, both looked at over the width of a strip. */
function cosineBetween(first: readonly FlatPoint[], second: readonly FlatPoint[], widthMm: number): number {
  const [end, start] = [at(first, -1), at(second, 0)];
  const isAway = (from: FlatPoint) => (p: FlatPoint) => distanceFlat(p, from) >= widthMm;
  const [before, after] = [
    first.findLast(isAway(end)) ?? at(first, 0),
    second.find(isAway(start)) ?? at(second, -1),
  ];
  return cosine(before, end, start, after);
}
