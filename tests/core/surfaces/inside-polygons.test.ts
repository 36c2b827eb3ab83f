import fc from "fast-check";
import { expect, it } from "vitest";
import { insideOf, polygonsContain } from "../../../core/surfaces/inside-polygons.ts";

const SEED = 4127;

const anyPlanPoint = fc.record({
  x: fc.integer({ min: -50, max: 50 }),
  y: fc.integer({ min: -50, max: 50 }),
});
const anyPolygons = fc.array(fc.array(anyPlanPoint, { minLength: 0, maxLength: 200 }), { maxLength: 3 });

it("looks for a place among the sides beside it as among all sides, holes, crossings and level sides included", () => {
  let inside = 0;
  fc.assert(
    fc.property(anyPolygons, (polygons) => {
      const isInside = insideOf(polygons);
      for (let x = -51; x <= 51; x += 3) {
        for (let y = -51; y <= 51; y += 1.5) {
          const expected = polygonsContain(polygons, { x, y });
          if (expected) inside++;
          if (isInside({ x, y }) !== expected) throw new Error(`differs at ${x}, ${y}`);
        }
      }
    }),
    { seed: SEED, numRuns: 30 },
  );
  expect(inside).toBeGreaterThan(1000);
});
