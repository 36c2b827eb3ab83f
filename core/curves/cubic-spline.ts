import { assert, at } from "../foundation/index.ts";

/** How a spline ends: no bending moment ("natural"), or a given slope. */
export type SplineEnd = { readonly kind: "natural" } | { readonly kind: "clamped"; readonly slope: number };

/** Both ends of a spline, or a spline that closes on itself with two continuous derivatives. */
export type SplineEnds =
  | { readonly kind: "open"; readonly start: SplineEnd; readonly end: SplineEnd }
  | { readonly kind: "periodic" };

/** One interval of a spline: a + b u + c u² + d u³ with u counted from the interval's first knot. */
export type SplineInterval = readonly [number, number, number, number];

/**
 * The C2 cubic spline through `values` at ascending `knots`, one interval between each two of them. A
 * periodic spline repeats its first value at the last knot. Solved for the second derivatives at the knots
 * (de Boor, A Practical Guide to Splines, ch. IV; from memory), tridiagonal, so that the work grows with n.
 */
export function cubicSpline(
  knots: readonly number[],
  values: readonly number[],
  ends: SplineEnds,
): SplineInterval[] {
  assert(knots.length === values.length && knots.length >= 2, "a spline needs two knots or more");
  const steps = differences(knots);
  assert(
    steps.every((h) => h > 0),
    "knots ascend",
  );
  const slopes = differences(values).map((rise, i) => rise / at(steps, i));
  const bends = ends.kind === "periodic" ? periodicBends(steps, slopes) : openBends(steps, slopes, ends);
  return steps.map((h, i) => {
    const m0 = at(bends, i);
    const m1 = at(bends, i + 1);
    return [at(values, i), at(slopes, i) - (h * (2 * m0 + m1)) / 6, m0 / 2, (m1 - m0) / (6 * h)];
  });
}

const differences = (list: readonly number[]): number[] =>
  list.slice(1).map((value, i) => value - at(list, i));

/** One row of the tridiagonal system: before·M(i−1) + own·M(i) + after·M(i+1) = right. */
interface Row {
  readonly before: number;
  readonly own: number;
  readonly after: number;
  readonly right: number;
}

/** The slope is continuous at knot i. */
function innerRow(hBefore: number, hAfter: number, slopeBefore: number, slopeAfter: number): Row {
  return {
    before: hBefore,
    own: 2 * (hBefore + hAfter),
    after: hAfter,
    right: 6 * (slopeAfter - slopeBefore),
  };
}

function openBends(
  steps: readonly number[],
  slopes: readonly number[],
  ends: { readonly start: SplineEnd; readonly end: SplineEnd },
): number[] {
  const h0 = at(steps, 0);
  const hn = at(steps, -1);
  const first: Row =
    ends.start.kind === "natural"
      ? { before: 0, own: 1, after: 0, right: 0 }
      : { before: 0, own: 2 * h0, after: h0, right: 6 * (at(slopes, 0) - ends.start.slope) };
  const last: Row =
    ends.end.kind === "natural"
      ? { before: 0, own: 1, after: 0, right: 0 }
      : { before: hn, own: 2 * hn, after: 0, right: 6 * (ends.end.slope - at(slopes, -1)) };
  const inner = steps.slice(1).map((h, i) => innerRow(at(steps, i), h, at(slopes, i), at(slopes, i + 1)));
  return solveTridiagonal([first, ...inner, last]);
}

/**
 * The system of a closed spline is tridiagonal but for two corners. With M0 held apart, the rest is
 * tridiagonal: M(i) = p(i) + q(i) M0, and the row of knot 0 then gives M0.
 */
function periodicBends(steps: readonly number[], slopes: readonly number[]): number[] {
  const count = steps.length;
  if (count === 1) return [0, 0];
  const rows = steps.map((h, i) => innerRow(at(steps, i - 1), h, at(slopes, i - 1), at(slopes, i)));
  const rest = rows.slice(1);
  const p = solveTridiagonal(rest);
  const q = solveTridiagonal(
    rest.map((row, i) => ({
      ...row,
      right: -(i === 0 ? row.before : 0) - (i === rest.length - 1 ? row.after : 0),
    })),
  );
  const row = at(rows, 0);
  const known = row.right - row.after * at(p, 0) - row.before * at(p, -1);
  const m0 = known / (row.own + row.after * at(q, 0) + row.before * at(q, -1));
  return [m0, ...p.map((value, i) => value + at(q, i) * m0), m0];
}

/** Elimination without exchange of rows: each row's own factor exceeds its neighbours' together. */
function solveTridiagonal(rows: readonly Row[]): number[] {
  const after: number[] = [];
  const right: number[] = [];
  rows.forEach((row, i) => {
    const pivot = row.own - (i === 0 ? 0 : row.before * at(after, i - 1));
    after.push(row.after / pivot);
    right.push((row.right - (i === 0 ? 0 : row.before * at(right, i - 1))) / pivot);
  });
  const solution = [...right];
  for (let i = rows.length - 2; i >= 0; i--) solution[i] = at(right, i) - at(after, i) * at(solution, i + 1);
  return solution;
}
