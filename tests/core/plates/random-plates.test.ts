import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FoldedPlate, PlatePart } from "../../../core/plates/index.ts";
import type { PlanNode, Wing } from "../../../core/project/index.ts";
import {
  apart,
  areaInSpace,
  corner,
  cross,
  dot,
  flatApart,
  fromOutlineMm,
  lengthOf,
  middleOf,
  minus,
  onlyPart,
  polygonOf,
  shoelaceMm2,
} from "./measure-plates.ts";
import { fold, type PlateChanges, planNode, soundPlate, wing } from "./plates.ts";

const RUNS = { seed: 20, numRuns: 60 };
/** Noise of sums over a few hundred mm. */
const NOISE_MM = 1e-8;

/** Convex bases: corners on an ellipse, at least 25° apart. */
const bases = fc
  .tuple(
    fc.array(fc.double({ min: 1, max: 3, noNaN: true }), { minLength: 3, maxLength: 6 }),
    fc.double({ min: 150, max: 500, noNaN: true }),
    fc.double({ min: 150, max: 400, noNaN: true }),
    fc.double({ min: 0, max: 6, noNaN: true }),
  )
  .map(([shares, longMm, wideMm, startRad]): readonly PlanNode[] => {
    const total = shares.reduce((sum, share) => sum + share, 0);
    let turned = startRad;
    return shares.map((share, i) => {
      turned += (share / total) * 2 * Math.PI;
      return planNode(`n${i}`, longMm * Math.cos(turned), wideMm + 50 + wideMm * Math.sin(turned));
    });
  });

const wingsOn = (base: readonly PlanNode[]): fc.Arbitrary<readonly Wing[]> =>
  fc
    .tuple(
      ...base.map(({ id }) =>
        fc.option(
          fc
            .record({
              angleRad: fc.oneof(
                fc.double({ min: 0.1, max: 1.7, noNaN: true }),
                fc.double({ min: -1.7, max: -0.1, noNaN: true }),
              ),
              insideRadiusMm: fc.double({ min: 0, max: 8, noNaN: true }),
              lengthMm: fc.double({ min: 25, max: 60, noNaN: true }),
              startInsetMm: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 30, noNaN: true })),
              endInsetMm: fc.oneof(fc.constant(0), fc.double({ min: 0, max: 30, noNaN: true })),
              startTaperRad: fc.double({ min: 0, max: 0.5, noNaN: true }),
              endTaperRad: fc.double({ min: 0, max: 0.5, noNaN: true }),
            })
            .map((changes) => wing(id, changes)),
          { freq: 3 },
        ),
      ),
    )
    .map((wings) => wings.flatMap((one) => (one ? [one] : [])));

const plates = bases.chain((base) =>
  fc.record({
    base: fc.constant(base),
    wings: wingsOn(base),
    kFactor: fc.double({ min: 0.3, max: 0.5, noNaN: true }),
  }),
);

const changes = (kFactor: number): PlateChanges => ({ metal: { kFactor } });

function forPlates(check: (plate: FoldedPlate, part: PlatePart, kFactor: number) => void): void {
  let made = 0;
  fc.assert(
    fc.property(plates, ({ base, wings, kFactor }) => {
      const { plate } = fold(base, wings, changes(kFactor));
      if (!plate) throw new Error("no plate");
      made += plate.wings.length;
      check(plate, onlyPart(plate), kFactor);
    }),
    RUNS,
  );
  // A test of wings must have had wings.
  expect(made).toBeGreaterThan(RUNS.numRuns);
}

