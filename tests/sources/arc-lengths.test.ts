import { describe, expect, it } from "vitest";
import {
  type CubicPiece,
  type Curve,
  compilePath,
  frameAtLength,
  type PathNode,
  pieceLengthMm,
} from "../../core/curves/index.ts";

/** Lengths that a cubic has exactly, by quadrature. */
const QUADRATURE_RELATIVE = 1e-9;
/** Lengths of a spline fitted through points of another curve. */
const FITTED_RELATIVE = 1e-6;

const cubic = (first: CubicPiece["first"], second: CubicPiece["second"]): CubicPiece => ({
  kind: "cubic",
  edgeId: "e",
  first,
  second,
});

function expectRelative(value: number, expected: number, relative: number): void {
  expect(Math.abs(value / expected - 1)).toBeLessThan(relative);
}

describe("lengths of curves that a cubic carries exactly", () => {
  // A1. PUBLISHED: 1.4789428575445 printed in a copy of Math.SE question 2453548; Grinshpan, "The Arc Length of a
  // Parabola" (1.48); PlanetMath, "arc length of parabola". √5/2 + ln(2 + √5)/4.
  it("the parabola y = x² from 0 to 1", () => {
    const length = pieceLengthMm(cubic([0, 1, 0, 0], [0, 0, 1, 0]));
    expectRelative(length, 1.4789428575445975, QUADRATURE_RELATIVE);
  });

  // A2. METHOD: the same closed form, digits computed.
  it("a parabola of span 1000 and rise 100", () => {
    const length = pieceLengthMm(cubic([-500, 1000, 0, 0], [0, 400, -400, 0]));
    expectRelative(length, 1026.0606304268445, QUADRATURE_RELATIVE);
  });

  // A5. MEMORY: calculus textbook standard, (8/27)(10^1.5 − 1). With x = 4t² it starts from a standstill.
  it("the semicubical parabola y = x^1.5 from 0 to 4", () => {
    const length = pieceLengthMm(cubic([0, 0, 4, 0], [0, 0, 0, 8]));
    expectRelative(length, 9.07341528938779, QUADRATURE_RELATIVE);
  });

  // A6. CLOSED FORM: hypergeometric 2F1(−1/2, 1/4; 5/4; −9).
  it("the cubic y = x³ from 0 to 1", () => {
    const length = pieceLengthMm(cubic([0, 1, 0, 0], [0, 0, 0, 1]));
    expectRelative(length, 1.54786565468361, QUADRATURE_RELATIVE);
  });

  // A8. CLOSED FORM: quadrature in extended precision; another library's Bézier length agrees to 2e-13.
  it("a ramp y = h (3u² − 2u³) of length 600 and height 120", () => {
    const length = pieceLengthMm(cubic([0, 600, 0, 0], [0, 0, 360, -240]));
    expectRelative(length, 614.1620287839099, QUADRATURE_RELATIVE);
  });
});

describe("lengths of splines drawn through points of other curves", () => {
  // A3. METHOD: Mathews, numerical analysis module "Catenary" (statement seen); a sinh(x/a).
  it("a catenary of a = 500 from 0 to 400", () => {
    const curve = openSpline(
      stations(0, 400, 40).map((x) => [x, 500 * (Math.cosh(x / 500) - 1)]),
      0,
      Math.atan(Math.sinh(0.8)),
    );
    expectRelative(curve.lengthMm, 444.0529910938115, FITTED_RELATIVE);
    expect(Math.abs((frameAtLength(curve, curve.lengthMm).at[1] ?? 0) - 168.7174731524223)).toBeLessThan(
      1e-9,
    );
  });

  // A4. METHOD: Burkardt, ellipse_circumference_2d (formula via Harris & Stocker 1998); 4a E(m).
  it("the whole ellipse 2 by 1, a hundred times as large, as one closed spline", () => {
    expectRelative(closedEllipse(200, 100, 160).lengthMm, 968.8448220547676, FITTED_RELATIVE);
  });

  // A4, second row. METHOD.
  it("the whole ellipse 3 by 2", () => {
    expectRelative(closedEllipse(300, 200, 160).lengthMm, 1586.543958929059, FITTED_RELATIVE);
  });

  // A4, third row. METHOD.
  it("a quarter of the ellipse 400 by 100, clamped at both ends", () => {
    const points = stations(0, Math.PI / 2, 120).map((t) => [400 * Math.sin(t), 100 * Math.cos(t)] as const);
    expectRelative(openSpline(points, 0, -Math.PI / 2).lengthMm, 428.9210887578417, FITTED_RELATIVE);
  });

  // A9. CLOSED FORM: 4 √2 E(1/2).
  it("one period of a sine wave", () => {
    const points = stations(0, 2 * Math.PI, 80).map((x) => [100 * x, 100 * Math.sin(x)] as const);
    const curve = openSpline(points, Math.PI / 4, Math.PI / 4);
    expectRelative(curve.lengthMm, 764.0395578055424, FITTED_RELATIVE);
  });

  // A11. MEMORY: road and rail transition-curve texts; Fresnel integrals. A = 300, L = 250, end radius 360.
  it("a clothoid of A = 300 and length 250 ends where and as bent as the tables say", () => {
    const endRad = 0.3472222222222222;
    const curve = openSpline(stations(0, 250, 40).map(clothoidPoint), 0, endRad);
    const end = frameAtLength(curve, curve.lengthMm);
    expect(Math.abs(end.at[0] - 247.0026949782406)).toBeLessThan(1e-9);
    expect(Math.abs(end.at[1] - 28.68695901405208)).toBeLessThan(1e-9);
    expectRelative(curve.lengthMm, 250, FITTED_RELATIVE);
    expectRelative(end.curvaturePerMm, 1 / 360, 1e-4);
  });
});

const stations = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);

const curveNodes = (points: readonly (readonly [number, number])[]): PathNode[] =>
  points.map((at, i) => ({ kind: "node", id: `n${i}`, at, next: "curve" }));

/** The spline through points with a typed direction at both ends. */
function openSpline(points: readonly (readonly [number, number])[], startRad: number, endRad: number): Curve {
  const elements = curveNodes(points).map((node, i, all) => ({
    ...node,
    ...(i === 0 ? { tangentOutRad: startRad } : {}),
    ...(i === all.length - 1 ? { tangentInRad: endRad } : {}),
  }));
  return compiled({ closed: false, elements });
}

function closedEllipse(a: number, b: number, count: number): Curve {
  const angles = stations(0, 2 * Math.PI, count).slice(0, -1);
  const points = angles.map((t) => [a * Math.cos(t), b * Math.sin(t)] as const);
  return compiled({ closed: true, elements: curveNodes(points) });
}

function compiled(path: Parameters<typeof compilePath>[0]): Curve {
  const result = compilePath(path);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

/** ∫ (cos, sin)(u² / 2A²) du from 0 to s by Simpson's rule in a thousand steps. */
function clothoidPoint(s: number): readonly [number, number] {
  const steps = 1000;
  let [x, y] = [0, 0];
  for (let i = 0; i <= steps; i++) {
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    const turnRad = ((s * i) / steps) ** 2 / (2 * 300 * 300);
    x += weight * Math.cos(turnRad);
    y += weight * Math.sin(turnRad);
  }
  return [(x * s) / (3 * steps), (y * s) / (3 * steps)];
}
