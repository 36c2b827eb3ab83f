import { type Curve, type CurvePiece, pointOnPiece } from "../../core/curves/index.ts";
import type { PlanPoint, SpacePoint } from "../../core/foundation/index.ts";

/**
 * A bent sheet as anybody could measure it: its height over the ground by the secant rule on the drawn profile, its
 * normal by differences, its offset point by point. Knows no charts, no flat patterns, no closed forms.
 */
export interface BruteSheet {
  readonly profile: readonly CurvePiece[];
  readonly pivotYMm: number;
  readonly headingRad: number;
  readonly tiltRad: number;
}

/** Step of the differences that give normals, mm: truncation 1e-10, rounding 1e-10. */
const NORMAL_STEP_MM = 1e-3;
/** A place on the profile is found to this, mm: rounding of its coordinates. */
const FOUND_MM = 2e-13;
/** Step of the differences of offset points, whose normals carry that noise. */
const SPEED_STEP_MM = 0.02;

const xiOf = (sheet: BruteSheet, p: PlanPoint): number =>
  p.x - (p.y - sheet.pivotYMm) * Math.tan(sheet.headingRad);

/** Height of the drawn surface over a plan point, on one piece of the profile carried on where it ends. */
function heightOn(sheet: BruteSheet, piece: CurvePiece, p: PlanPoint): number {
  const target = xiOf(sheet, p);
  const missAt = (t: number) => pointOnPiece(piece, t)[0] - target;
  let [before, t] = [0, 1];
  let [missBefore, miss] = [missAt(before), missAt(t)];
  for (let i = 0; i < 60 && Math.abs(miss) > FOUND_MM && miss !== missBefore; i++) {
    const next = t - (miss * (t - before)) / (miss - missBefore);
    [before, missBefore] = [t, miss];
    [t, miss] = [next, missAt(next)];
  }
  return pointOnPiece(piece, t)[1] + (p.y - sheet.pivotYMm) * Math.tan(sheet.tiltRad);
}

const pieceOver = (sheet: BruteSheet, p: PlanPoint): CurvePiece => {
  const xi = xiOf(sheet, p);
  const piece = sheet.profile.find((one) => pointOnPiece(one, 1)[0] >= xi) ?? sheet.profile.at(-1);
  if (!piece) throw new Error("a profile has pieces");
  return piece;
};

export function bruteOffset(
  sheet: BruteSheet,
  p: PlanPoint,
  depthMm: number,
  piece: CurvePiece = pieceOver(sheet, p),
): SpacePoint {
  const h = NORMAL_STEP_MM;
  const z = (dx: number, dy: number) => heightOn(sheet, piece, { x: p.x + dx, y: p.y + dy });
  if (depthMm === 0) return { x: p.x, y: p.y, z: z(0, 0) };
  const [zx, zy] = [(z(h, 0) - z(-h, 0)) / (2 * h), (z(0, h) - z(0, -h)) / (2 * h)];
  const size = Math.hypot(zx, zy, 1);
  return {
    x: p.x - (depthMm * zx) / size,
    y: p.y - (depthMm * zy) / size,
    z: z(0, 0) + depthMm / size,
  };
}

/** Length of an outline's edge on the face at a depth: chords, twice, extrapolated. */
export function bruteEdgeLength(sheet: BruteSheet, outline: Curve, edgeId: string, depthMm: number): number {
  const pieces = outline.pieces.filter((piece) => piece.edgeId === edgeId);
  return pieces.reduce((sum, piece) => sum + bruteLength(sheet, piece, depthMm), 0);
}

const CHORDS = 240;

function bruteLength(sheet: BruteSheet, piece: CurvePiece, depthMm: number): number {
  const stops = borderParameters(sheet, piece);
  let total = 0;
  for (let i = 0; i + 1 < stops.length; i++) {
    const [from, to] = [stops[i] ?? 0, stops[i + 1] ?? 1];
    const count = 2 * Math.max(4, Math.ceil((CHORDS / 2) * (to - from)));
    const on = (t: number): PlanPoint => {
      const [x, y] = pointOnPiece(piece, t);
      return { x, y };
    };
    const over = pieceOver(sheet, on((from + to) / 2));
    const points = Array.from({ length: count + 1 }, (_, k) =>
      bruteOffset(sheet, on(from + ((to - from) * k) / count), depthMm, over),
    );
    const chords = (step: number) => {
      let sum = 0;
      for (let k = 0; k + step <= count; k += step) {
        const [a, b] = [points[k], points[k + step]];
        if (a && b) sum += Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);
      }
      return sum;
    };
    total += chords(1) + (chords(1) - chords(2)) / 3;
  }
  return total;
}

