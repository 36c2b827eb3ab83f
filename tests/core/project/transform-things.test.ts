import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { enclosedAreaMm2 } from "../../../core/curves/index.ts";
import {
  applyCommand,
  checkDocument,
  copiesOf,
  cuttingOf,
  type Grip,
  leftOfCentreMm,
  type Motion,
  type Project,
  planLineOf,
  repeatCommands,
  resolveLines,
} from "../../../core/project/index.ts";
import { oneSection, plan, rectangle, twoSections, withFence } from "./small-projects.ts";

/** Printed by the property when it fails, and the same at every run. */
const SEED = 20261125;
/** Lengths and areas of what is only moved may lose no more than rounding does. */
const ROUNDING = 9;

const whole = (itemId: string): Grip => ({ line: { of: "item", itemId } });
const transform = (project: Project, motion: Motion, ...ids: readonly string[]): Project =>
  applyCommand(project, { kind: "transform", grips: ids.map(whole), motion });

/** Straight, round and curved edges, far from the centre line. */
const curved = (): Project =>
  oneSection([
    plan("a", 100, 3000),
    plan("b", 900, 3000, { radiusMm: 60 }),
    plan("c", 900, 3400, { next: "curve", meets: "corner", tangentOutRad: 2 }),
    plan("d", 500, 3600, { next: "curve" }),
    plan("e", 100, 3400, { meets: "corner" }),
  ]);

const figures = (project: Project, itemId = "one") => {
  const curve = resolveLines(project).plan[itemId];
  if (!curve) throw new Error(`${itemId} does not compile`);
  return {
    lengthMm: curve.lengthMm,
    areaMm2: enclosedAreaMm2(curve.pieces.map((piece) => ({ piece, reversed: false }))),
  };
};

const number = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
const about = fc.record({ x: number(-1000, 1000), y: number(3000, 4000) });
const stiff: fc.Arbitrary<Motion> = fc.oneof(
  fc.record({
    kind: fc.constant("move" as const),
    byMm: fc.record({ x: number(-500, 500), y: number(0, 500), z: number(0, 50) }),
  }),
  fc.record({ kind: fc.constant("turn" as const), about, angleRad: number(-0.8, 0.8) }),
  fc.record({
    kind: fc.constant("mirror" as const),
    across: fc.constantFrom("lengthwise" as const, "station" as const),
    atMm: number(2500, 4000),
  }),
);

