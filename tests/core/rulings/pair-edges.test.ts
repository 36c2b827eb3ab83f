import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { toDegrees } from "../../../core/foundation/index.ts";
import {
  areaOfRuled,
  compileEdge,
  developRuled,
  pairEdges,
  pointOnRuled,
  type RuledSurface,
  rulingAt,
  type SpaceEdge,
  straightEdge,
  twistProfile,
} from "../../../core/rulings/index.ts";
import { bestPath, costOfSheet, type Edge } from "./best-path.ts";
import { edgeOf, pairEqualFractions, pieceOf, type Triple } from "./edges-of.ts";
import { flatArea } from "./flat-figures.ts";
import { warpedEdges } from "./random-edges.ts";

// The plain search of the tests takes its time.
vi.setConfig({ testTimeout: 120_000 });

const FOAM = { thicknessMm: 10, leastRadiusMm: 600 };
/** Twist that is none: a thousandth of what counts as developable. */
const NO_TWIST_RAD = 1e-6;
/** What the grid's best path may be beaten by, or may beat. */
const OF_BEST = 1.05;

const P = (x: number, y: number, z: number) => ({ x, y, z });
const maxTwist = (sheet: RuledSurface): number =>
  Math.max(...twistProfile(sheet, 10).map(({ twistRad }) => Math.abs(twistRad)));
const fansOf = (sheet: RuledSurface): readonly string[] =>
  sheet.rulings
    .slice(0, -1)
    .map(({ fanAfter }) => fanAfter)
    .filter((fan, k, all) => fan !== all[k - 1]);

/** A floor that stays flat at z0, then rises by `rise` over its last `over` mm, at y. */
function ramp(
  y: number,
  z0: number,
  { rise, over }: { readonly rise: number; readonly over: number },
  shape: (u: number) => number,
) {
  const flat = 1800 - over;
  const whole: Edge = (t) => [1800 * t, y, z0 + rise * shape(Math.max(0, (1800 * t - flat) / over))];
  const edge = compileEdge([
    pieceOf((t) => [flat * t, y, z0]),
    pieceOf((t): Triple => [flat + over * t, y, z0 + rise * shape(t)]),
  ]);
  return { whole, edge };
}

describe("a transition between two different ramps, 180 apart, 1800 long", () => {
  const shapes = [
    { name: "h u²", shape: (u: number) => u * u },
    { name: "h (3u² − 2u³)", shape: (u: number) => u * u * (3 - 2 * u) },
  ];
  const foams = [
    { foam: "10 mm foam, radius 600", ...FOAM },
    { foam: "foam of any bend", thicknessMm: 10, leastRadiusMm: 0 },
  ];
  const cases = shapes.flatMap((shape) => foams.map((foam) => ({ ...shape, ...foam })));

  it.each(cases)(
    "$name, $foam: costs no more than equal fractions, and no more than 5 % over the best path on a 200 × 200 grid",
    ({ shape, name, foam, ...limits }) => {
      const [one, two] = [
        ramp(0, 0, { rise: 60, over: 900 }, shape),
        ramp(180, 40, { rise: 160, over: 1100 }, shape),
      ];
      const sheet = pairEdges(one.edge, two.edge, limits);
      const ours = costOfSheet(sheet, limits);
      const equal = costOfSheet(pairEqualFractions(one.edge, two.edge), limits);
      const best = bestPath(one.whole, two.whole, limits);
      expect(ours.cost).toBeLessThanOrEqual(equal.cost);
      expect(ours.cost).toBeLessThanOrEqual(OF_BEST * best.cost);
      expect(sheet.creases).toEqual([]);
      const degrees = (rad: number) => toDegrees(rad).toFixed(3);
      process.stdout.write(
        `${name}, ${foam}: largest twist ${degrees(ours.maxTwistRad)}°, of the grid's best path ` +
          `${degrees(best.maxTwistRad)}°, of equal fractions ${degrees(equal.maxTwistRad)}°\n`,
      );
    },
  );

  it("of parabolas comes down from 7° to none, with a fan at an edge's end and without a crease", () => {
    const shape = (u: number) => u * u;
    const [one, two] = [
      ramp(0, 0, { rise: 60, over: 900 }, shape),
      ramp(180, 40, { rise: 160, over: 1100 }, shape),
    ];
    const equal = maxTwist(pairEqualFractions(one.edge, two.edge));
    expect(toDegrees(equal)).toBeGreaterThan(6.5);
    const sheet = pairEdges(one.edge, two.edge, FOAM);
    expect(maxTwist(sheet)).toBeLessThan(NO_TWIST_RAD);
    expect(fansOf(sheet)).toEqual(["none", "first"]);
  });
});

