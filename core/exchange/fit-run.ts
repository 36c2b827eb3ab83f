import { type CurvePiece, compilePath, flattenPiece, type PathNode, pointOnPiece } from "../curves/index.ts";
import { at, distance2, type Vec2 } from "../foundation/index.ts";
import { distanceToChord } from "./thin-points.ts";

/** A smooth stretch of a line as points along it, the first and last its ends. */
export interface SmoothRun {
  readonly points: readonly Vec2[];
  /** Points that should be nodes at once: the joints of its curves. */
  readonly joints: readonly number[];
  /** Directions of travel at its ends; a closed run has none. */
  readonly startRad?: number;
  readonly endRad?: number;
  /** The last point is the first again, and the line is smooth there too. */
  readonly isRound?: true;
}

/** The points that are nodes of the spline, and how far it misses the others at the most. */
export interface FittedRun {
  readonly indices: readonly number[];
  readonly missMm: number;
}

/** The spline is measured along chords that lie this share of the tolerance off it; the share counts as miss. */
const MEASURING_SHARE = 0.05;
/** Nodes beyond this are no drawing any more. */
const MOST_NODES_OF_RUN = 4000;

/**
 * Nodes so that our own spline through them (one C2 cubic in chord length) passes every point within the
 * tolerance: begun with the joints, and halved wherever it misses. The miss includes that of measuring.
 */
export function fitRun(run: SmoothRun, toleranceMm: number): FittedRun {
  const lengths = lengthsAlong(run.points);
  let indices = firstIndices(run, lengths);
  for (;;) {
    const misses = missesOf(run, indices, toleranceMm);
    const added = misses.flatMap((missMm, span) =>
      missMm > toleranceMm ? middleOf(lengths, at(indices, span), at(indices, span + 1)) : [],
    );
    if (added.length === 0 || indices.length > MOST_NODES_OF_RUN) {
      return { indices, missMm: Math.max(0, ...misses) };
    }
    indices = [...indices, ...added].sort((a, b) => a - b);
  }
}

/** A loop needs four nodes to be a loop at all. */
function firstIndices(run: SmoothRun, lengths: readonly number[]): readonly number[] {
  const last = run.points.length - 1;
  const whole = [...new Set([0, ...run.joints, last])].sort((a, b) => a - b);
  if (!run.isRound || whole.length > 4) return whole;
  const quarter = (share: number) => indexAtLength(lengths, share * at(lengths, last));
  return [...new Set([0, quarter(0.25), quarter(0.5), quarter(0.75), last])].sort((a, b) => a - b);
}

function lengthsAlong(points: readonly Vec2[]): readonly number[] {
  const lengths = [0];
  for (let i = 1; i < points.length; i++) {
    lengths.push(at(lengths, -1) + distance2(at(points, i - 1), at(points, i)));
  }
  return lengths;
}

/** The point half way along between two others; none where they are neighbours. */
function middleOf(lengths: readonly number[], from: number, to: number): readonly number[] {
  if (to - from < 2) return [];
  const middle = indexAtLength(lengths, (at(lengths, from) + at(lengths, to)) / 2);
  return [Math.min(to - 1, Math.max(from + 1, middle))];
}

function indexAtLength(lengths: readonly number[], lengthMm: number): number {
  let [low, high] = [0, lengths.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (at(lengths, middle) < lengthMm) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The largest miss in each span between two nodes. */
function missesOf(run: SmoothRun, indices: readonly number[], toleranceMm: number): readonly number[] {
  const pieces = splineThrough(run, indices);
  return indices.slice(1).map((to, span) => {
    const piece = pieces[span];
    return piece
      ? missOfSpan(run.points, [at(indices, span), to], piece, toleranceMm)
      : Number.POSITIVE_INFINITY;
  });
}

function splineThrough(run: SmoothRun, indices: readonly number[]): readonly CurvePiece[] {
  const { startRad, endRad, isRound } = run;
  const used = isRound ? indices.slice(0, -1) : indices;
  const elements = used.map(
    (index, i): PathNode => ({
      kind: "node",
      id: `n${i}`,
      at: at(run.points, index),
      next: "curve",
      ...(i === 0 && startRad !== undefined ? { tangentOutRad: startRad } : {}),
      ...(i === used.length - 1 && endRad !== undefined ? { tangentInRad: endRad } : {}),
    }),
  );
  const compiled = compilePath({ closed: isRound === true, elements });
  return compiled.ok ? compiled.value.pieces : [];
}

/** Points and piece run the same way, so the nearest chord is looked for from the last one on. */
function missOfSpan(
  points: readonly Vec2[],
  [from, to]: readonly [number, number],
  piece: CurvePiece,
  toleranceMm: number,
): number {
  const chordErrorMm = toleranceMm * MEASURING_SHARE;
  const chain = flattenPiece(piece, { chordErrorMm, turnRad: 0.2 }).map((t) => pointOnPiece(piece, t));
  let worstMm = 0;
  let chord = 0;
  for (let i = from + 1; i < to; i++) {
    const point = at(points, i);
    let nearMm = toChord(chain, chord, point);
    for (let next = chord + 1; next < chain.length - 1; next++) {
      const mm = toChord(chain, next, point);
      if (mm < nearMm) {
        nearMm = mm;
        chord = next;
      } else if (next > chord + LOOK_AHEAD) break;
    }
    worstMm = Math.max(worstMm, nearMm);
  }
  return worstMm === 0 ? 0 : worstMm + chordErrorMm;
}

/** Chords that may come nearer again after they went farther away. */
const LOOK_AHEAD = 3;

const toChord = (chain: readonly Vec2[], index: number, point: Vec2): number =>
  distanceToChord(point, at(chain, index), at(chain, index + 1));