describe("things moved, turned, mirrored and scaled", () => {
  it("lengths and areas stay under every move, turn and mirror", () => {
    fc.assert(
      fc.property(stiff, (motion) => {
        const before = figures(curved());
        const after = figures(transform(curved(), motion, "one"));
        expect(after.lengthMm / before.lengthMm).toBeCloseTo(1, ROUNDING);
        expect(after.areaMm2 / before.areaMm2).toBeCloseTo(1, ROUNDING);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  it("a scale multiplies lengths by the factor and areas by its square", () => {
    fc.assert(
      fc.property(about, number(0.4, 2), (at, factor) => {
        const before = figures(curved());
        const after = figures(transform(curved(), { kind: "scale", about: at, factor }, "one"));
        expect(after.lengthMm / before.lengthMm).toBeCloseTo(factor, ROUNDING);
        expect(after.areaMm2 / before.areaMm2).toBeCloseTo(factor * factor, ROUNDING);
      }),
      { seed: SEED, numRuns: 40 },
    );
  });

  it("turned there and back, everything is where it was", () => {
    const at = { x: 300, y: 3200 };
    const there = transform(curved(), { kind: "turn", about: at, angleRad: 0.7 }, "one");
    const back = transform(there, { kind: "turn", about: at, angleRad: -0.7 }, "one");
    const places = (project: Project) =>
      project.items.flatMap((item) =>
        planLineOf(item).elements.flatMap((node) => (node.kind === "node" ? [node.x, node.y] : [])),
      );
    places(back).forEach((value, index) => {
      expect(value).toBeCloseTo(places(curved())[index] ?? Number.NaN, 6);
    });
  });

  it("a quarter turn leaves round numbers round", () => {
    const turned = transform(
      oneSection(rectangle(0, 300, 100, 200)),
      { kind: "turn", about: { x: 0, y: 100 }, angleRad: Math.PI / 2 },
      "one",
    );
    expect(planLineOf(turned.items[0] ?? never()).elements).toMatchObject([
      { x: 0, y: 100 },
      { x: 0, y: 400 },
      { x: -100, y: 400 },
      { x: -100, y: 100 },
    ]);
  });

  it("a fence that is mirrored across a station keeps its lower edge under it", () => {
    const mirrored = transform(withFence(), { kind: "mirror", across: "station", atMm: 600 }, "fence");
    const fence = mirrored.items[1];
    expect(fence?.kind === "fence" && fence.lowerEdge).toMatchObject({
      nodes: [
        { x: 1100, z: 20 },
        { x: 300, z: 20 },
      ],
    });
    expect(checkDocument(mirrored)).toEqual([]);
  });

  it("a section that follows another goes with it, and the shared edge is moved once", () => {
    const moved = transform(twoSections(), { kind: "move", byMm: { x: 10, y: 50, z: 0 } }, "one", "two");
    expect(figures(moved, "two").areaMm2).toBeCloseTo(figures(twoSections(), "two").areaMm2, 6);
    expect(moved.items[0]).toMatchObject({ outline: { elements: [{ x: 10, y: 50 }, {}, {}, {}] } });
  });

  it("it is told how far a motion would bring something over the centre line", () => {
    const project = oneSection(rectangle(0, 300, 100, 200));
    const byMm = { x: 0, y: -130, z: 0 };
    expect(leftOfCentreMm(project, [whole("one")], { kind: "move", byMm })).toBeCloseTo(30, 9);
    expect(leftOfCentreMm(project, [whole("one")], { kind: "move", byMm: { ...byMm, y: -100 } })).toBe(0);
    expect(leftOfCentreMm({ ...project, symmetry: "none" }, [whole("one")], { kind: "move", byMm })).toBe(0);
  });
});

describe("copies", () => {
  const copyOf = (project: Project, ...ids: readonly string[]): Project =>
    applyCommand(project, {
      kind: "add-copies",
      copies: copiesOf(project, cuttingOf(project, ids.map(whole))),
    });

  it("have ids, numbers and names of their own", () => {
    const copied = copyOf(withFence(), "fence");
    expect(copied.items[2]).toMatchObject({ kind: "fence", id: "f1", number: 2, name: "Fence 2" });
    expect(copyOf(copied, "fence").items[3]).toMatchObject({ id: "f2", number: 3, name: "Fence 3" });
    expect(checkDocument(copied)).toEqual([]);
  });

  it("follow the copy of what they followed, where that is copied too", () => {
    const copied = copyOf(twoSections(), "one", "two");
    const followed = copied.items
      .slice(2)
      .flatMap((item) =>
        planLineOf(item).elements.flatMap((element) =>
          element.kind === "follow" ? [element.edge.itemId] : [],
        ),
      );
    expect(followed).toEqual(["s1"]);
  });

  it("follow the same edge as before, where it is not copied", () => {
    const copied = copyOf(twoSections(), "two");
    expect(planLineOf(copied.items[2] ?? never()).elements[0]).toMatchObject({ edge: { itemId: "one" } });
  });

  it("in another tray have nodes of their own, and bring the profile that is missing", () => {
    const source = twoSections();
    const other: Project = { ...oneSection([]), id: "other", items: [], profiles: [] };
    const pasted = applyCommand(other, {
      kind: "add-copies",
      copies: copiesOf(other, cuttingOf(source, [whole("two")])),
    });
    expect(pasted.profiles).toMatchObject([{ name: "Flat" }]);
    expect(pasted.items[0]).toMatchObject({ kind: "section", profileId: pasted.profiles[0]?.id });
    expect(figures(pasted, "s1").areaMm2).toBeCloseTo(figures(source, "two").areaMm2, 6);
    expect(checkDocument(pasted)).toEqual([]);
  });

  it("a row stands at its spacing, each farther than the last", () => {
    const row = repeatCommands(withFence(), [whole("fence")], { count: 3, spacingMm: { x: 5, y: 25 } });
    const drawn = row.reduce(applyCommand, withFence());
    expect(drawn.items.slice(2)).toMatchObject(
      [1, 2, 3].map((step) => ({
        number: step + 1,
        line: { elements: [{ x: 100 + 5 * step, y: 100 + 25 * step }, {}] },
        lowerEdge: { nodes: [{ x: 100 + 5 * step }, {}] },
      })),
    );
  });
});

function never(): never {
  throw new Error("There is no such item.");
}