describe("any plate", () => {
  it("is wide across a wing by its base, the bend's allowance and the flange", () => {
    forPlates((plate, part, kFactor) => {
      for (const folded of plate.wings) {
        const bend = corner(
          part.bends.filter(({ id }) => id === folded.id),
          0,
        );
        const free = corner(
          corner(part.loops, 0).edges.filter(({ edgeId }) => edgeId === `${folded.id}-free`),
          0,
        );
        // Measured in space: the neutral fibre turns about the same axis at R + K t, and the flange is flat.
        const middle = middleOf(folded);
        const insideMm = middle.radiusMm - 1;
        const allowanceMm = (insideMm + kFactor * 2) * middle.turnRad;
        const flangeMm = heightOver(folded.airFace);
        expect(flatApart(corner(bend.baseTangent, 0), corner(bend.wingTangent, 0))).toBeCloseTo(
          allowanceMm,
          7,
        );
        const across = direction(bend.baseTangent);
        const freeMm = outBy(corner(free.points, 0), corner(bend.baseTangent, 0), across);
        expect(freeMm).toBeCloseTo(allowanceMm + flangeMm, 7);
        // The flat lies where the base does, so its tangent stands under the foot of the folded bend.
        const foot = corner(folded.bend, 0).air;
        const start = corner(bend.baseTangent, 0);
        expect(apart(corner(foot, 0), { x: start.u, y: start.v, z: 50 })).toBeLessThan(NOISE_MM);
      }
    });
  });

  it("has bends that begin and end on its outline", () => {
    forPlates((_, part) => {
      for (const bend of part.bends) {
        for (const point of [...bend.baseTangent, ...bend.middle, ...bend.wingTangent]) {
          expect(fromOutlineMm(point, corner(part.loops, 0))).toBeLessThan(NOISE_MM);
        }
      }
    });
  });

  it("has an outline end to end, counter-clockwise, of the area of base, bends and wings", () => {
    forPlates((plate, part) => {
      const { edges } = corner(part.loops, 0);
      for (const [i, { points }] of edges.entries()) {
        expect(corner(points, 0)).toEqual(corner(corner(edges, i - 1).points, -1));
      }
      const areaMm2 = shoelaceMm2(polygonOf(corner(part.loops, 0)));
      expect(areaMm2).toBeGreaterThan(0);
      const wingsMm2 = plate.wings.reduce((sum, { airFace }) => sum + areaInSpace(airFace), 0);
      const bendsMm2 = part.bends.reduce(
        (sum, { lengthMm, figures }) => sum + lengthMm * figures.allowanceMm,
        0,
      );
      const baseMm2 = shoelaceMm2(corner(plate.base, 0).map(({ x, y }) => ({ u: x, v: y })));
      expect((baseMm2 + bendsMm2 + wingsMm2) / areaMm2).toBeCloseTo(1, 9);
    });
  });

  it("keeps its thickness, and its faces plane and square to its sides, when folded", () => {
    forPlates((plate) => {
      for (const { airFace, upperFace, bend } of plate.wings) {
        for (const [i, p] of airFace.entries()) expect(apart(p, corner(upperFace, i))).toBeCloseTo(2, 9);
        for (const line of bend) expect(apart(line.air[0], line.upper[0])).toBeCloseTo(2, 9);
        const [a, b, c, d] = [0, 1, 2, 3].map((i) => corner(airFace, i));
        if (!a || !b || !c || !d) throw new Error("four corners");
        const normal = cross(minus(b, a), minus(d, a));
        expect(Math.abs(dot(normal, minus(c, a))) / lengthOf(normal)).toBeLessThan(NOISE_MM);
        // The wing goes on where its bend ends.
        expect(apart(corner(bend, -1).air[0], a)).toBeLessThan(NOISE_MM);
        expect(apart(corner(bend, -1).upper[1], corner(upperFace, 1))).toBeLessThan(NOISE_MM);
      }
    });
  });

  it("has the mirror image of its flat when it is drawn mirrored", () => {
    fc.assert(
      fc.property(plates, ({ base, wings, kFactor }) => {
        const image = base.map((node) => ({ ...node, y: -node.y }));
        // The image of an outline runs the other way round, so each edge leaves its other node.
        const leaves = (edgeId: string) =>
          corner(image, (image.findIndex(({ id }) => id === edgeId) + 1) % image.length).id;
        const imageWings = wings.map(
          (one): Wing => ({
            ...one,
            edgeId: leaves(one.edgeId),
            startInsetMm: one.endInsetMm,
            endInsetMm: one.startInsetMm,
            startTaperRad: one.endTaperRad,
            endTaperRad: one.startTaperRad,
          }),
        );
        const first = fold(base, wings, changes(kFactor));
        const second = fold(image.toReversed(), imageWings, changes(kFactor));
        expect(second.problems.map(({ kind }) => kind)).toEqual(first.problems.map(({ kind }) => kind));
        if (!first.plate || !second.plate) throw new Error("no plate");
        const points = polygonOf(corner(onlyPart(second.plate).loops, 0));
        const outline = corner(onlyPart(first.plate).loops, 0);
        expect(points).toHaveLength(polygonOf(outline).length);
        for (const { u, v } of points) expect(fromOutlineMm({ u, v: -v }, outline)).toBeLessThan(NOISE_MM);
      }),
      RUNS,
    );
  });

  it("moved and turned has the same flat", () => {
    fc.assert(
      fc.property(
        plates,
        fc.double({ min: -3, max: 3, noNaN: true }),
        ({ base, wings, kFactor }, turnRad) => {
          const [c, s] = [Math.cos(turnRad), Math.sin(turnRad)];
          const moved = base.map((node) => ({
            ...node,
            x: 700 + c * node.x - s * node.y,
            y: -300 + s * node.x + c * node.y,
          }));
          const first = fold(base, wings, changes(kFactor)).plate;
          const second = fold(moved, wings, changes(kFactor)).plate;
          if (!first || !second) throw new Error("no plate");
          const outline = corner(onlyPart(second).loops, 0);
          for (const { u, v } of polygonOf(corner(onlyPart(first).loops, 0))) {
            const at = { u: 700 + c * u - s * v, v: -300 + s * u + c * v };
            expect(fromOutlineMm(at, outline)).toBeLessThan(1e-6);
          }
        },
      ),
      RUNS,
    );
  });
});

