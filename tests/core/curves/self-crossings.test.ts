import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findSelfCrossings, type Path } from "../../../core/curves/index.ts";
import type { Vec2 } from "../../../core/foundation/index.ts";
import {
  closedPath,
  curveNode,
  curveOf,
  expectPoint,
  node,
  openPath,
  SEED,
  turnedPath,
} from "./drawn-paths.ts";

const square = (size: number, at: Vec2 = [0, 0]): Vec2[] => [
  [at[0], at[1]],
  [at[0] + size, at[1]],
  [at[0] + size, at[1] + size],
  [at[0], at[1] + size],
];
const polygon = (points: readonly Vec2[]): Path => closedPath(...points.map((at, i) => node(`n${i}`, at)));

interface Fixture {
  readonly name: string;
  readonly path: Path;
  /** The pairs of edges that meet. */
  readonly meet: readonly (readonly [string, string])[];
  readonly at?: Vec2;
}

const fixtures: readonly Fixture[] = [
  { name: "square", path: polygon(square(100)), meet: [] },
  {
    name: "bow tie",
    path: polygon([
      [0, 0],
      [100, 100],
      [100, 0],
      [0, 100],
    ]),
    meet: [["n0", "n2"]],
    at: [50, 50],
  },
  {
    name: "corner that touches the opposite side",
    path: polygon([
      [0, 0],
      [100, 0],
      [100, 100],
      [50, 0],
      [0, 100],
    ]),
    meet: [["n0", "n2"]],
    at: [50, 0],
  },
  {
    name: "corner that stays a tenth of a millimetre off the opposite side",
    path: polygon([
      [0, 0],
      [100, 0],
      [100, 100],
      [50, 0.1],
      [0, 100],
    ]),
    meet: [],
  },
  {
    name: "two corners on one spot",
    path: polygon([
      [0, 0],
      [50, 50],
      [100, 0],
      [100, 100],
      [50, 50],
      [0, 100],
    ]),
    meet: [["n0", "n3"]],
    at: [50, 50],
  },
  {
    name: "spike that runs back over itself",
    path: polygon([
      [0, 0],
      [100, 0],
      [160, 0],
      [100, 0],
      [100, 100],
      [0, 100],
    ]),
    meet: [
      ["n0", "n2"],
      ["n1", "n2"],
    ],
  },
  {
    name: "side that lies on another side",
    path: polygon([
      [0, 0],
      [100, 0],
      [100, 40],
      [70, 40],
      [70, 0],
      [30, 0],
      [30, 60],
      [0, 60],
    ]),
    meet: [
      ["n0", "n3"],
      ["n0", "n4"],
      ["n0", "n5"],
    ],
  },
  {
    name: "narrow tip of two degrees",
    path: polygon([
      [0, 0],
      [1000, 17.5],
      [0, 35],
    ]),
    meet: [],
  },
  {
    name: "narrow tip with a small radius",
    path: closedPath(node("n0", [0, 0]), node("n1", [1000, 40], { radiusMm: 0.05 }), node("n2", [0, 80])),
    meet: [],
  },
  {
    name: "curve that loops over itself",
    path: openPath(
      curveNode("n0", [0, 0], { tangentOutRad: 0.8, knotSpacingMm: 900 }),
      node("n1", [100, 0], { tangentInRad: -0.8 }),
    ),
    meet: [["n0", "n0"]],
  },
  {
    name: "curve that crosses the line beside it",
    path: openPath(
      node("n0", [0, 0]),
      curveNode("n1", [200, 0]),
      curveNode("n2", [260, 60]),
      curveNode("n3", [160, 90]),
      node("n4", [100, -60]),
    ),
    meet: [["n0", "n3"]],
  },
  {
    name: "curve that crosses its very neighbour",
    path: openPath(
      node("n0", [0, 0]),
      curveNode("n1", [200, 0], { tangentOutRad: 1, knotSpacingMm: 500 }),
      node("n2", [100, -60]),
    ),
    meet: [["n0", "n1"]],
  },
  {
    name: "two nodes of curves run there and back",
    path: closedPath(curveNode("n0", [0, 0]), curveNode("n1", [100, 30])),
    meet: [["n0", "n1"]],
  },
  {
    name: "open line whose end touches its start",
    path: openPath(node("n0", [0, 0]), node("n1", [80, 0]), node("n2", [80, 80]), node("n3", [0, 0.004])),
    meet: [["n0", "n2"]],
    at: [0, 0],
  },
];

const TURNS = [0, 0.3, Math.PI / 2, 2.2, -1.1];