/** Where an outline's piece passes from one piece of the profile to the next: scanned for, then halved. */
function borderParameters(sheet: BruteSheet, piece: CurvePiece): readonly number[] {
  const keyAt = (t: number) => {
    const [x, y] = pointOnPiece(piece, t);
    return sheet.profile.indexOf(pieceOver(sheet, { x, y }));
  };
  const stops = [0];
  const steps = 400;
  for (let i = 0; i < steps; i++) {
    let [low, high] = [i / steps, (i + 1) / steps];
    const key = keyAt(low);
    if (key === keyAt(high)) continue;
    for (let k = 0; k < 50; k++) {
      const middle = (low + high) / 2;
      if (keyAt(middle) === key) low = middle;
      else high = middle;
    }
    stops.push(high);
  }
  return [...stops, 1];
}

/**
 * Area of the face at a depth inside an outline. The area of the face over a unit of plan, g, depends on ξ alone; with
 * G its integral the area is ∮ G(ξ) dy (Green), by Simpson's rule on every piece of the outline between borders.
 */
export function bruteArea(sheet: BruteSheet, outline: Curve, depthMm: number): number {
  const tables = sheet.profile.map((piece) => stretchTable(sheet, piece, depthMm));
  const areaUpTo = (xi: number): number => {
    let sum = 0;
    for (const table of tables) sum += table(xi);
    return sum;
  };
  let area = 0;
  for (const piece of outline.pieces) {
    const stops = borderParameters(sheet, piece);
    for (let i = 0; i + 1 < stops.length; i++) {
      const [from, to] = [stops[i] ?? 0, stops[i + 1] ?? 1];
      const n = 80;
      const h = (to - from) / n;
      for (let k = 0; k <= n; k++) {
        const t = from + h * k;
        const [x, y] = pointOnPiece(piece, t);
        const dt = 1e-5;
        const dy = (pointOnPiece(piece, t + dt)[1] - pointOnPiece(piece, t - dt)[1]) / (2 * dt);
        const weight = k === 0 || k === n ? 1 : k % 2 === 1 ? 4 : 2;
        area += (weight * h * areaUpTo(xiOf(sheet, { x, y })) * dy) / 3;
      }
    }
  }
  return area;
}

/** ∫ g dξ over one piece of the profile up to ξ: cumulated in steps, read off by Simpson's rule over the rest. */
function stretchTable(sheet: BruteSheet, piece: CurvePiece, depthMm: number): (xi: number) => number {
  const [from, to] = [pointOnPiece(piece, 0)[0], pointOnPiece(piece, 1)[0]];
  const y = sheet.pivotYMm;
  const g = (xi: number): number => {
    const h = SPEED_STEP_MM;
    const on = (dx: number, dy: number) => bruteOffset(sheet, { x: xi + dx, y: y + dy }, depthMm, piece);
    const difference = (a: SpacePoint, b: SpacePoint) => [a.x - b.x, a.y - b.y, a.z - b.z] as const;
    const [ax, ay, az] = difference(on(h, 0), on(-h, 0));
    const [bx, by, bz] = difference(on(0, h), on(0, -h));
    return Math.hypot(ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx) / (4 * h * h);
  };
  const simpson = (a: number, b: number) => ((b - a) / 6) * (g(a) + 4 * g((a + b) / 2) + g(b));
  const steps = 80;
  const sums = [0];
  for (let i = 0; i < steps; i++) {
    const [a, b] = [from + ((to - from) * i) / steps, from + ((to - from) * (i + 1)) / steps];
    sums.push((sums[i] ?? 0) + simpson(a, b));
  }
  return (xi) => {
    if (xi <= from) return 0;
    if (xi >= to) return sums[steps] ?? 0;
    const i = Math.min(steps - 1, Math.floor(((xi - from) / (to - from)) * steps));
    return (sums[i] ?? 0) + simpson(from + ((to - from) * i) / steps, xi);
  };
}
