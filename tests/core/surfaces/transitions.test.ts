import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at, type FlatPoint } from "../../../core/foundation/index.ts";
import type { Part } from "../../../core/patterns/index.ts";
import type { Item, Transition, TransitionEdge } from "../../../core/project/index.ts";
import {
  edgeOf,
  freeEdge,
  layTray,
  partOf,
  rectangle,
  relativeMiss,
  section,
  sideNode,
  stretchOf,
  transition,
  tray,
} from "../trays.ts";

const LENGTH_RELATIVE = 1e-6;
const CONGRUENT_MM = 0.01;
const DEVELOPABLE_RAD = (0.1 * Math.PI) / 180;

const FLOOR = [sideNode("a", -100, 60), sideNode("b", 2000, 60)];
const RAMP = [
  sideNode("a", 0, 60),
  sideNode("b", 900, 60, { next: "curve", meets: "smooth" }),
  sideNode("c", 1800, 120, { tangentInRad: Math.atan(120 / 900) }),
];
const STEEP = [
  sideNode("a", 0, 90),
  sideNode("b", 1000, 90, { next: "curve", meets: "smooth" }),
  sideNode("c", 1800, 190, { tangentInRad: Math.atan(200 / 800) }),
];
const inner = section(1, rectangle(0, 1800, 0, 300));
const outer = section(2, rectangle(0, 1800, 480, 700), { profileId: "q" });
const between = (first: TransitionEdge, second: TransitionEdge, changes: Partial<Transition> = {}) =>
  transition(1, first, second, changes);

const lay = (items: readonly Item[], profiles = { p: RAMP, q: STEEP }) =>
  layTray(tray(profiles, items, { symmetry: "mirrored", thicknessMm: 10, leastBendRatio: 20 }));

/** Corner-to-corner distances and area: what two congruent patterns have in common. */
function measures(part: Part): readonly number[] {
  const corners = part.loops.flatMap(({ edges }) => edges.map(({ points }) => at(points, 0)));
  const distance = (a: FlatPoint, b: FlatPoint) => Math.hypot(a.u - b.u, a.v - b.v);
  const all = corners.flatMap((a, i) => corners.slice(i + 1).map((b) => distance(a, b)));
  return [...all.sort((a, b) => a - b), Math.sqrt(part.flatAreaMm2)];
}

function expectCongruent(a: Part, b: Part): void {
  const [one, other] = [measures(a), measures(b)];
  expect(one.length).toBe(other.length);
  one.forEach((value, i) => {
    expect(Math.abs(value - at(other, i))).toBeLessThan(CONGRUENT_MM);
  });
}

