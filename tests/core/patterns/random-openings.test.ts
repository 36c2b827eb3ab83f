import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at } from "../../../core/foundation/index.ts";
import type { PlanElement } from "../../../core/project/index.ts";
import { circleNodes, opening, withOpenings } from "../openings.ts";
import { anyCorneredSection, anySection, projectOf } from "../random-sections.ts";
import { layTray, planNode, relativeMiss } from "../trays.ts";

const SEED = 20_261;
const HARMLESS = ["bend-too-tight", "web-too-narrow", "opening-cuts-nothing", "opening-leaves-nothing"];

/** Lengths and areas of a pattern as written, against those of the surface. */
const PATTERN_RELATIVE = 1e-6;
/** Ends of edges in a pattern. */
const CLOSED_MM = 1e-5;
/** An edge or a rest of one shorter than this is not measured against a millionth of itself. */
const SHORT_MM = 5;

const anyHole: fc.Arbitrary<readonly PlanElement[]> = fc.oneof(
  fc
    .tuple(
      fc.integer({ min: 200, max: 800 }),
      fc.integer({ min: 50, max: 650 }),
      fc.integer({ min: 15, max: 150 }),
    )
    .map(([x, y, r]) => circleNodes(x, y, Math.min(r, y))),
  fc
    .tuple(
      fc.integer({ min: 150, max: 850 }),
      fc.integer({ min: 1, max: 600 }),
      fc.array(fc.integer({ min: 10, max: 140 }), { minLength: 3, maxLength: 6 }),
      fc.boolean(),
    )
    .map(([x, y, reaches, isCurve]) =>
      reaches.map((reach, i) => {
        const angle = (2 * Math.PI * (i + 0.3)) / reaches.length;
        const next = isCurve ? "curve" : "line";
        return planNode(
          `h${i}`,
          x + reach * Math.cos(angle),
          Math.max(0.5 * i, y + reach * Math.sin(angle)),
          {
            next,
          },
        );
      }),
    ),
);

describe("random openings in random sections", { timeout: 120_000 }, () => {
  it("leave closed patterns whose edges and area are those of the neutral surface", () => {
    let cut = 0;
    fc.assert(
      fc.property(anySection, fc.array(anyHole, { minLength: 1, maxLength: 2 }), (random, holes) => {
        const project = withOpenings(
          projectOf(random),
          ...holes.map((elements, i) => opening(i + 1, elements)),
        );
        const laid = layTray(project);
        fc.pre(laid.problems.every(({ kind }) => HARMLESS.includes(kind)));
        if (laid.problems.every(({ kind }) => kind !== "opening-cuts-nothing")) cut++;
        for (const part of laid.parts) {
          for (const { edges } of part.loops) {
            edges.forEach(({ points }, i) => {
              const [a, b] = [at(at(edges, i - 1).points, -1), at(points, 0)];
              expect(Math.hypot(b.u - a.u, b.v - a.v)).toBeLessThan(CLOSED_MM);
            });
          }
          for (const edge of part.edges) {
            if (edge.spaceLengthMm < SHORT_MM) continue;
            expect(relativeMiss(edge.flatLengthMm, edge.spaceLengthMm), edge.edgeId).toBeLessThan(
              PATTERN_RELATIVE,
            );
          }
          if (part.spaceAreaMm2 > 1000)
            expect(relativeMiss(part.flatAreaMm2, part.spaceAreaMm2)).toBeLessThan(PATTERN_RELATIVE);
        }
      }),
      { seed: SEED, numRuns: 40 },
    );
    expect(cut).toBeGreaterThan(15);
  });

  it("across profile corners never fail, and lose no area on the air side", () => {
    fc.assert(
      fc.property(anyCorneredSection, anyHole, (random, hole) => {
        const laid = layTray(withOpenings(projectOf(random), opening(1, hole)));
        for (const part of laid.parts) expect(part.flatAreaMm2).toBeGreaterThan(0);
      }),
      { seed: SEED, numRuns: 25 },
    );
  });
});
