import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pairEdges, placeUnder, pointOnRuled } from "../../../core/rulings/index.ts";
import { edgeOf } from "./edges-of.ts";
import { coneEdges, warpedEdges } from "./random-edges.ts";

const FOAM = { thicknessMm: 10, leastRadiusMm: 600 };
const FOUND_MM = 1e-7;

describe("a plan point on a ruled sheet", () => {
  it("is found again from the plan of any place, at the drawn face and at depth", () => {
    fc.assert(
      fc.property(fc.oneof(warpedEdges, coneEdges), ({ first, second }) => {
        const sheet = pairEdges(edgeOf(first), edgeOf(second), FOAM);
        for (const depthMm of [0, 8]) {
          const find = placeUnder(sheet, depthMm);
          for (const share of [0.03, 0.41, 0.78])
            for (const t of [0.05, 0.5, 0.9]) {
              const point = pointOnRuled(sheet, { sMm: share * sheet.lengthSMm, t }, depthMm);
              const place = find(point);
              if (!place) throw new Error("a place");
              const again = pointOnRuled(sheet, place, depthMm);
              expect(Math.hypot(again.x - point.x, again.y - point.y)).toBeLessThan(FOUND_MM);
            }
        }
      }),
      { seed: 5, numRuns: 8 },
    );
  });

  const sheet = pairEdges(
    edgeOf((t) => [1000 * t, 0, 40 * t * t]),
    edgeOf((t) => [1000 * t, 300, 90 * t * t]),
    FOAM,
  );

  it("outside of the sheet has no place, unless the sheet is drawn out beyond its edges and ends", () => {
    const [within, endless] = [placeUnder(sheet, 4), placeUnder(sheet, 4, "endless")];
    for (const point of [
      { x: 500, y: -40 },
      { x: 500, y: 380 },
      { x: -60, y: 100 },
      { x: 1080, y: 200 },
      { x: -30, y: -30 },
    ]) {
      expect(within(point)).toBeUndefined();
      const place = endless(point);
      if (!place) throw new Error("a place");
      const again = pointOnRuled(sheet, place, 4);
      expect(Math.hypot(again.x - point.x, again.y - point.y)).toBeLessThan(FOUND_MM);
    }
  });

  it("has no place on an upright sheet", () => {
    const upright = pairEdges(
      edgeOf((t) => [1000 * t, 0, 0]),
      edgeOf((t) => [1000 * t, 0, 200]),
      FOAM,
    );
    expect(placeUnder(upright, 0, "endless")({ x: 400, y: 0 })).toBeUndefined();
  });
});