/** How far the free edge of a wing lies from its foot, square to it. */
function heightOver(face: readonly Parameters<typeof minus>[0][]): number {
  const along = minus(corner(face, 1), corner(face, 0));
  const up = minus(corner(face, 3), corner(face, 0));
  return lengthOf(cross(along, up)) / lengthOf(along);
}

/** The way out from a bend line: its direction a quarter clockwise. */
function direction([from, to]: readonly { readonly u: number; readonly v: number }[]) {
  if (!from || !to) throw new Error("two ends");
  const lengthMm = flatApart(from, to);
  return { u: (to.v - from.v) / lengthMm, v: -(to.u - from.u) / lengthMm };
}

const outBy = (
  point: { readonly u: number; readonly v: number },
  from: { readonly u: number; readonly v: number },
  across: { readonly u: number; readonly v: number },
): number => (point.u - from.u) * across.u + (point.v - from.v) * across.v;

describe("a folded box of K = 1/2", () => {
  it("measured in space at mid-thickness is its flat", () => {
    for (const [thicknessMm, insideRadiusMm] of [
      [1, 0.5],
      [2, 3],
      [3, 12],
    ] as const) {
      const base = [
        planNode("i", 0, 0),
        planNode("r", 300, 0),
        planNode("o", 300, 200),
        planNode("f", 0, 200),
      ];
      const wings = base.map(({ id }) => wing(id, { insideRadiusMm, lengthMm: 60 }));
      const plate = soundPlate(base, wings, { plate: { thicknessMm } });
      const [front, rear] = ["w-f", "w-r"].map((id) =>
        corner(
          plate.wings.filter((one) => one.id === id),
          0,
        ),
      );
      if (!front || !rear) throw new Error("two wings");
      // From free edge to free edge down one wing, over its bend, along the base, and up the other.
      const way = [front, rear].map((one) => {
        const flangeMm = apart(corner(one.airFace, 0), corner(one.airFace, 3));
        const arcMm = middleOf(one).radiusMm * middleOf(one).turnRad;
        return flangeMm + arcMm;
      });
      const feetMm = Math.abs(corner(corner(front.bend, 0).air, 0).x - corner(corner(rear.bend, 0).air, 0).x);
      expect(onlyPart(plate).lengthMm).toBeCloseTo(
        way.reduce((sum, mm) => sum + mm, feetMm),
        8,
      );
      // X2, closed form: the inside of a bend is shorter than its middle by θ t / 2.
      const inside = (one: typeof front) =>
        (middleOf(one).radiusMm - thicknessMm / 2) * middleOf(one).turnRad;
      expect(middleOf(rear).radiusMm * middleOf(rear).turnRad - inside(rear)).toBeCloseTo(
        (Math.PI / 4) * thicknessMm,
        9,
      );
    }
  });
});
