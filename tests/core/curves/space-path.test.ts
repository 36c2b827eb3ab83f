import { describe, expect, it } from "vitest";
import {
  compileSpacePath,
  pieceLengthMm,
  pointOnSpaceCubic,
  type SpaceNode,
  velocityOnSpaceCubic,
} from "../../../core/curves/index.ts";
import { at, distanceSpace, integrate, lengthSpace } from "../../../core/foundation/index.ts";

const node = (id: string, x: number, y: number, z: number, more: Partial<SpaceNode> = {}): SpaceNode => ({
  id,
  x,
  y,
  z,
  next: "line",
  ...more,
});

function compiled(nodes: readonly SpaceNode[]) {
  const path = compileSpacePath(nodes);
  if (!path.ok) throw new Error(JSON.stringify(path.problems));
  return path.value;
}

const lengthOf = (nodes: readonly SpaceNode[]): number =>
  compiled(nodes).reduce(
    (sum, piece) => sum + integrate((t) => lengthSpace(velocityOnSpaceCubic(piece, t)), 0, 1),
    0,
  );

describe("an edge in space", () => {
  it("of two nodes is the straight between them", () => {
    const pieces = compiled([node("a", 0, 0, 0), node("b", 300, 400, 1200)]);
    expect(pieces).toHaveLength(1);
    expect(pointOnSpaceCubic(at(pieces, 0), 0.5)).toEqual({ x: 150, y: 200, z: 600 });
    expect(lengthOf([node("a", 0, 0, 0), node("b", 300, 400, 1200)])).toBeCloseTo(1300, 9);
  });

  it("with a radius is shorter than its corner by 2 R tan(θ/2) − R θ, in whatever plane the corner lies", () => {
    // The corner of a right angle in a plane that leans; legs 500, radius 200 (closed form).
    const nodes = [
      node("a", 0, 0, 0),
      node("b", 400, 0, 300, { radiusMm: 200 }),
      node("c", 400 - 300, 0, 300 + 400),
    ];
    const leaning = nodes.map(({ x, y, z, ...rest }) => ({
      ...rest,
      x,
      y: y + 0.3 * z,
      z: z * Math.sqrt(1 - 0.09),
    }));
    const expected = 1000 - 2 * 200 * Math.tan(Math.PI / 4) + (200 * Math.PI) / 2;
    expect(lengthOf(nodes)).toBeCloseTo(expected, 6);
    expect(lengthOf(leaning)).toBeCloseTo(expected, 6);
  });

  it("of curves is one spline with continuous slope and bend through its nodes", () => {
    const pieces = compiled([
      node("a", 0, 0, 0, { next: "curve" }),
      node("b", 400, 30, 50, { next: "curve" }),
      node("c", 900, 20, 40, { next: "curve" }),
      node("d", 1300, 0, 90),
    ]);
    expect(pieces).toHaveLength(3);
    const nodes = [400, 900];
    nodes.forEach((x, i) => {
      const [before, after] = [at(pieces, i), at(pieces, i + 1)];
      expect(pointOnSpaceCubic(before, 1).x).toBeCloseTo(x, 9);
      expect(distanceSpace(pointOnSpaceCubic(before, 1), pointOnSpaceCubic(after, 0))).toBeLessThan(1e-9);
      const [v1, v2] = [velocityOnSpaceCubic(before, 1), velocityOnSpaceCubic(after, 0)];
      const [s1, s2] = [lengthSpace(v1), lengthSpace(v2)];
      expect(v1.z / s1).toBeCloseTo(v2.z / s2, 9);
      expect(v1.y / s1).toBeCloseTo(v2.y / s2, 9);
    });
  });

  it("has for its plan the curve that a builder sees", () => {
    const pieces = compiled([node("a", 0, 0, 5, { next: "curve" }), node("b", 300, 400, 9)]);
    expect(pieceLengthMm(at(pieces, 0).plan)).toBeCloseTo(500, 9);
    expect(at(pieces, 0).plan).toMatchObject({ edgeId: "a", startNodeId: "a", endNodeId: "b" });
  });

  it("says which node is at fault", () => {
    const faults = (nodes: readonly SpaceNode[]) => {
      const path = compileSpacePath(nodes);
      return path.ok ? [] : path.problems;
    };
    expect(faults([node("a", 0, 0, 0)])).toMatchObject([{ kind: "too-few-nodes", count: 1 }]);
    expect(faults([node("a", 0, 0, 0), node("b", 0, 0, 0)])).toMatchObject([{ kind: "zero-length-segment" }]);
    const tight = [node("a", 0, 0, 0), node("b", 100, 0, 0, { radiusMm: 200 }), node("c", 100, 100, 0)];
    expect(faults(tight)).toMatchObject([
      { kind: "radius-does-not-fit", nodeId: "b", largestMm: expect.closeTo(100, 9) },
    ]);
    const bent = [
      node("a", 0, 0, 0, { next: "curve" }),
      node("b", 100, 0, 0, { radiusMm: 20 }),
      node("c", 100, 100, 0),
    ];
    expect(faults(bent)).toMatchObject([{ kind: "radius-needs-lines", nodeId: "b" }]);
  });
});
