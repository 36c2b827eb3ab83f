import { at, COINCIDENT_POINTS_MM, distance2, type Vec2 } from "../foundation/index.ts";
import { type Contour, directionAt, pointOnStroke, type Stroke } from "./contour.ts";
import { fitRun, type SmoothRun } from "./fit-run.ts";
import { distanceToChord, farthest, thinPoints } from "./thin-points.ts";

/** How a contour becomes nodes. */
export interface FitSettings {
  /** No point of the contour lies farther from the line that is made than this. */
  readonly toleranceMm: number;
  /** What curves become: our own curves through fewer nodes, or short straight lines. */
  readonly curvesBecome: "curves" | "lines";
}

/** A node as it is made; what is absent takes the line's own rule. */
export interface FittedNode {
  readonly at: Vec2;
  readonly next: "line" | "curve";
  readonly meets?: "corner";
  readonly tangentInRad?: number;
  readonly tangentOutRad?: number;
}

export interface FittedLine {
  readonly closed: boolean;
  readonly nodes: readonly FittedNode[];
  /** The largest distance from the contour to the line that was made. */
  readonly missMm: number;
}

/**
 * A contour as nodes of our own lines: straight strokes stay straight, each smooth stretch of curves becomes one
 * spline through as few nodes as the tolerance allows, with the contour's own direction at its ends; corners stay.
 */
export function fitContour(contour: Contour, settings: FitSettings): FittedLine {
  const chains = chainsOf(withoutPoints(contour.strokes), contour);
  const isRound = contour.closed && chains.length === 1 && chains[0]?.isSmoothRound === true;
  const stretches = chains.flatMap((chain) => fitChain(chain, isRound, settings));
  const nodes = joined(stretches, contour.closed);
  return { closed: contour.closed, nodes, missMm: Math.max(0, ...stretches.map(({ missMm }) => missMm)) };
}

/** Two strokes that turn by no more than this where they meet are one smooth curve. */
const SMOOTH_TURN_RAD = (1 * Math.PI) / 180;
/** Chords between measured points turn at each; a turn beyond this is a corner. */
const SAMPLED_CORNER_RAD = (25 * Math.PI) / 180;

/** Strokes without a corner among them. */
interface Chain {
  readonly strokes: readonly Stroke[];
  readonly isSampled: boolean;
  /** It closes on itself without a corner. */
  readonly isSmoothRound: boolean;
}

const withoutPoints = (strokes: readonly Stroke[]): readonly Stroke[] =>
  strokes.filter(
    (stroke) => stroke.kind !== "line" || distance2(stroke.from, stroke.to) > COINCIDENT_POINTS_MM / 10,
  );

/** The contour cut at its corners, and between straight and curved strokes where straight ones were drawn. */
function chainsOf(strokes: readonly Stroke[], { closed, isSampled }: Contour): readonly Chain[] {
  const parts = (before: Stroke, next: Stroke): boolean => {
    if (!isSampled && (before.kind === "line" || next.kind === "line")) return true;
    return turnBetween(before, next) > (isSampled ? SAMPLED_CORNER_RAD : SMOOTH_TURN_RAD);
  };
  const cuts = strokes.flatMap((stroke, i) => {
    const before = strokes[i - 1] ?? (closed ? strokes.at(-1) : undefined);
    return before === undefined || parts(before, stroke) ? [i] : [];
  });
  const chain = (part: readonly Stroke[]): Chain => ({
    strokes: part,
    isSampled: isSampled === true,
    isSmoothRound: false,
  });
  if (cuts.length === 0 && strokes.length > 0) return [{ ...chain(strokes), isSmoothRound: true }];
  // A closed contour may begin in the middle of a smooth stretch: it is turned to begin at a corner.
  const first = cuts[0] ?? 0;
  const turned = [...strokes.slice(first), ...strokes.slice(0, first)];
  return cuts.map((cut, i) =>
    chain(turned.slice(cut - first, (cuts[i + 1] ?? strokes.length + first) - first)),
  );
}

function turnBetween(before: Stroke, next: Stroke): number {
  const turn = directionAt(next, "start") - directionAt(before, "end");
  return Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn)));
}

/** Nodes of one stretch, the last being where the next begins. */
interface Stretch {
  readonly nodes: readonly FittedNode[];
  readonly end: Vec2;
  readonly endRad: number | undefined;
  readonly missMm: number;
}

function fitChain(chain: Chain, isRound: boolean, settings: FitSettings): readonly Stretch[] {
  const [first, last] = [at(chain.strokes, 0), at(chain.strokes, -1)];
  const end = last.to;
  const straight = (missMm: number): Stretch => ({
    nodes: [{ at: first.from, next: "line" }],
    end,
    endRad: undefined,
    missMm,
  });
  if (chain.strokes.length === 1 && first.kind === "line") return [straight(0)];
  const { points, joints } = pointsOf(chain, settings.toleranceMm);
  const whole = farthest(points, 0, points.length - 1);
  if (!isRound && whole.missMm <= settings.toleranceMm) return [straight(whole.missMm)];
  if (settings.curvesBecome === "lines") return [fitLines(points, settings.toleranceMm, isRound)];
  const ends = isRound ? { isRound: true as const } : endDirections(chain, points);
  const run: SmoothRun = { points, joints, ...ends };
  const fitted = fitRun(run, settings.toleranceMm);
  const count = fitted.indices.length - 1;
  const nodes = fitted.indices.slice(0, count).map(
    (index, i): FittedNode => ({
      at: at(points, index),
      next: "curve",
      ...(i === 0 && run.startRad !== undefined ? { meets: "corner", tangentOutRad: run.startRad } : {}),
    }),
  );
  return [{ nodes, end, endRad: run.endRad, missMm: fitted.missMm }];
}

