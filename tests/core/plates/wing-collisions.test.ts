import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SpacePoint } from "../../../core/foundation/index.ts";
import type { FoldedWing } from "../../../core/plates/index.ts";
import { corner, cross, dot, lengthOf, minus } from "./measure-plates.ts";
import { fold, planNode, wing } from "./plates.ts";

const RUNS = { seed: 31, numRuns: 60 };
/** Metal that stands in metal by less may be taken to touch. */
const DEEP_MM = 0.1;
const STEPS = [0, 0.1, 0.25, 0.5, 0.75, 0.9, 1];

/** Points on both faces of a wing's flat, and half-way through it. */
function samples({ airFace, upperFace }: FoldedWing): readonly SpacePoint[] {
  return STEPS.flatMap((s) =>
    STEPS.flatMap((t) =>
      STEPS.map((d) => {
        const on = (face: readonly SpacePoint[]) =>
          between(
            between(corner(face, 0), corner(face, 1), s),
            between(corner(face, 3), corner(face, 2), s),
            t,
          );
        return between(on(airFace), on(upperFace), d);
      }),
    ),
  );
}

const between = (a: SpacePoint, b: SpacePoint, t: number): SpacePoint => ({
  x: a.x + (b.x - a.x) * t,
  y: a.y + (b.y - a.y) * t,
  z: a.z + (b.z - a.z) * t,
});

/** How deep a point lies in a wing's flat: the least distance to the planes of its six faces; negative outside. */
function depthIn({ airFace, upperFace }: FoldedWing, p: SpacePoint): number {
  const through = minus(corner(upperFace, 0), corner(airFace, 0));
  const thicknessMm = lengthOf(through);
  const middle = airFace.reduce(
    (sum, q) => ({ x: sum.x + q.x / 4, y: sum.y + q.y / 4, z: sum.z + q.z / 4 }),
    {
      x: 0,
      y: 0,
      z: 0,
    },
  );
  const alongMm = dot(minus(p, corner(airFace, 0)), through) / thicknessMm;
  const sides = airFace.map((q, i) => {
    const normal = cross(minus(corner(airFace, (i + 1) % 4), q), through);
    const inward = Math.sign(dot(minus(middle, q), normal));
    return (inward * dot(minus(p, q), normal)) / lengthOf(normal);
  });
  return Math.min(alongMm, thicknessMm - alongMm, ...sides);
}

const plates = fc.record({
  wideMm: fc.double({ min: 60, max: 200, noNaN: true }),
  skewMm: fc.double({ min: -40, max: 40, noNaN: true }),
  angles: fc.array(fc.double({ min: 0.6, max: 2.7, noNaN: true }), { minLength: 4, maxLength: 4 }),
  lengthMm: fc.double({ min: 50, max: 160, noNaN: true }),
  taperRad: fc.double({ min: -0.4, max: 0.4, noNaN: true }),
});

describe("wings that lean and spread", () => {
  it("stand clear of one another, or are named: points of one wing are never in another's metal", () => {
    let collided = 0;
    let clear = 0;
    fc.assert(
      fc.property(plates, ({ wideMm, skewMm, angles, lengthMm, taperRad }) => {
        const base = [
          planNode("i", 0, 0),
          planNode("r", 220, skewMm),
          planNode("o", 220, wideMm + 60),
          planNode("f", skewMm / 2, wideMm + 60),
        ];
        const wings = base.map(({ id }, i) =>
          wing(id, {
            angleRad: angles[i] ?? 1,
            lengthMm: lengthMm + 60,
            startTaperRad: taperRad,
            endTaperRad: taperRad,
          }),
        );
        const { plate, problems } = fold(base, wings);
        if (!plate) throw new Error("no plate");
        if (problems.some(({ kind }) => kind === "wings-collide")) collided += 1;
        else clear += 1;
        for (const one of plate.wings) {
          const points = samples(one);
          // Over its own base and every other part of it.
          expect(Math.min(...points.map(({ z }) => z))).toBeGreaterThan(50 - 1e-9);
          for (const other of plate.wings) {
            if (other === one) continue;
            expect(Math.max(...points.map((p) => depthIn(other, p)))).toBeLessThan(DEEP_MM);
          }
        }
      }),
      RUNS,
    );
    expect(collided).toBeGreaterThan(5);
    expect(clear).toBeGreaterThan(5);
  });

  it("are not called colliding where a little less bend parts them", () => {
    // Opposite wings over a base 100 wide meet over its middle when each reaches 50 in from its drawn edge.
    const base = [planNode("i", 0, 0), planNode("r", 300, 0), planNode("o", 300, 100), planNode("f", 0, 100)];
    const angleRad = (2 * Math.PI) / 3;
    // The inner corner of the free edge stands L / 2 in along the outer face, and t cos 30° more through the metal.
    const touchMm = 2 * (50 - 2 * Math.cos(Math.PI / 6));
    const kinds = (lengthMm: number) =>
      fold(base, [wing("i", { angleRad, lengthMm }), wing("o", { angleRad, lengthMm })]).problems.map(
        ({ kind }) => kind,
      );
    expect(kinds(touchMm - 0.1)).toEqual([]);
    expect(kinds(touchMm + 0.2)).toEqual(["wings-collide"]);
  });
});