describe("a transition between two sections", () => {
  const ramps = lay([
    inner,
    outer,
    between(stretchOf("s1", "outer", "front"), stretchOf("s2", "inner", "rear")),
  ]);
  const part = partOf(ramps, "T1R");

  it("has edges as long as those of its neighbours", () => {
    expect(
      relativeMiss(edgeOf(part, "first").drawnLengthMm, edgeOf(partOf(ramps, "S1"), "outer").drawnLengthMm),
    ).toBeLessThan(LENGTH_RELATIVE);
    expect(
      relativeMiss(edgeOf(part, "second").drawnLengthMm, edgeOf(partOf(ramps, "S2R"), "inner").drawnLengthMm),
    ).toBeLessThan(LENGTH_RELATIVE);
  });

  it("lies flat with the lengths that it has in space", () => {
    for (const edge of part.edges)
      expect(relativeMiss(edge.flatLengthMm, edge.spaceLengthMm), edge.edgeId).toBeLessThan(LENGTH_RELATIVE);
    const twist = part.twist?.maxTwistRad ?? 1;
    expect(relativeMiss(part.flatAreaMm2, part.spaceAreaMm2)).toBeLessThan(
      twist < DEVELOPABLE_RAD ? LENGTH_RELATIVE : Math.max(LENGTH_RELATIVE, (twist * twist) / 10),
    );
  });

  it("is joined to both, on both hands, at the folds of their surfaces", () => {
    expect(ramps.joints.map(({ partIds }) => partIds.join("/"))).toEqual([
      "T1R/S1",
      "T1L/S1",
      "T1R/S2R",
      "T1L/S2L",
    ]);
    // At the front both edges are level and 30 mm apart in height over 180 mm.
    const fold = Math.atan(30 / 180);
    expect(at(ramps.joints, 0).foldRad.some((rad) => Math.abs(rad - fold) < 1e-6)).toBe(true);
    expect(at(ramps.joints, 2).foldRad.some((rad) => Math.abs(rad + fold) < 1e-6)).toBe(true);
  });

  it.each([
    [
      "with its first edge named the other way round",
      stretchOf("s1", "outer", "front"),
      stretchOf("s2", "inner", "rear"),
    ],
    ["with its edges exchanged", stretchOf("s2", "inner", "rear"), stretchOf("s1", "outer", "front")],
  ])("%s is the same pattern", (_title, first, second) => {
    const other = partOf(lay([inner, outer, between(first, second)]), "T1R");
    expectCongruent(part, other);
  });

  it("is the same pattern wherever the tray stands", () => {
    const move = (item: typeof inner, dx: number) => ({
      ...item,
      outline: {
        ...item.outline,
        elements: item.outline.elements.map((e) => (e.kind === "node" ? { ...e, x: e.x + dx } : e)),
      },
    });
    const slide = (nodes: typeof RAMP) => nodes.map((n) => ({ ...n, x: n.x + 340, z: n.z + 25 }));
    const moved = lay(
      [
        move(inner, 340),
        move(outer, 340),
        between(stretchOf("s1", "outer", "front"), stretchOf("s2", "inner", "rear")),
      ],
      { p: slide(RAMP), q: slide(STEEP) },
    );
    expectCongruent(part, partOf(moved, "T1R"));
  });

  it("changes with the section that it starts from", () => {
    const lower = { p: RAMP, q: STEEP.map((n) => ({ ...n, z: n.z - 20 })) };
    const other = partOf(
      lay(
        [inner, outer, between(stretchOf("s1", "outer", "front"), stretchOf("s2", "inner", "rear"))],
        lower,
      ),
      "T1R",
    );
    expect(other.flatAreaMm2).toBeLessThan(part.flatAreaMm2 - 1000);
  });

  it("on the left is the image of the right", () => {
    const left = partOf(ramps, "T1L");
    expect(left.flatAreaMm2).toBeCloseTo(part.flatAreaMm2, 6);
    const vs = (p: Part) =>
      p.loops.flatMap(({ edges }) => edges.flatMap(({ points }) => points.map(({ v }) => v)));
    expect(Math.max(...vs(left))).toBeCloseTo(-Math.min(...vs(part)), 9);
  });
});

describe("a transition to a free edge", () => {
  it("that is level with a level floor is the flat strip between them", () => {
    const laid = lay(
      [inner, between(stretchOf("s1", "outer", "front"), freeEdge([0, 400, 60], [1800, 400, 60]))],
      { p: FLOOR, q: STEEP },
    );
    const part = partOf(laid, "T1R");
    expect(part.verdict).toBe("flat");
    expect(part.twist?.verdict).toBe("developable");
    expect(at(laid.joints, 0).cut).toBe("square");
    expect(part.spaceAreaMm2).toBeCloseTo(1800 * 100, 1);
  });

  it("that rises evenly folds up by its slope", () => {
    const laid = lay(
      [inner, between(stretchOf("s1", "outer", "front"), freeEdge([0, 400, 110], [1800, 400, 110]))],
      { p: FLOOR, q: STEEP },
    );
    expect(at(laid.joints, 0).foldRad[0]).toBeCloseTo(Math.atan(0.5), 9);
    expect(edgeOf(partOf(laid, "T1R"), "start").drawnLengthMm).toBeCloseTo(Math.hypot(100, 50), 6);
  });

  it("one corner of which is lifted is twisted, and never called developable", () => {
    const laid = lay(
      [inner, between(stretchOf("s1", "outer", "front"), freeEdge([0, 400, 60], [1800, 400, 160]))],
      { p: FLOOR, q: STEEP },
    );
    const part = partOf(laid, "T1R");
    expect(part.twist?.verdict).not.toBe("developable");
    expect(part.twist?.maxTwistRad ?? 0).toBeGreaterThan(DEVELOPABLE_RAD);
    for (const edge of part.edges)
      expect(relativeMiss(edge.flatLengthMm, edge.spaceLengthMm), edge.edgeId).toBeLessThan(LENGTH_RELATIVE);
  });

  it("that meets the first in a point closes to it", () => {
    const laid = lay(
      [inner, between(stretchOf("s1", "outer", "front"), freeEdge([0, 300, 60], [1800, 450, 60]))],
      { p: FLOOR, q: STEEP },
    );
    const part = partOf(laid, "T1R");
    expect(part.spaceAreaMm2).toBeGreaterThan(0.5 * 1800 * 150 - 3000);
    const closing = part.edges.filter(({ edgeId }) => edgeId === "start" || edgeId === "end");
    expect(closing).toHaveLength(1);
    expect(at(closing, 0).drawnLengthMm).toBeCloseTo(150, 6);
  });

  it("straight up from the first is a wall that bears nothing", () => {
    const laid = lay(
      [inner, between(stretchOf("s1", "outer", "front"), freeEdge([0, 300, 160], [1800, 300, 160]))],
      { p: FLOOR, q: STEEP },
    );
    expect(edgeOf(partOf(laid, "T1R"), "start").drawnLengthMm).toBeCloseTo(100, 9);
    expect(Math.abs(at(laid.joints, 0).foldRad[0])).toBeCloseTo(Math.PI / 2, 6);
  });

  it("may be any edge: nothing throws, and every number is one", () => {
    const coordinate = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(coordinate(0, 1800), coordinate(320, 900), coordinate(-200, 400)), {
          minLength: 2,
          maxLength: 5,
        }),
        fc.constantFrom("line" as const, "curve" as const),
        (points, next) => {
          const nodes = points.map(([x, y, z], i) => ({ id: `e${i}`, x, y, z, next }));
          const laid = lay([inner, between(stretchOf("s1", "outer", "front"), { kind: "free", nodes })]);
          for (const part of laid.parts)
            for (const edge of part.edges)
              for (const value of [
                edge.drawnLengthMm,
                edge.spaceLengthMm,
                edge.flatLengthMm,
                ...edge.bevelRad,
              ])
                expect(Number.isFinite(value)).toBe(true);
        },
      ),
      { numRuns: 12, seed: 11 },
    );
  });
});

