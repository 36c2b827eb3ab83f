import { describe, expect, it } from "vitest";
import { toRadians } from "../../core/foundation/index.ts";
import {
  areaOfRuled,
  judgeTwist,
  lengthOnRuled,
  pairEdges,
  pointOnRuled,
  pressStrain,
  type RuledSurface,
  rulingAt,
  twistProfile,
} from "../../core/rulings/index.ts";
import { edgeOf, pairEqualFractions } from "../core/rulings/edges-of.ts";

/** Quadrature of smooth surfaces. */
const QUADRATURE_RELATIVE = 1e-9;
/** Curvature by differences of points, step a thousandth of the sheet. */
const DIFFERENCE_RELATIVE = 1e-4;

function expectRelative(value: number, expected: number, relative = QUADRATURE_RELATIVE): void {
  expect(Math.abs(value / expected - 1)).toBeLessThan(relative);
}

/** Gaussian curvature at a place, from differences of eight points (do Carmo, first and second fundamental forms). */
function gaussCurvature(sheet: RuledSurface, sMm: number, t: number): number {
  const [hs, ht] = [sheet.lengthSMm / 1000, 1 / 1000];
  const at = (i: number, j: number) => {
    const { x, y, z } = pointOnRuled(sheet, { sMm: sMm + i * hs, t: t + j * ht }, 0);
    return [x, y, z];
  };
  type V = readonly number[];
  const mix = (terms: readonly (readonly [number, V])[]): V =>
    [0, 1, 2].map((k) => terms.reduce((sum, [f, v]) => sum + f * (v[k] ?? 0), 0));
  const dot = (a: V, b: V) => a.reduce((sum, value, k) => sum + value * (b[k] ?? 0), 0);
  const s1 = mix([
    [0.5 / hs, at(1, 0)],
    [-0.5 / hs, at(-1, 0)],
  ]);
  const t1 = mix([
    [0.5 / ht, at(0, 1)],
    [-0.5 / ht, at(0, -1)],
  ]);
  const st = mix([
    [0.25 / hs / ht, at(1, 1)],
    [-0.25 / hs / ht, at(1, -1)],
    [-0.25 / hs / ht, at(-1, 1)],
    [0.25 / hs / ht, at(-1, -1)],
  ]);
  const [E, F, G] = [dot(s1, s1), dot(s1, t1), dot(t1, t1)];
  const [a = 0, b = 0, c = 0] = s1;
  const [d = 0, e = 0, f = 0] = t1;
  const cross: V = [b * f - c * e, c * d - a * f, a * e - b * d];
  const size = Math.sqrt(dot(cross, cross));
  const M = dot(st, cross) / size;
  // Along a ruling the surface is straight, so of the second form only the mixed term counts.
  return -(M * M) / (E * G - F * F);
}

describe("the hyperbolic paraboloid z = xy", () => {
  const SIZE = 1000;
  const first = edgeOf((x) => [SIZE * x, 0, 0]);
  const second = edgeOf((x) => [SIZE * x, SIZE, SIZE * x]);
  const straight = pairEqualFractions(first, second);

  // W1. CLOSED FORM: √3/3 + (4/3) asinh(1/√2) − π/18.
  it("has the area of the closed form over the unit square", () => {
    expectRelative(areaOfRuled(straight, 0), 1.2807892752734 * SIZE * SIZE);
  });

  // W2. METHOD: curvature of a graph, K = −1 / (1 + x² + y²)² (Gray 1997 cited by MathWorld, "Hyperbolic Paraboloid").
  it("has the curvature of the closed form in the middle and near its corners", () => {
    for (const [x, y] of [
      [0.5, 0.5],
      [0.01, 0.01],
      [0.99, 0.99],
    ] as const) {
      let [low, high] = [0, straight.lengthSMm];
      for (let i = 0; i < 60; i++) {
        const middle = (low + high) / 2;
        if (rulingAt(straight, middle).from.x < x * SIZE) low = middle;
        else high = middle;
      }
      const expected = -1 / (1 + x * x + y * y) ** 2;
      expectRelative(gaussCurvature(straight, low, y) * SIZE * SIZE, expected, DIFFERENCE_RELATIVE);
    }
  });

  it("is never called developable, nor split into two flat triangles", () => {
    for (const rise of [1, 0.2, 0.03, 0.01]) {
      const sheet = pairEdges(
        first,
        edgeOf((x) => [SIZE * x, SIZE, rise * SIZE * x]),
        { thicknessMm: 10, leastRadiusMm: 600 },
      );
      const judged = judgeTwist(sheet, { thicknessMm: 10, leastRadiusMm: 600, strainLimit: 0.008 });
      expect(judged.verdict).not.toBe("developable");
      expect(judged.maxTwistRad).toBeGreaterThan(0.5 * Math.atan(rise));
      expect(sheet.creases).toEqual([]);
    }
  });
});

