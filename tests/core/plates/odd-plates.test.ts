import { areaD, FillRule, unionD } from "clipper2-ts";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { PlanNode, Wing } from "../../../core/project/index.ts";
import { corner, fromOutlineMm, onlyPart, polygonOf, shoelaceMm2 } from "./measure-plates.ts";
import { fold, planNode, wing } from "./plates.ts";

const RUNS = { seed: 77, numRuns: 120 };
/** The polygon library keeps six decimals and drops corners of less. */
const COVERED_RELATIVE = 1e-5;

/** Star-shaped bases with inner corners, needles and some curved edges. */
const bases = fc
  .array(
    fc.record({
      share: fc.double({ min: 0.4, max: 1.6, noNaN: true }),
      farMm: fc.double({ min: 60, max: 260, noNaN: true }),
      isCurved: fc.integer({ min: 0, max: 9 }).map((n) => n === 0),
    }),
    { minLength: 3, maxLength: 9 },
  )
  .map((corners): readonly PlanNode[] => {
    const total = corners.reduce((sum, { share }) => sum + share, 0);
    let turned = 0;
    return corners.map(({ share, farMm, isCurved }, i) => {
      turned += (share / total) * 2 * Math.PI;
      const next = isCurved ? "curve" : "line";
      return planNode(`n${i}`, farMm * Math.cos(turned), 300 + farMm * Math.sin(turned), { next });
    });
  });

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const oddWing = fc.record({
  angleRad: fc.oneof(number(0.02, 2.9), number(-2.9, -0.02)),
  insideRadiusMm: number(0, 15),
  lengthMm: number(5, 90),
  startInsetMm: fc.oneof(fc.constant(0), number(0, 4), number(0, 60)),
  endInsetMm: fc.oneof(fc.constant(0), number(0, 4), number(0, 60)),
  startTaperRad: number(-0.8, 1),
  endTaperRad: number(-0.8, 1),
});

const plates = bases.chain((base) =>
  fc.array(fc.tuple(fc.nat(base.length - 1), oddWing), { maxLength: base.length + 2 }).map((drawn) => ({
    base,
    wings: drawn.map(([i, changes], k): Wing => wing(corner(base, i).id, { ...changes, id: `w${k}` })),
  })),
);

describe("plates of any shape", () => {
  it("have a flat that one sheet gives: its outline meets itself nowhere, and every bend ends on it", () => {
    let made = 0;
    let left = 0;
    fc.assert(
      fc.property(plates, ({ base, wings }) => {
        let folded: ReturnType<typeof fold>;
        try {
          folded = fold(base, wings);
        } catch (error) {
          if (String(error).includes("does not compile")) return;
          throw error;
        }
        if (!folded.plate) throw new Error("no plate");
        const part = onlyPart(folded.plate);
        made += folded.plate.wings.length;
        left += wings.length - folded.plate.wings.length;
        // What is left out is named.
        const named = new Set(folded.problems.map(({ place }) => place.wingId));
        const there = new Set(folded.plate.wings.map(({ wingId }) => wingId));
        for (const { id } of wings) expect(named.has(id) || there.has(id)).toBe(true);
        const outline = corner(part.loops, 0);
        const polygon = polygonOf(outline);
        const areaMm2 = shoelaceMm2(polygon);
        const path = polygon.map(({ u, v }) => ({ x: u, y: v }));
        // A polygon that crosses itself covers more or less than its shoelace area.
        const covered = unionD([path], [], FillRule.NonZero, 6).reduce((sum, one) => sum + areaD(one), 0);
        expect(Math.abs(covered / areaMm2 - 1)).toBeLessThan(COVERED_RELATIVE);
        for (const bend of part.bends) {
          for (const point of [...bend.baseTangent, ...bend.middle, ...bend.wingTangent]) {
            expect(fromOutlineMm(point, outline)).toBeLessThan(1e-6);
          }
          expect(bend.figures.allowanceMm).toBeGreaterThan(0);
        }
        const { baseAreaMm2, bendAreaMm2, wingAreaMm2, flatAreaMm2 } = folded.plate;
        expect((baseAreaMm2 + bendAreaMm2 + wingAreaMm2) / flatAreaMm2).toBeCloseTo(1, 9);
        expect([...new Set(folded.plate.folding.flatMap(({ bendIds }) => bendIds))]).toHaveLength(
          part.bends.length,
        );
      }),
      RUNS,
    );
    expect(made).toBeGreaterThan(100);
    expect(left).toBeGreaterThan(50);
  });
});