describe("edges that are unlike each other", () => {
  it("are paired at no more than 5 % over the best path on a grid", () => {
    fc.assert(
      fc.property(warpedEdges, ({ first, second }) => {
        const [a, b] = [edgeOf(first), edgeOf(second)];
        const ours = costOfSheet(pairEdges(a, b, FOAM), FOAM, 1500);
        const best = bestPath(first, second, FOAM, 100);
        // A sheet that is nearly flat keeps its rulings even: up to a hundredth of a degree of twist is free.
        expect(ours.cost).toBeLessThanOrEqual(OF_BEST * best.cost + 3e-8);
      }),
      { seed: 77, numRuns: 8 },
    );
  });

  it("keep their rulings in order, and s is half of both lengths", () => {
    fc.assert(
      fc.property(warpedEdges, ({ first, second }) => {
        const sheet = pairEdges(edgeOf(first), edgeOf(second), FOAM);
        let last = { firstMm: 0, secondMm: 0 };
        for (let k = 0; k <= 500; k++) {
          const ruling = rulingAt(sheet, (k / 500) * sheet.lengthSMm);
          expect(ruling.firstMm).toBeGreaterThanOrEqual(last.firstMm - 1e-9);
          expect(ruling.secondMm).toBeGreaterThanOrEqual(last.secondMm - 1e-9);
          expect(Math.abs(ruling.firstMm + ruling.secondMm - 2 * ruling.sMm)).toBeLessThan(1e-8);
          last = ruling;
        }
      }),
      { seed: 78, numRuns: 10 },
    );
  });
});

describe("developable sheets of every kind come out without twist", () => {
  const cone =
    (apex: Triple, base: (t: number) => Triple) =>
    (t: number, part: number): Triple => {
      const [x, y, z] = base(t);
      return [x + part * (apex[0] - x), y + part * (apex[1] - y), z + part * (apex[2] - z)];
    };
  const helix = (u: number): Triple => [200 * Math.cos(u), 200 * Math.sin(u), 300 * u];
  const tangent = (u: number, part: number): Triple => [
    helix(u)[0] - part * 200 * Math.sin(u),
    helix(u)[1] + part * 200 * Math.cos(u),
    helix(u)[2] + part * 300,
  ];
  const cylinder = (f: number, skew: number, y: number): Triple => {
    const [x, z] = [400 * Math.sin(f), 400 * (1 - Math.cos(f))];
    return [x, y + skew * x, z];
  };
  const bump = cone([200, -400, 1500], (t) => [1000 * t, 120 * Math.sin(4 * t), 60 * t * t]);
  const oval = cone([900, 0, 1800], (t) => [700 * Math.cos(2 * t), 450 * Math.sin(2 * t), 0]);
  const sheets: readonly { readonly name: string; readonly first: SpaceEdge; readonly second: SpaceEdge }[] =
    [
      {
        name: "a cone over a wavy curve",
        first: edgeOf((t) => bump(t, 0.05 * t)),
        second: edgeOf((t) => bump(t - 0.2 * t * (1 - t), 0.25 + 0.05 * Math.sin(3 * t))),
      },
      {
        name: "an oblique cone over an oval",
        first: edgeOf((t) => oval(t, 0)),
        second: edgeOf((t) => oval(t * t * 0.4 + t * 0.6, 0.3)),
      },
      {
        name: "the tangents of a helix",
        first: edgeOf((t) => tangent(1.2 * t, 0.5)),
        second: edgeOf((t) => tangent(0.6 * (t + t * t), 1.2 + 0.3 * Math.sin(t))),
      },
      {
        name: "the tangents of a helix, ends cut across them",
        first: edgeOf((t) => tangent(0.3 + 0.9 * t, 0.5)),
        second: edgeOf((t) => tangent(1.2 * t, 1.2)),
      },
      {
        name: "a cylinder cut obliquely at both edges",
        first: edgeOf((t) => cylinder(1.4 * t, -0.2, 0)),
        second: edgeOf((t) => cylinder(1.4 * (0.7 * t + 0.3 * t * t), 0.3, 300)),
      },
      {
        name: "a cylinder whose edges begin and end at other rulings",
        first: edgeOf((t) => cylinder(0.2 + 0.9 * t, 0, 0)),
        second: edgeOf((t) => cylinder(1.4 * t, 0, 300)),
      },
      {
        name: "two edges that meet in a point at both ends",
        first: edgeOf((t) => [1000 * t, 0, 90 * t * t]),
        second: edgeOf((t) => [1000 * t, 250 * Math.sin(Math.PI * t), 90 * t * t]),
      },
      {
        name: "a short edge above a long one on one cone",
        first: edgeOf((t) => oval(t, 0)),
        second: edgeOf((t) => oval(t, 0.97)),
      },
      {
        name: "a point and an edge",
        first: straightEdge([P(400, 0, 0), P(400, 0, 0)]),
        second: edgeOf((t) => [1000 * t, 400, 80 * t * t]),
      },
    ];

  it.each(sheets)("$name", ({ first, second }) => {
    const sheet = pairEdges(first, second, FOAM);
    expect(maxTwist(sheet)).toBeLessThan(NO_TWIST_RAD);
    expect(sheet.creases).toEqual([]);
    const [flat, space] = [Math.abs(flatArea(sheet, developRuled(sheet, 0))), areaOfRuled(sheet, 0)];
    expect(Math.abs(flat / space - 1)).toBeLessThan(1e-6);
  });

  it("a line that runs into an arc pairs with its like where the bend begins, to a millionth", () => {
    const like = (y: number, scale: number) =>
      compileEdge([
        pieceOf((t) => [500 * t, y + 40 * t, 0]),
        pieceOf((t) => [
          500 + 600 * Math.sin(scale * t),
          y + 40 + 48 * Math.sin(scale * t),
          600 * (1 - Math.cos(scale * t)),
        ]),
      ]);
    const [first, second] = [like(0, 0.6), like(300, 0.6)];
    const sheet = pairEdges(first, second, FOAM);
    const bend = first.jumpsMm[0] ?? 0;
    const at = sheet.rulings.find(({ firstMm }) => Math.abs(firstMm - bend) < 1e-9);
    expect(Math.abs((at?.secondMm ?? 0) - (second.jumpsMm[0] ?? 0))).toBeLessThan(1e-6 * second.lengthMm);
    expect(maxTwist(sheet)).toBeLessThan(NO_TWIST_RAD);
  });
});

