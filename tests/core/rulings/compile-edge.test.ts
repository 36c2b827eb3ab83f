import { describe, expect, it } from "vitest";
import { compileEdge, placeOnEdge, reverseEdge, straightEdge } from "../../../core/rulings/index.ts";
import { edgeOf, pieceOf, splitAt, type Triple } from "./edges-of.ts";

const LENGTH_RELATIVE = 1e-10;
const PLACE_MM = 1e-8;

const P = (x: number, y: number, z: number) => ({ x, y, z });
const helix = (t: number): Triple => [200 * Math.cos(3 * t), 200 * Math.sin(3 * t), 300 * t];
/** √((200 · 3)² + 300²): a helix has even speed. */
const HELIX_MM = Math.hypot(600, 300);

describe("an edge in space", () => {
  it("has the length of a helix, of a parabola and of a run of lines", () => {
    expect(Math.abs(edgeOf(helix).lengthMm / HELIX_MM - 1)).toBeLessThan(LENGTH_RELATIVE);
    // √5/2 + ln(2 + √5)/4 for y = x² from 0 to 1 (A1, published).
    const parabola = edgeOf((t) => [100 * t, 100 * t * t, 7]);
    expect(Math.abs(parabola.lengthMm / 147.894285754459 - 1)).toBeLessThan(LENGTH_RELATIVE);
    expect(straightEdge([P(0, 0, 0), P(3, 4, 0), P(3, 4, 12)]).lengthMm).toBeCloseTo(17, 10);
  });

  it("is found by its length, with tangent and curvature", () => {
    const edge = edgeOf((t) => helix(t * (0.6 + 0.4 * t)));
    for (const share of [0, 0.2, 0.77, 1]) {
      const { point, tangent, curvature } = placeOnEdge(edge, share * edge.lengthMm);
      const [x, y, z] = helix(share);
      expect(Math.hypot(point.x - x, point.y - y, point.z - z)).toBeLessThan(1e-7);
      expect(Math.abs(Math.hypot(tangent.x, tangent.y, tangent.z) - 1)).toBeLessThan(1e-9);
      expect(Math.abs(tangent.z - 300 / HELIX_MM)).toBeLessThan(1e-8);
      // Curvature of a helix: r ω² / speed², toward its axis.
      const size = (200 * 9) / HELIX_MM ** 2;
      expect(
        Math.hypot(curvature.x + (size * x) / 200, curvature.y + (size * y) / 200, curvature.z),
      ).toBeLessThan(1e-7);
    }
  });

  it("has corners where its direction turns and jumps where its bend changes, and nothing where a piece was split", () => {
    const arc = (t: number): Triple => [300 + 100 * Math.sin(t), 100 - 100 * Math.cos(t), 0];
    const edge = compileEdge([
      pieceOf((t) => [300 * t, 0, 0]),
      pieceOf((t) => arc(0.4 * t)),
      pieceOf((t) => arc(0.4 + 0.4 * t)),
      pieceOf((t) => [arc(0.8)[0] + 50 * t, arc(0.8)[1], 20 * t]),
    ]);
    expect(edge.bordersMm.map(Math.round)).toEqual([300, 340, 380]);
    expect(edge.jumpsMm.map(Math.round)).toEqual([300]);
    expect(edge.cornersMm.map(Math.round)).toEqual([380]);
    const [before, after] = [placeOnEdge(edge, 380, "before"), placeOnEdge(edge, 380, "after")];
    expect(before.tangent.y).toBeCloseTo(Math.sin(0.8), 8);
    expect(after.tangent.y).toBeCloseTo(0, 8);
  });

  it("is the same edge in more pieces, and run the other way", () => {
    const [whole, split] = [edgeOf(helix), splitAt(helix, [0.11, 0.4, 0.9])];
    const back = reverseEdge(whole);
    expect(split.cornersMm).toEqual([]);
    expect(split.jumpsMm).toEqual([]);
    for (const share of [0.05, 0.33, 0.8]) {
      const mm = share * whole.lengthMm;
      const [a, b, c] = [
        placeOnEdge(whole, mm),
        placeOnEdge(split, mm),
        placeOnEdge(back, whole.lengthMm - mm),
      ];
      for (const other of [b, c])
        expect(
          Math.hypot(a.point.x - other.point.x, a.point.y - other.point.y, a.point.z - other.point.z),
        ).toBeLessThan(PLACE_MM * 10);
      expect(a.tangent.x + c.tangent.x).toBeCloseTo(0, 8);
    }
  });

  it("may be a point", () => {
    const point = straightEdge([P(5, 6, 7), P(5, 6, 7)]);
    expect(point.lengthMm).toBe(0);
    expect(placeOnEdge(point, 0).point).toEqual(P(5, 6, 7));
  });
});