describe("a transition that cannot be", () => {
  it("names what it starts from where that is not there", () => {
    const laid = lay([inner, between(stretchOf("s1", "outer", "front"), stretchOf("nobody", "a", "b"))]);
    expect(laid.problems).toMatchObject([
      { kind: "unknown-reference", missingId: "nobody", place: { itemId: "t1" } },
    ]);
  });

  it("is named where it goes round in a circle with another", () => {
    const laid = lay([
      transition(1, stretchOf("t2", "first-start", "first-end"), freeEdge([0, 400, 60], [1800, 400, 60])),
      transition(2, stretchOf("t1", "first-start", "first-end"), freeEdge([0, 500, 60], [1800, 500, 60])),
    ]);
    expect(laid.problems.map(({ kind }) => kind)).toEqual(["reference-cycle", "reference-cycle"]);
  });

  it("is named where both edges are one", () => {
    const laid = lay([inner, between(stretchOf("s1", "outer", "front"), stretchOf("s1", "outer", "front"))]);
    expect(laid.problems).toMatchObject([{ kind: "transition-has-no-area" }]);
  });

  it("is named with the node at fault", () => {
    const laid = lay([
      inner,
      between(stretchOf("s1", "outer", "front"), {
        kind: "free",
        nodes: [
          { id: "e1", x: 0, y: -50, z: 60, next: "line" },
          { id: "e2", x: 0, y: Number.NaN, z: 60, next: "line" },
        ],
      }),
    ]);
    expect(laid.problems).toMatchObject([
      { kind: "left-of-centre-line", place: { itemId: "t1", line: "second-edge", nodeId: "e1" } },
      { kind: "number-out-of-range", place: { itemId: "t1", line: "second-edge", nodeId: "e2" } },
    ]);
  });
});

describe("a transition across the centre line", () => {
  it("between an edge and its own image is one whole part, joined to both halves", () => {
    const off = section(1, rectangle(0, 1800, 200, 500));
    const across = between(stretchOf("s1", "inner", "rear"), stretchOf("s1", "inner", "rear", "left"));
    const laid = lay([off, across], { p: FLOOR, q: STEEP });
    expect(partOf(laid, "T1").hand).toBe("whole");
    expect(edgeOf(partOf(laid, "T1"), "start").drawnLengthMm).toBeCloseTo(400, 9);
    expect(laid.joints.map(({ partIds }) => partIds.join("/"))).toEqual(["T1/S1R", "T1/S1L"]);
    expect(laid.joints.map(({ from }) => Math.sign(from.y))).toEqual([1, -1]);
  });
});
