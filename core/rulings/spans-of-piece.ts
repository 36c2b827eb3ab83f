import type { SpacePoint } from "../foundation/index.ts";
import {
  appendPowers,
  chebyshevFit,
  chebyshevTable,
  chebyshevTail,
  chebyshevValue,
  integrateChebyshev,
} from "./chebyshev.ts";
import type { EdgeSpan, SpacePiece } from "./types.ts";

/** Points for speeds over t, and for places over length: powers up to 8, so that they stay exact to rounding. */
const SPEEDS = chebyshevTable(13);
const PLACES = chebyshevTable(9);
/** What the last coefficients may still be, relative to the speed and to the span's length. */
const SPEED_TAIL = 1e-12;
const PLACE_TAIL = 1e-12;
/** Rounding of a coordinate, which no halving removes. */
const NOISE = 1e-15;
/** After a step of Newton's this small the next one would be rounding: it goes with the square. */
const LAST_STEP = 1e-9;
/** Halvings of a piece after which it is taken as it is (a kink inside a piece is the caller's mistake). */
const MOST_HALVINGS = 8;
/** A piece shorter than this is a point. */
const NO_LENGTH_MM = 1e-6;

/**
 * A piece as spans, from `startMm` on, on each of which its point is a polynomial of the length: the speed is
 * integrated as a Chebyshev series, inverted at Chebyshev points of the length, and the points there are fitted; a span
 * is halved until both series have converged. No spans for a piece of no length.
 */
export function spansOfPiece(piece: SpacePiece, startMm: number): readonly EdgeSpan[] {
  const spans: EdgeSpan[] = [];
  let endMm = startMm;
  const add = (fromT: number, toT: number, halvings: number): void => {
    const fit = fitSpan(piece, fromT, toT);
    if (fit.lengthMm < NO_LENGTH_MM) return;
    if (fit.converged || halvings === 0) {
      spans.push({ startMm: endMm, lengthMm: fit.lengthMm, coefficients: fit.coefficients });
      endMm += fit.lengthMm;
      return;
    }
    const middle = (fromT + toT) / 2;
    add(fromT, middle, halvings - 1);
    add(middle, toT, halvings - 1);
  };
  add(0, 1, MOST_HALVINGS);
  return spans;
}

interface SpanFit {
  readonly lengthMm: number;
  readonly coefficients: readonly number[];
  readonly converged: boolean;
}

function fitSpan(piece: SpacePiece, fromT: number, toT: number): SpanFit {
  const half = (toT - fromT) / 2;
  const middle = (fromT + toT) / 2;
  const samples: number[] = [];
  for (let j = 0; j < SPEEDS.count; j++)
    samples.push(half * size(piece.velocityAt(middle + half * (SPEEDS.nodes[j] ?? 0))));
  const speeds = chebyshevFit(SPEEDS, samples);
  const lengths = integrateChebyshev(speeds);
  const lengthMm = chebyshevValue(lengths, 1);
  const [xs, ys, zs]: [number[], number[], number[]] = [[], [], []];
  let w = -1;
  let largest = 0;
  for (let j = 0; j < PLACES.count; j++) {
    const place = PLACES.nodes[j] ?? 0;
    w = invert(lengths, speeds, ((place + 1) / 2) * lengthMm, Math.max(w, place));
    const { x, y, z } = piece.pointAt(middle + half * w);
    xs.push(x);
    ys.push(y);
    zs.push(z);
    largest = Math.max(largest, Math.abs(x), Math.abs(y), Math.abs(z));
  }
  const coefficients: number[] = [];
  let tail = 0;
  for (const values of [xs, ys, zs]) {
    const fit = chebyshevFit(PLACES, values);
    tail = Math.max(tail, chebyshevTail(fit));
    appendPowers(PLACES, fit, coefficients);
  }
  const converged =
    chebyshevTail(speeds) <= SPEED_TAIL * lengthMm && tail <= PLACE_TAIL * lengthMm + NOISE * largest;
  return { lengthMm, coefficients, converged };
}

/** Where in [-1, 1] the integrated speed reaches `target`, by Newton from `start`. */
function invert(
  lengths: readonly number[],
  speeds: readonly number[],
  target: number,
  start: number,
): number {
  let w = start;
  for (let i = 0; i < 30; i++) {
    const slope = chebyshevValue(speeds, w);
    if (!(slope > 0)) break;
    const step = (target - chebyshevValue(lengths, w)) / slope;
    w = Math.min(1, Math.max(-1, w + step));
    if (Math.abs(step) < LAST_STEP) break;
  }
  return w;
}

const size = ({ x, y, z }: SpacePoint): number => Math.sqrt(x * x + y * y + z * z);