describe("a line that meets itself", () => {
  for (const { name, path, meet, at } of fixtures) {
    it(`${name}, in any position`, () => {
      for (const angleRad of TURNS) {
        const turned = turnedPath(path, angleRad, [1234.5, -321.7]);
        const found = findSelfCrossings(curveOf(turned));
        expect(found.map(({ edgeIds }) => edgeIds)).toEqual(meet);
        const [first] = found;
        if (at && first) {
          const [a, b] = at;
          const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
          expectPoint(first.at, [a * cos - b * sin + 1234.5, a * sin + b * cos - 321.7], 0.01);
        }
      }
    });
  }

  it("random polygons cross where every pair of sides, tried one by one, says so", () => {
    const coordinate = fc.integer({ min: 0, max: 400 });
    fc.assert(
      fc.property(fc.array(fc.tuple(coordinate, coordinate), { minLength: 4, maxLength: 9 }), (points) => {
        const path = polygon(points);
        const apart = points.every((p, i) =>
          points.every((q, j) => i === j || p[0] !== q[0] || p[1] !== q[1]),
        );
        if (!apart) return;
        expect(findSelfCrossings(curveOf(path)).length > 0).toBe(anySidesMeet(points));
      }),
      { seed: SEED, numRuns: 200 },
    );
  });

  it("an outline of two thousand curves is free of crossings until two nodes are exchanged", () => {
    const points = Array.from({ length: 2000 }, (_, i): Vec2 => {
      const angleRad = (i * Math.PI) / 1000;
      const radiusMm = 1000 + 40 * Math.sin(9 * angleRad);
      return [radiusMm * Math.cos(angleRad), radiusMm * Math.sin(angleRad)];
    });
    const nodes = points.map((at, i) => curveNode(`n${i}`, at));
    expect(findSelfCrossings(curveOf(closedPath(...nodes)))).toEqual([]);
    const exchanged = nodes.map((own, i) => (i === 700 ? { ...own, at: points[1500] ?? own.at } : own));
    expect(findSelfCrossings(curveOf(closedPath(...exchanged))).length).toBeGreaterThan(0);
  });

  it("a scribble of two thousand sides is answered with its first crossings", () => {
    const points = Array.from(
      { length: 2000 },
      (_, i): Vec2 => [1000 * Math.sin(i * i * 1.1), 1000 * Math.sin(i * i * 2.3)],
    );
    expect(findSelfCrossings(curveOf(polygon(points)))).toHaveLength(50);
  });

  it("five thousand wild curves, forty metres each way, are answered as well", () => {
    const nodes = Array.from({ length: 5000 }, (_, i) =>
      curveNode(`n${i}`, [20_000 * Math.sin(i * i * 1.1), 20_000 * Math.sin(i * i * 2.3)]),
    );
    expect(findSelfCrossings(curveOf(closedPath(...nodes)))).toHaveLength(50);
  });
});

/** Exact for whole numbers: every pair of sides, ends included; neighbours only where one lies back on the other. */
function anySidesMeet(points: readonly (readonly [number, number])[]): boolean {
  const count = points.length;
  const point = (i: number) => points[i % count] ?? [0, 0];
  const side = (a: number, b: number, c: number) => {
    const [p, q, r] = [point(a), point(b), point(c)];
    return Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
  };
  const within = (a: number, b: number, c: number) => {
    const [p, q, r] = [point(a), point(b), point(c)];
    return [0, 1].every((k) => {
      const [x, y, z] = [p[k] ?? 0, q[k] ?? 0, r[k] ?? 0];
      return z >= Math.min(x, y) && z <= Math.max(x, y);
    });
  };
  const on = (a: number, b: number, c: number) => side(a, b, c) === 0 && within(a, b, c);
  for (let i = 0; i < count; i++) {
    const [p, q, r] = [point(i), point(i + 1), point(i + 2)];
    const dot = (q[0] - p[0]) * (r[0] - q[0]) + (q[1] - p[1]) * (r[1] - q[1]);
    if (side(i, i + 1, i + 2) === 0 && dot < 0) return true;
    for (let j = i + 2; j < count; j++) {
      if (i === 0 && j === count - 1) continue;
      const crosses =
        side(i, i + 1, j) * side(i, i + 1, j + 1) < 0 && side(j, j + 1, i) * side(j, j + 1, i + 1) < 0;
      if (crosses || on(i, i + 1, j) || on(i, i + 1, j + 1) || on(j, j + 1, i) || on(j, j + 1, i + 1))
        return true;
    }
  }
  return false;
}