describe("flat and nearly flat sheets", () => {
  it("a flat one has its rulings at even shares of both edges", () => {
    const [first, second] = [
      edgeOf((t) => [900 * t, 60 * t * t, 5]),
      edgeOf((t) => [800 * t, 300 - 40 * t, 5]),
    ];
    const sheet = pairEdges(first, second, FOAM);
    for (const { firstMm, secondMm } of sheet.rulings)
      expect(Math.abs(firstMm / first.lengthMm - secondMm / second.lengthMm)).toBeLessThan(1e-5);
  });

  it("one that is warped by less than a builder can see keeps its rulings even", () => {
    const [first, second] = [edgeOf((t) => [900 * t, 0, 0]), edgeOf((t) => [900 * t, 300, 0.02 * t * t])];
    const sheet = pairEdges(first, second, FOAM);
    expect(fansOf(sheet)).toEqual(["none"]);
    for (const { firstMm, secondMm } of sheet.rulings) expect(Math.abs(firstMm - secondMm)).toBeLessThan(9);
  });
});

describe("edges with corners", () => {
  it("a prism folds along the ruling between its corners, and says so", () => {
    const bent = (y: number) => straightEdge([P(0, y, 0), P(500, y, 0), P(1000, y, 100)]);
    const sheet = pairEdges(bent(0), bent(300), FOAM);
    expect(maxTwist(sheet)).toBeLessThan(NO_TWIST_RAD);
    expect(sheet.creases.map(({ firstMm, secondMm }) => [Math.round(firstMm), Math.round(secondMm)])).toEqual(
      [[500, 500]],
    );
    expect(sheet.creases[0]?.angleRad).toBeCloseTo(Math.atan(0.2), 8);
  });

  it("a corner in the plane of the sheet is no crease", () => {
    const sheet = pairEdges(
      straightEdge([P(0, 0, 0), P(500, -100, 0), P(1000, 0, 0)]),
      edgeOf((t) => [1000 * t, 300, 0]),
      FOAM,
    );
    expect(maxTwist(sheet)).toBeLessThan(NO_TWIST_RAD);
    expect(sheet.creases).toEqual([]);
  });

  it("a corner may be the apex of a fan between two flat wings: a cone that both touch", () => {
    // A quarter cone of apex C over an arc, and the planes that touch it along its first and last ruling.
    const [radius, height] = [300, 200];
    const first = straightEdge([P(-400, 0, height), P(0, 0, height), P(0, -400, height)]);
    const second = compileEdge([
      pieceOf((t) => [-400 + 400 * t, radius, 0]),
      pieceOf((t) => [radius * Math.sin((t * Math.PI) / 2), radius * Math.cos((t * Math.PI) / 2), 0]),
      pieceOf((t) => [radius, -400 * t, 0]),
    ]);
    const sheet = pairEdges(first, second, { thicknessMm: 10, leastRadiusMm: 100 });
    expect(maxTwist(sheet)).toBeLessThan(NO_TWIST_RAD);
    expect(sheet.creases).toEqual([]);
    expect(fansOf(sheet)).toContain("first");
  });
});

describe("the upper face", () => {
  it("is that of the normal with z upward, unless the other side is asked for", () => {
    const [first, second] = [
      edgeOf((t) => [900 * t, 0, 50 * t * t]),
      edgeOf((t) => [900 * t, 300, 90 * t * t]),
    ];
    for (const [a, b] of [
      [first, second],
      [second, first],
    ] as const) {
      const up = pairEdges(a, b, FOAM);
      const down = pairEdges(a, b, { ...FOAM, side: "down" });
      expect(rulingAt(up, 400).normal.z).toBeGreaterThan(0.9);
      expect(rulingAt(down, 400).normal.z).toBeLessThan(-0.9);
      const place = { sMm: 400, t: 0.3 };
      expect(pointOnRuled(up, place, 10).z).toBeGreaterThan(pointOnRuled(up, place, 0).z + 9);
    }
  });
});