function fitLines(points: readonly Vec2[], toleranceMm: number, isRound: boolean): Stretch {
  // A loop has no chord of its own: it is thinned in two halves.
  const half = Math.floor(points.length / 2);
  const indices = isRound
    ? [
        ...thinPoints(points.slice(0, half + 1), toleranceMm),
        ...thinPoints(points.slice(half), toleranceMm)
          .slice(1)
          .map((index) => index + half),
      ]
    : thinPoints(points, toleranceMm);
  const misses = indices.slice(1).map((to, i) => farthest(points, at(indices, i), to).missMm);
  return {
    nodes: indices.slice(0, -1).map((index) => ({ at: at(points, index), next: "line" })),
    end: at(points, -1),
    endRad: undefined,
    missMm: Math.max(0, ...misses),
  };
}

/** More joints than this are no nodes that somebody set. */
const MOST_JOINTS = 200;
/** Points lie this share of the tolerance off the true curve between them. */
const SAMPLING_SHARE = 0.02;

/** Points along a chain, dense on curves, and which of them are its joints. */
function pointsOf({ strokes, isSampled }: Chain, toleranceMm: number) {
  const points: Vec2[] = [at(strokes, 0).from];
  const joints: number[] = [];
  for (const stroke of strokes) {
    if (stroke.kind !== "line") samplesOf(stroke, toleranceMm * SAMPLING_SHARE, points);
    points.push(stroke.to);
    joints.push(points.length - 1);
  }
  return { points, joints: isSampled || joints.length > MOST_JOINTS ? [] : joints };
}

const LEAST_SAMPLES = 8;
const MOST_HALVINGS = 10;

/** Inner points of a curved stroke: halved until the middle of every part lies on its chord. */
function samplesOf(stroke: Stroke, chordErrorMm: number, points: Vec2[]): void {
  const halve = (from: number, to: number, halvings: number): void => {
    const [a, b] = [pointOnStroke(stroke, from), pointOnStroke(stroke, to)];
    const middle = (from + to) / 2;
    const isFlat = [0.25, 0.5, 0.75].every(
      (share) => distanceToChord(pointOnStroke(stroke, from + share * (to - from)), a, b) <= chordErrorMm,
    );
    if (!isFlat && halvings > 0) {
      halve(from, middle, halvings - 1);
      points.push(pointOnStroke(stroke, middle));
      halve(middle, to, halvings - 1);
    }
  };
  for (let i = 0; i < LEAST_SAMPLES; i++) {
    halve(i / LEAST_SAMPLES, (i + 1) / LEAST_SAMPLES, MOST_HALVINGS);
    if (i + 1 < LEAST_SAMPLES) points.push(pointOnStroke(stroke, (i + 1) / LEAST_SAMPLES));
  }
}

/** Directions at the ends of a chain: its strokes' own, or through the first three measured points. */
function endDirections({ strokes, isSampled }: Chain, points: readonly Vec2[]) {
  if (!isSampled) {
    return { startRad: directionAt(at(strokes, 0), "start"), endRad: directionAt(at(strokes, -1), "end") };
  }
  if (points.length < 3) return {};
  const backward = directionThrough(at(points, -1), at(points, -2), at(points, -3));
  return {
    startRad: directionThrough(at(points, 0), at(points, 1), at(points, 2)),
    endRad: Math.atan2(-Math.sin(backward), -Math.cos(backward)),
  };
}

/** Where the parabola through three points sets out, its parameter being the chords' length. */
function directionThrough(a: Vec2, b: Vec2, c: Vec2): number {
  const [first, second] = [distance2(a, b), distance2(b, c)];
  const along = (axis: 0 | 1): number => {
    const [near, far] = [(b[axis] - a[axis]) / first, (c[axis] - b[axis]) / second];
    return near - ((far - near) / (first + second)) * first;
  };
  return Math.atan2(along(1), along(0));
}

/** The stretches end to end: where a curve arrives, the node that follows takes up its direction. */
function joined(stretches: readonly Stretch[], closed: boolean): readonly FittedNode[] {
  const nodes = stretches.flatMap(({ nodes: own }, i): readonly FittedNode[] => {
    const before = stretches[i - 1] ?? (closed ? stretches.at(-1) : undefined);
    const [head, ...rest] = own;
    if (!head) return [];
    const arrives = before?.endRad;
    return [arrives === undefined ? head : { ...head, meets: "corner", tangentInRad: arrives }, ...rest];
  });
  const last = stretches.at(-1);
  if (closed || !last) return nodes;
  return [
    ...nodes,
    { at: last.end, next: "line", ...(last.endRad === undefined ? {} : { tangentInRad: last.endRad }) },
  ];
}