describe("a flat rectangle 1000 by 300 with one corner lifted 50", () => {
  const sheet = pairEqualFractions(
    edgeOf((x) => [1000 * x, 0, 0]),
    edgeOf((x) => [1000 * x, 300, 50 * x]),
  );

  // W3. CLOSED FORM.
  it("has the area, the curvature and the twist between its ends of the closed form", () => {
    expectRelative(areaOfRuled(sheet, 0), 301507.54071618);
    expectRelative(
      gaussCurvature(sheet, sheet.lengthSMm / 2, 0.5),
      -2.73619800565273e-8,
      DIFFERENCE_RELATIVE,
    );
    const [a, b] = [rulingAt(sheet, 0).direction, rulingAt(sheet, sheet.lengthSMm).direction];
    const turn = Math.acos(a.x * b.x + a.y * b.y + a.z * b.z);
    expect(Math.abs(turn - toRadians(9.46232220802562))).toBeLessThan(1e-9);
  });
});

describe("a helicoidal strip 1000 long, twisted by 10°", () => {
  const turn = toRadians(10);
  const strip = (width: number) => {
    const edge = (side: 1 | -1) =>
      edgeOf((t) => [
        1000 * t,
        (side * width * Math.cos(turn * t)) / 2,
        (side * width * Math.sin(turn * t)) / 2,
      ]);
    return pairEqualFractions(edge(-1), edge(1));
  };

  // W4. CLOSED FORM: √(1 + (τ w / 2)²) − 1.
  it.each([
    [200, 1.52297112688088e-4],
    [100, 3.80764525652186e-5],
    [50, 9.51924906028331e-6],
  ])("%d wide: its edges are longer than its middle line", (width, excess) => {
    const sheet = strip(width);
    const ratio = lengthOnRuled(sheet, 0, 0) / lengthOnRuled(sheet, 0, 0.5) - 1;
    expect(Math.abs(ratio - excess)).toBeLessThan(1e-11);
  });

  // W4. CLOSED FORM: K on the centre line = −τ².
  it("has the curvature of its twist on the middle line", () => {
    const sheet = strip(100);
    expectRelative(gaussCurvature(sheet, 500, 0.5), -3.04617419786709e-8, DIFFERENCE_RELATIVE);
  });

  // W5. MEMORY: A. E. Green, Proc. R. Soc. A 154 (1936) and 161 (1937), as reviewed by Chopin, Démery & Davidovitch,
  // J. Elasticity 119 (2015): with no net pull the edge is stretched by τ² w² / 12.
  it("stretches its edges by the published strain when pressed", () => {
    const { membrane } = pressStrain({
      twistRadPerMm: turn / 1000,
      widthMm: 200,
      curvature: 0,
      thicknessMm: 10,
    });
    expectRelative(membrane, 1.01539139928903e-4);
    // The same from the sheet itself: its rulings are twisted by τ w, less the third power of it.
    const [station] = twistProfile(strip(200), 10);
    expectRelative(station?.membraneStrain ?? 0, 1.01539139928903e-4, 2e-3);
  });

  // W6. CLOSED FORM: w = (2 / τ) √((1 + ε)² − 1).
  it.each([
    [1e-3, 512.597132507528],
    [1e-4, 162.06098828106],
  ])("may be as wide as the closed form says for a strain of %d", (strain, width) => {
    const sheet = strip(width);
    expectRelative(lengthOnRuled(sheet, 0, 0) / lengthOnRuled(sheet, 0, 0.5) - 1, strain, 1e-7);
  });

  // W4, rows 200 and 100: half as wide is a quarter of the strain, to 3.99977.
  it("divided in two takes a quarter of the strain in each strip", () => {
    const whole = strip(200);
    const excess = (from: number, to: number) =>
      lengthOnRuled(whole, 0, to) / lengthOnRuled(whole, 0, from) - 1;
    expect(excess(0.5, 1) / excess(0.5, 0.75)).toBeCloseTo(3.99977, 4);
  });
});
