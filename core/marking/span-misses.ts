import { cubicSpline, type SplineInterval } from "../curves/index.ts";
import { at, type FlatPoint } from "../foundation/index.ts";
import type { MarkSpan } from "./mark-spans.ts";

/** The farthest that a true edge strays from a drawn one, and where. */
export interface Miss {
  readonly missMm: number;
  readonly atUMm: number;
}

/** How far the true edge strays from the straight line between two marks. */
export function straightMiss(span: MarkSpan): Miss {
  const from = at(span, 0);
  const to = at(span, -1);
  let worst: Miss = { missMm: 0, atUMm: from.u };
  for (const point of span) {
    const missMm = distanceToChord(point, from, to);
    if (missMm > worst.missMm) worst = { missMm, atUMm: point.u };
  }
  return worst;
}

/** Straight pieces that stand for the batten between two marks; 16 keep their own chord error out of the figure. */
const BATTEN_CHORDS = 16;
/** Places between two marks where the batten is compared with the true edge. */
const MOST_LOOKS = 32;
const NATURAL = { kind: "natural" } as const;

/**
 * How far the true edge strays from a batten laid through all marks of a run: a natural cubic spline of u and v over
 * the length of the chords.
 */
export function battenMiss(spans: readonly MarkSpan[]): Miss {
  const bent = spans.filter((span) => isLong(span));
  const [first] = bent;
  if (first === undefined) return { missMm: 0, atUMm: 0 };
  const marks = [at(first, 0), ...bent.map((span) => at(span, -1))];
  const knots = [0];
  for (let i = 1; i < marks.length; i++) {
    const from = at(marks, i - 1);
    const to = at(marks, i);
    knots.push(at(knots, -1) + Math.hypot(to.u - from.u, to.v - from.v));
  }
  const ends = { kind: "open", start: NATURAL, end: NATURAL } as const;
  const alongU = cubicSpline(
    knots,
    marks.map(({ u }) => u),
    ends,
  );
  const alongV = cubicSpline(
    knots,
    marks.map(({ v }) => v),
    ends,
  );
  let worst: Miss = { missMm: 0, atUMm: at(first, 0).u };
  for (const [i, span] of bent.entries()) {
    const lengthMm = at(knots, i + 1) - at(knots, i);
    const batten = Array.from({ length: BATTEN_CHORDS + 1 }, (_, k): FlatPoint => {
      const step = (lengthMm * k) / BATTEN_CHORDS;
      return { u: splineAt(at(alongU, i), step), v: splineAt(at(alongV, i), step) };
    });
    for (const point of lookedAt(span)) {
      const missMm = distanceToBatten(point, batten);
      if (missMm > worst.missMm) worst = { missMm, atUMm: point.u };
    }
  }
  return worst;
}

/** Of a long row of points as many as show where a batten strays: it strays smoothly. */
function lookedAt(span: MarkSpan): MarkSpan {
  const stride = Math.ceil(span.length / MOST_LOOKS);
  return stride === 1 ? span : span.filter((_, i) => i % stride === 0);
}

const isLong = (span: MarkSpan): boolean => {
  const from = at(span, 0);
  const to = at(span, -1);
  const lengthMm = Math.hypot(to.u - from.u, to.v - from.v);
  return lengthMm > 1e-6 && Number.isFinite(lengthMm);
};

const splineAt = ([a, b, c, d]: SplineInterval, step: number): number =>
  a + step * (b + step * (c + step * d));

/** Only the chords abreast of the point are measured: between two marks a batten is nearly straight. */
function distanceToBatten(point: FlatPoint, batten: readonly FlatPoint[]): number {
  const abreast = Math.round(shareAlong(point, at(batten, 0), at(batten, -1)) * BATTEN_CHORDS);
  let leastMm = Number.POSITIVE_INFINITY;
  for (let i = Math.max(1, abreast - 1); i <= Math.min(BATTEN_CHORDS, abreast + 2); i++) {
    leastMm = Math.min(leastMm, distanceToChord(point, at(batten, i - 1), at(batten, i)));
  }
  return leastMm;
}

function distanceToChord(point: FlatPoint, from: FlatPoint, to: FlatPoint): number {
  const share = shareAlong(point, from, to);
  const du = point.u - from.u - share * (to.u - from.u);
  const dv = point.v - from.v - share * (to.v - from.v);
  return Math.sqrt(du * du + dv * dv);
}

/** How far along a chord the point lies abreast, 0 at its start to 1 at its end. */
function shareAlong(point: FlatPoint, from: FlatPoint, to: FlatPoint): number {
  const [du, dv] = [to.u - from.u, to.v - from.v];
  const squared = du * du + dv * dv;
  if (squared === 0) return 0;
  return Math.min(1, Math.max(0, ((point.u - from.u) * du + (point.v - from.v) * dv) / squared));
}
