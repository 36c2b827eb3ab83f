import { describe, expect, it } from "vitest";
import { thinnedIndices } from "../../../web/worker/thinned-indices.ts";

type Spot = readonly [number, number];

/** The distance of a point from a chord, by the area of their triangle or the nearer end. */
function fromChord([px, py]: Spot, [ax, ay]: Spot, [bx, by]: Spot): number {
  const length = Math.hypot(bx - ax, by - ay);
  const along = ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / length ** 2;
  if (along < 0) return Math.hypot(px - ax, py - ay);
  if (along > 1) return Math.hypot(px - bx, py - by);
  return Math.abs((px - ax) * (by - ay) - (py - ay) * (bx - ax)) / length;
}

const arc = Array.from({ length: 1601 }, (_, index): Spot => {
  const angleRad = (index / 1600) * 2;
  return [500 * Math.sin(angleRad), 500 * Math.cos(angleRad)];
});

describe("lines thinned for a picture", () => {
  it("an arc keeps within the allowed distance with far fewer points", () => {
    const kept = thinnedIndices(arc, (spot) => spot, 0.05);
    expect(kept.length).toBeLessThan(100);
    kept.slice(1).forEach((to, index) => {
      const from = kept[index] ?? 0;
      for (const spot of arc.slice(from, to + 1))
        expect(fromChord(spot, arc[from] ?? [0, 0], arc[to] ?? [0, 0])).toBeLessThanOrEqual(0.05 + 1e-9);
    });
  });

  it("the size of a part is that of all its points", () => {
    const spots = thinnedIndices(arc, (spot) => spot, 5).map((index) => arc[index] ?? [0, 0]);
    for (const axis of [0, 1] as const) {
      expect(Math.max(...spots.map((spot) => spot[axis]))).toBe(Math.max(...arc.map((spot) => spot[axis])));
      expect(Math.min(...spots.map((spot) => spot[axis]))).toBe(Math.min(...arc.map((spot) => spot[axis])));
    }
  });

  it("ends and corners stay", () => {
    const corner: readonly Spot[] = [
      [0, 0],
      [5, 0],
      [10, 0],
      [10, 5],
      [10, 10],
    ];
    expect(thinnedIndices(corner, (spot) => spot, 0.05)).toEqual([0, 2, 4]);
  });

  it("a straight line keeps its two ends, a single point itself", () => {
    expect(
      thinnedIndices(
        [
          [0, 0],
          [1, 1],
          [2, 2],
        ],
        ([x, y]) => [x ?? 0, y ?? 0],
        0.05,
      ),
    ).toEqual([0, 2]);
    expect(thinnedIndices([[3, 4]], ([x, y]) => [x ?? 0, y ?? 0], 0.05)).toEqual([0]);
    expect(thinnedIndices([], () => [0, 0], 0.05)).toEqual([]);
  });
});
