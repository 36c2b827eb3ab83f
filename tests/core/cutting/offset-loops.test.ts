import { EndType, inflatePathsD, JoinType } from "clipper2-ts";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { offsetLoops, signedAreaMm2 } from "../../../core/cutting/index.ts";
import { type FlatLoop, polygonOfLoop } from "../../../core/patterns/index.ts";
import { loopThrough, rectangle, smoothLoop } from "./flat-parts.ts";

const RUNS = { seed: 72, numRuns: 60 };

/** The area of the same outline grown by a general polygon library, mitred, 6 decimals. */
function independentAreaMm2(loop: FlatLoop, byMm: number): number {
  const path = polygonOfLoop(loop).map(({ u, v }) => ({ x: u, y: v }));
  const grown = inflatePathsD([path], byMm, JoinType.Miter, EndType.Polygon, 4, 6);
  return grown.reduce((sum, points) => sum + signedAreaMm2(points.map(({ x, y }) => ({ u: x, v: y }))), 0);
}

const areaMm2 = (loop: FlatLoop, byMm: number): number =>
  offsetLoops([loop], () => byMm).reduce((sum, points) => sum + signedAreaMm2(points), 0);

describe("the line of the blade", () => {
  it("runs outside each edge by that edge's own allowance, with mitred corners", () => {
    const [line] = offsetLoops([rectangle(100, 40)], ({ edgeId }) => (edgeId === "e1" ? 5 : 1));
    expect(line).toEqual([
      { u: -1, v: -1 },
      { u: 105, v: -1 },
      { u: 105, v: 41 },
      { u: -1, v: 41 },
    ]);
  });

  it("makes holes smaller", () => {
    const hole = smoothLoop(3000, (turn) => [20 * Math.cos(turn), 20 * Math.sin(turn)], "hole");
    expect(areaMm2(hole, 2) / (-Math.PI * 18 ** 2)).toBeCloseTo(1, 5);
  });

  it("steps where the allowance changes along a straight line", () => {
    const loop = loopThrough([
      [0, 0],
      [50, 0],
      [100, 0],
      [100, 40],
      [0, 40],
    ]);
    const [line] = offsetLoops([loop], ({ edgeId }) => (edgeId === "e0" ? 3 : 0));
    expect(line).toContainEqual({ u: 50, v: -3 });
    expect(line).toContainEqual({ u: 50, v: 0 });
  });

  it("cuts a needle-sharp corner off square instead of running far out", () => {
    const needle = loopThrough([
      [0, 0],
      [400, 0],
      [0, 20],
    ]);
    const [line] = offsetLoops([needle], () => 2);
    const farthestMm = Math.max(...(line ?? []).map(({ u }) => u));
    expect(farthestMm).toBeGreaterThanOrEqual(402);
    expect(farthestMm).toBeLessThan(406);
  });

  it("agrees with a general polygon library on stars with deep inner corners of dense edges", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 6 }),
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        fc.double({ min: 0.1, max: 8, noNaN: true }),
        (waves, depth, byMm) => {
          const star = smoothLoop(1500, (turn) => {
            const reach = 300 * (1 + depth * Math.abs(Math.cos(waves * turn)));
            return [reach * Math.cos(turn), reach * Math.sin(turn)];
          });
          const expected = independentAreaMm2(star, byMm);
          expect(Math.abs(areaMm2(star, byMm) / expected - 1)).toBeLessThan(2e-6);
        },
      ),
      RUNS,
    );
  });
});
