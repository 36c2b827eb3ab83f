import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FlatPoint } from "../../../core/foundation/index.ts";
import { at } from "../../../core/foundation/index.ts";
import { shortestBetween } from "../../../core/patterns/index.ts";
import { boxNodes, circleNodes, opening, withOpenings } from "../openings.ts";
import { layTray, partOf, rectangle, section, sideNode, straightProfile, tray } from "../trays.ts";

const SEED = 20_261;

const level = (settings = {}) =>
  tray({ p: straightProfile(0, 100, 1000, 100) }, [section(1, rectangle(0, 1000, 0, 400))], settings);

describe("the web that an opening leaves", () => {
  it("is the foam to the nearest edge, and is named where it is under the setting", () => {
    const laid = layTray(withOpenings(level(), opening(1, circleNodes(500, 310, 70))));
    const [web] = partOf(laid, "S1").webs ?? [];
    expect(web?.webMm).toBeCloseTo(20, 6);
    expect(web?.otherEdgeId).toBe("outer");
    expect([web?.from.v, web?.to.v].map((v) => Math.round(v ?? 0))).toEqual([380, 400]);
    expect(laid.problems).toEqual([
      {
        kind: "web-too-narrow",
        place: { openingId: "h1", itemId: "s1", partId: "S1" },
        name: "Hatch 1",
        otherName: "outer edge",
        webMm: web?.webMm,
        leastMm: 30,
      },
    ]);
  });

  it("under no problem is reported still", () => {
    const laid = layTray(withOpenings(level(), opening(1, circleNodes(500, 200, 70))));
    expect(laid.problems).toEqual([]);
    expect(partOf(laid, "S1").webs?.[0]?.webMm).toBeCloseTo(130, 6);
  });

  it("of an opening that runs into an edge is not that edge, but the next one", () => {
    const laid = layTray(withOpenings(level(), opening(1, boxNodes(25, 200, 300, 500))));
    const [web] = partOf(laid, "S1").webs ?? [];
    expect(web?.otherEdgeId).toBe("front");
    expect(web?.webMm).toBeCloseTo(25, 9);
  });

  it("between two openings counts for both", () => {
    const laid = layTray(
      withOpenings(level(), opening(1, circleNodes(400, 200, 70)), opening(2, circleNodes(560, 200, 70))),
    );
    const webs = partOf(laid, "S1").webs ?? [];
    expect(webs.map(({ name, otherName }) => `${name} to ${otherName}`)).toEqual([
      "Hatch 1 to Hatch 2",
      "Hatch 2 to Hatch 1",
    ]);
    for (const { webMm } of webs) expect(webMm).toBeCloseTo(20, 6);
  });

  it("between an opening and its own image across the centre line counts", () => {
    const laid = layTray(withOpenings(level({ symmetry: "mirrored" }), opening(1, circleNodes(500, 80, 70))));
    const [web] = partOf(laid, "S1").webs ?? [];
    expect(web?.webMm).toBeCloseTo(20, 6);
    expect(web?.otherName).toBe("Hatch 1, left");
  });

  it("to a fold is measured from the fold as it is cut", () => {
    const folded = tray(
      { p: [sideNode("a", 0, 100), sideNode("b", 500, 100), sideNode("c", 1000, 250)] },
      [section(1, rectangle(0, 1000, 0, 400))],
      { gapLimitMm: 0 },
    );
    const laid = layTray(withOpenings(folded, opening(1, boxNodes(300, 480, 100, 300))));
    const [web] = partOf(laid, "S1.1").webs ?? [];
    expect(web?.otherName).toBe("fold");
    // The core lies inside the fold: the neutral fibre ends earlier by depth × tan(φ / 2).
    const lostMm = 10.8 * Math.tan(Math.atan(0.3) / 2);
    expect(web?.webMm).toBeCloseTo(20 - lostMm, 6);
  });

  it("is the same on both hands", () => {
    const mirrored = tray(
      { p: straightProfile(0, 100, 1000, 100) },
      [section(1, rectangle(0, 1000, 50, 400))],
      { symmetry: "mirrored" },
    );
    const laid = layTray(withOpenings(mirrored, opening(1, circleNodes(500, 310, 70))));
    const [right, left] = ["S1R", "S1L"].map((id) => partOf(laid, id).webs?.[0]);
    expect(left?.webMm).toBe(right?.webMm);
    expect(left?.from.v).toBe(-(right?.from.v ?? 0));
    expect(laid.problems.length).toBe(1);
  });
});

describe("the shortest straight between two lines", () => {
  const point = fc.record({ u: fc.integer({ min: 0, max: 300 }), v: fc.integer({ min: 0, max: 100 }) });
  const line = fc.array(point, { minLength: 2, maxLength: 60 });
  const shifted = (points: readonly FlatPoint[]) => points.map(({ u, v }) => ({ u, v: v + 130 }));

  it("is that of every pair of their segments, tried one by one", () => {
    fc.assert(
      fc.property(line, line, (a, above) => {
        const b = shifted(above);
        let least = Number.POSITIVE_INFINITY;
        for (const [p, q] of [
          [a, b],
          [b, a],
        ] as const) {
          for (const end of p) {
            for (let i = 1; i < q.length; i++) {
              const [from, to] = [at(q, i - 1), at(q, i)];
              for (let k = 0; k <= 200; k++) {
                const near = {
                  u: from.u + ((to.u - from.u) * k) / 200,
                  v: from.v + ((to.v - from.v) * k) / 200,
                };
                least = Math.min(least, Math.hypot(near.u - end.u, near.v - end.v));
              }
            }
          }
        }
        const found = shortestBetween([a], [b]);
        expect(found?.lengthMm).toBeLessThanOrEqual(least + 1e-9);
        expect(found?.lengthMm).toBeGreaterThan(least - 1);
      }),
      { seed: SEED, numRuns: 20 },
    );
  });
});
