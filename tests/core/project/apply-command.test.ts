import { describe, expect, it } from "vitest";
import { type Curve, frameAtLength, pointOnPiece } from "../../../core/curves/index.ts";
import { at } from "../../../core/foundation/index.ts";
import {
  applyCommand,
  type Command,
  type LineRef,
  movedReferences,
  newFence,
  newProfile,
  newSection,
  type PlanElement,
  type PlanNode,
  type Project,
  planLineOf,
  resolveLines,
} from "../../../core/project/index.ts";
import { oneSection, plan, rectangle, side, twoSections, withFence } from "./small-projects.ts";

/** A curve that is split by command may move by rounding only; arc lengths themselves are good to 1e-9 of 3 m. */
const SPLIT_MM = 1e-6;
/** A following piece that gets nodes of its own stays within what can be marked. */
const UNFOLLOW_MM = 0.01;

const ONE: LineRef = { of: "item", itemId: "one" };
const FLAT: LineRef = { of: "profile", profileId: "flat" };

const elementsOf = (project: Project, itemId: string): readonly PlanElement[] => {
  const item = project.items.find(({ id }) => id === itemId);
  if (!item) throw new Error(`no item ${itemId}`);
  return planLineOf(item).elements;
};

const nodeOf = (project: Project, itemId: string, nodeId: string): PlanNode => {
  const node = elementsOf(project, itemId).find(({ id }) => id === nodeId);
  if (node?.kind !== "node") throw new Error(`no node ${nodeId}`);
  return node;
};

const planOf = (project: Project, itemId: string): Curve => {
  const lines = resolveLines(project);
  const curve = lines.plan[itemId];
  if (!curve) throw new Error(JSON.stringify(lines.problems));
  return curve;
};

const followOf = (project: Project) => {
  const element = elementsOf(project, "two")[0];
  if (element?.kind !== "follow") throw new Error("two does not follow");
  return element.edge;
};

/** The farthest that two curves with one start lie apart, point for point at equal shares of their lengths. */
function farthestMm(a: Curve, b: Curve): number {
  const shares = Array.from({ length: 2000 }, (_, i) => i / 2000);
  return Math.max(
    ...shares.map((share) => {
      const [ax, ay] = frameAtLength(a, a.lengthMm * share).at;
      const [bx, by] = frameAtLength(b, b.lengthMm * share).at;
      return Math.hypot(ax - bx, ay - by);
    }),
  );
}

/** A section with a curved outer edge of four nodes and two radii. */
const curvedOutline = (): readonly PlanNode[] => [
  plan("a", 0, 0, { radiusMm: 30 }),
  plan("b", 1000, 0),
  plan("c", 1000, 260, { next: "curve" }),
  plan("d", 640, 340, { next: "curve" }),
  plan("e", 270, 310, { next: "curve" }),
  plan("f", 0, 180),
];

describe("adding and deleting", () => {
  const project = oneSection(rectangle(0, 1000, 0, 200));
  const section = newSection({
    id: "new",
    number: 2,
    name: "New",
    profileId: "p2",
    elements: [],
    closed: false,
  });
  const profile = newProfile({ id: "p2", name: "P", nodes: [] });

  it("a section brings its profile", () => {
    const after = applyCommand(project, { kind: "add-section", section, profile });
    expect(after.items.map(({ id }) => id)).toEqual(["one", "new"]);
    expect(after.profiles.map(({ id }) => id)).toEqual(["flat", "p2"]);
  });

  it("a fence, a profile, and both gone again", () => {
    const fence = newFence({ id: "fence", number: 1, name: "F", elements: [] });
    const commands: readonly Command[] = [
      { kind: "add-fence", fence },
      { kind: "add-profile", profile },
      { kind: "delete-item", itemId: "fence" },
      { kind: "delete-profile", profileId: "p2" },
    ];
    expect(commands.reduce(applyCommand, project)).toEqual(project);
  });

  it("an id that is taken changes nothing, not even the profile", () => {
    const taken = { ...section, id: "one" };
    expect(applyCommand(project, { kind: "add-section", section: taken, profile })).toBe(project);
    expect(applyCommand(project, { kind: "add-profile", profile: { ...profile, id: "flat" } })).toBe(project);
  });

  it("an item that others follow leaves them where they run", () => {
    const before = twoSections();
    const after = applyCommand(before, { kind: "delete-item", itemId: "one" });
    expect(after.items.map(({ id }) => id)).toEqual(["two"]);
    expect(resolveLines(after).problems).toEqual([]);
    expect(farthestMm(planOf(before, "two"), planOf(after, "two"))).toBeLessThan(SPLIT_MM);
  });
});

describe("a command that names nothing known", () => {
  const project = withFence();
  const commands: readonly Command[] = [
    { kind: "delete-item", itemId: "x" },
    { kind: "delete-profile", profileId: "x" },
    { kind: "change-section", itemId: "x", changes: { name: "X" } },
    { kind: "change-section", itemId: "fence", changes: { name: "X" } },
    { kind: "change-fence", itemId: "one", changes: { name: "X" } },
    { kind: "rename-profile", profileId: "x", name: "X" },
    { kind: "move-node", line: ONE, nodeId: "x", to: [1, 1] },
    { kind: "move-node", line: { of: "item", itemId: "x" }, nodeId: "a", to: [1, 1] },
    { kind: "change-node", line: ONE, nodeId: "x", changes: { radiusMm: 3 } },
    { kind: "append-node", line: { of: "profile", profileId: "x" }, node: side("z", 1, 1) },
    { kind: "append-node", line: ONE, node: side("z", 1, 1) },
    { kind: "append-node", line: ONE, node: plan("a", 1, 1) },
    { kind: "split-segment", line: ONE, afterNodeId: "x", t: 0.5, newNodeId: "n" },
    { kind: "split-segment", line: ONE, afterNodeId: "a", t: 0.5, newNodeId: "b" },
    { kind: "split-segment", line: ONE, afterNodeId: "a", t: 2, newNodeId: "n" },
    { kind: "delete-node", line: ONE, nodeId: "x" },
    { kind: "close-outline", itemId: "x" },
    { kind: "close-outline", itemId: "fence" },
    {
      kind: "follow-edge",
      itemId: "one",
      afterNodeId: "x",
      beforeNodeId: "a",
      edge: { itemId: "two", fromNodeId: "a", toNodeId: "b", hand: "right" },
      direction: "along",
      newId: "n",
    },
    { kind: "unfollow-edge", itemId: "one", followId: "x" },
  ];

  it.each(commands.map((command) => [command.kind, command] as const))(
    "%s gives the very same document",
    (_kind, command) => {
      expect(applyCommand(project, command)).toBe(project);
    },
  );

  it("so does one that sets what is there already", () => {
    expect(applyCommand(project, { kind: "move-node", line: ONE, nodeId: "b", to: [1000, 0] })).toBe(project);
    expect(applyCommand(project, { kind: "change-settings", changes: { title: project.title } })).toBe(
      project,
    );
    expect(applyCommand(project, { kind: "close-outline", itemId: "one" })).toBe(project);
  });
});

describe("moving a node", () => {
  it("moves it in plan, in the side view, and among the depths of a fence", () => {
    const project = withFence();
    expect(
      nodeOf(
        applyCommand(project, { kind: "move-node", line: ONE, nodeId: "c", to: [900, 210] }),
        "one",
        "c",
      ),
    ).toMatchObject({ x: 900, y: 210 });
    const raised = applyCommand(project, { kind: "move-node", line: FLAT, nodeId: "q", to: [1000, 70] });
    expect(raised.profiles[0]?.nodes[1]).toMatchObject({ x: 1000, z: 70 });
    const lowered = applyCommand(project, {
      kind: "move-node",
      line: { of: "lower-edge", itemId: "fence" },
      nodeId: "m",
      to: [900, 10],
    });
    const fence = lowered.items[1];
    expect(fence?.kind === "fence" && fence.lowerEdge.nodes[1]).toMatchObject({ x: 900, z: 10 });
    const deep = newFence({
      id: "deep",
      number: 2,
      name: "",
      elements: [plan("a", 0, 0), plan("b", 500, 0)],
    });
    const moved = applyCommand(
      { ...project, items: [deep] },
      { kind: "move-node", line: { of: "lower-edge", itemId: "deep" }, nodeId: "d2", to: [450, 30] },
    );
    expect(moved.items[0]).toMatchObject({
      lowerEdge: { nodes: [{ alongMm: 0 }, { alongMm: 450, depthMm: 30 }] },
    });
  });

  it("shares what it does not touch", () => {
    const project = twoSections();
    const after = applyCommand(project, { kind: "move-node", line: ONE, nodeId: "a", to: [5, 5] });
    expect(after.items[1]).toBe(project.items[1]);
    expect(after.profiles).toBe(project.profiles);
    expect(elementsOf(after, "one")[2]).toBe(elementsOf(project, "one")[2]);
    expect(nodeOf(project, "one", "a")).toMatchObject({ x: 0, y: 0 });
  });

  it("lets stored knot spacings grow with their chords, before it and behind it", () => {
    const project = oneSection([
      plan("a", 0, 0, { next: "curve", knotSpacingMm: 60 }),
      plan("b", 100, 0, { next: "curve", knotSpacingMm: 240 }),
      plan("c", 300, 0),
      plan("d", 300, 200),
    ]);
    const after = applyCommand(project, { kind: "move-node", line: ONE, nodeId: "b", to: [150, 0] });
    expect(nodeOf(after, "one", "a").knotSpacingMm).toBeCloseTo(90, 12);
    expect(nodeOf(after, "one", "b").knotSpacingMm).toBeCloseTo(180, 12);
    expect(nodeOf(after, "one", "c").knotSpacingMm).toBeUndefined();
  });

  it("does so round the end of a closed outline", () => {
    const project = oneSection([
      plan("a", 0, 0),
      plan("b", 100, 0),
      plan("c", 0, 100, { next: "curve", knotSpacingMm: 50 }),
    ]);
    const after = applyCommand(project, { kind: "move-node", line: ONE, nodeId: "a", to: [0, 50] });
    expect(nodeOf(after, "one", "c").knotSpacingMm).toBeCloseTo(25, 12);
  });
});

describe("changing a node", () => {
  it("sets a radius, and takes it away again without leaving an empty field", () => {
    const project = oneSection(rectangle(0, 1000, 0, 200));
    const rounded = applyCommand(project, {
      kind: "change-node",
      line: ONE,
      nodeId: "a",
      changes: { radiusMm: 25 },
    });
    expect(nodeOf(rounded, "one", "a").radiusMm).toBe(25);
    const back = applyCommand(rounded, {
      kind: "change-node",
      line: ONE,
      nodeId: "a",
      changes: { radiusMm: undefined },
    });
    expect(Object.keys(nodeOf(back, "one", "a"))).not.toContain("radiusMm");
    expect(back).toEqual(project);
  });

  it("drops the knot spacing of a segment that becomes straight", () => {
    const project = oneSection([
      plan("a", 0, 0, { next: "curve", knotSpacingMm: 7 }),
      ...rectangle(0, 1000, 0, 200).slice(1),
    ]);
    const after = applyCommand(project, {
      kind: "change-node",
      line: ONE,
      nodeId: "a",
      changes: { next: "line" },
    });
    expect(nodeOf(after, "one", "a")).toEqual(plan("a", 0, 0));
  });

  it("names a following piece and lets its exit be a curve, but gives it no radius", () => {
    const after = applyCommand(twoSections(), {
      kind: "change-node",
      line: { of: "item", itemId: "two" },
      nodeId: "shared",
      changes: { edgeName: "Seam", next: "curve", radiusMm: 9 },
    });
    expect(elementsOf(after, "two")[0]).toMatchObject({ edgeName: "Seam", next: "curve" });
    expect(elementsOf(after, "two")[0]).not.toHaveProperty("radiusMm");
  });
});

describe("changing an item and the settings", () => {
  it("sets and takes away a section's own foam", () => {
    const project = oneSection(rectangle(0, 1000, 0, 200));
    const own = applyCommand(project, {
      kind: "change-section",
      itemId: "one",
      changes: { core: { foamId: "xps", thicknessMm: 20 }, tiltRad: 0.1 },
    });
    expect(own.items[0]).toMatchObject({ core: { thicknessMm: 20 }, tiltRad: 0.1 });
    const back = applyCommand(own, {
      kind: "change-section",
      itemId: "one",
      changes: { core: undefined, tiltRad: 0 },
    });
    expect(back).toEqual(project);
  });

  it("changes a fence, a profile's name and a whole setting", () => {
    const commands: readonly Command[] = [
      { kind: "change-fence", itemId: "fence", changes: { seat: "skin", standsFirst: true } },
      { kind: "rename-profile", profileId: "flat", name: "Level" },
      { kind: "change-settings", changes: { symmetry: "none", skins: { lowerMm: 1, upperMm: 1 } } },
    ];
    const after = commands.reduce(applyCommand, withFence());
    expect(after.items[1]).toMatchObject({ seat: "skin", standsFirst: true });
    expect(after.profiles[0]?.name).toBe("Level");
    expect([after.symmetry, after.skins]).toEqual(["none", { lowerMm: 1, upperMm: 1 }]);
  });
});

describe("drawing", () => {
  it("node by node, then closed, gives the outline", () => {
    const nodes = rectangle(0, 1000, 0, 200);
    const commands: readonly Command[] = [
      ...nodes.map((node): Command => ({ kind: "append-node", line: ONE, node })),
      { kind: "close-outline", itemId: "one" },
    ];
    expect(commands.reduce(applyCommand, oneSection([], false))).toEqual(oneSection(nodes));
  });

  it("a profile takes nodes of the side view", () => {
    const after = applyCommand(oneSection([]), {
      kind: "append-node",
      line: FLAT,
      node: side("r", 1200, 90),
    });
    expect(after.profiles[0]?.nodes.map(({ id }) => id)).toEqual(["p", "q", "r"]);
  });
});

describe("splitting a segment", () => {
  it.each([
    ["a line", "b", 0.25],
    ["the first curve of a run", "c", 0.4],
    ["a curve inside a run", "d", 0.7],
    ["the last curve of a run", "e", 0.5],
    ["the segment that closes the outline", "f", 0.5],
  ])("of %s keeps the shape", (_title, afterNodeId, t) => {
    const before = oneSection(curvedOutline());
    const after = applyCommand(before, {
      kind: "split-segment",
      line: ONE,
      afterNodeId,
      t,
      newNodeId: "new",
    });
    expect(elementsOf(after, "one")).toHaveLength(7);
    expect(planOf(after, "one").lengthMm).toBeCloseTo(planOf(before, "one").lengthMm, 9);
    expect(farthestMm(planOf(before, "one"), planOf(after, "one"))).toBeLessThan(SPLIT_MM);
  });

  it("of a curve leaves the new node on the curve and both halves know their knots", () => {
    const before = oneSection(curvedOutline());
    const after = applyCommand(before, {
      kind: "split-segment",
      line: ONE,
      afterNodeId: "d",
      t: 0.7,
      newNodeId: "new",
    });
    const piece = planOf(before, "one").pieces.find(({ edgeId }) => edgeId === "d");
    const place = piece && pointOnPiece(piece, 0.7);
    expect([nodeOf(after, "one", "new").x, nodeOf(after, "one", "new").y]).toEqual(place);
    const chord = Math.hypot(640 - 270, 340 - 310);
    expect(nodeOf(after, "one", "d").knotSpacingMm).toBeCloseTo(0.7 * chord, 9);
    expect(nodeOf(after, "one", "new").knotSpacingMm).toBeCloseTo(0.3 * chord, 9);
  });

  it("of a profile and of the edge behind a following piece works the same way", () => {
    const curved = {
      ...oneSection([]),
      profiles: [
        newProfile({
          id: "flat",
          name: "",
          nodes: [
            side("p", 0, 50, { next: "curve" }),
            side("q", 500, 70, { next: "curve" }),
            side("r", 1000, 200),
          ],
        }),
      ],
    };
    const profileAfter = applyCommand(curved, {
      kind: "split-segment",
      line: FLAT,
      afterNodeId: "q",
      t: 0.3,
      newNodeId: "new",
    });
    expect(resolveLines(profileAfter).profiles.flat?.lengthMm).toBeCloseTo(
      resolveLines(curved).profiles.flat?.lengthMm ?? 0,
      9,
    );
    const two = applyCommand(twoSections(), {
      kind: "split-segment",
      line: { of: "item", itemId: "two" },
      afterNodeId: "shared",
      t: 0.5,
      newNodeId: "new",
    });
    expect(elementsOf(two, "two").map(({ id }) => id)).toEqual(["shared", "new", "e", "f"]);
    expect(nodeOf(two, "two", "new")).toMatchObject({ x: 1000, y: 300 });
  });

  it("of a fence's depths puts a depth between two", () => {
    const fence = newFence({
      id: "deep",
      number: 1,
      name: "",
      elements: [plan("a", 0, 0), plan("b", 500, 0)],
    });
    const after = applyCommand(
      { ...oneSection([]), items: [fence] },
      {
        kind: "split-segment",
        line: { of: "lower-edge", itemId: "deep" },
        afterNodeId: "d1",
        t: 0.5,
        newNodeId: "d3",
      },
    );
    expect(after.items[0]).toMatchObject({
      lowerEdge: { nodes: [{ id: "d1" }, { id: "d3", alongMm: 250, depthMm: 40 }, { id: "d2" }] },
    });
  });

  it("leaves references to its ends alone", () => {
    const after = applyCommand(twoSections(), {
      kind: "split-segment",
      line: ONE,
      afterNodeId: "c",
      t: 0.5,
      newNodeId: "new",
    });
    expect(followOf(after)).toMatchObject({ fromNodeId: "c", toNodeId: "d" });
    expect(planOf(after, "two").lengthMm).toBeCloseTo(2400, 9);
  });
});

describe("deleting a node", () => {
  it("takes it out of the line", () => {
    const after = applyCommand(oneSection(rectangle(0, 1000, 0, 200)), {
      kind: "delete-node",
      line: ONE,
      nodeId: "b",
    });
    expect(elementsOf(after, "one").map(({ id }) => id)).toEqual(["a", "c", "d"]);
  });

  it("at the end of a followed edge moves the reference to the next kept node", () => {
    const after = applyCommand(twoSections(), { kind: "delete-node", line: ONE, nodeId: "d" });
    expect(followOf(after)).toMatchObject({ fromNodeId: "c", toNodeId: "a" });
    expect(resolveLines(after).problems).toEqual([]);
    expect(movedReferences(twoSections(), after)).toMatchObject([
      { kind: "reference-moved", name: "Two", place: { itemId: "two", nodeId: "shared" }, toNodeId: "a" },
    ]);
    expect(movedReferences(after, after)).toEqual([]);
  });

  it("moves it to the node before where the next is the other end already", () => {
    const after = applyCommand(twoSections(), { kind: "delete-node", line: ONE, nodeId: "c" });
    expect(followOf(after)).toMatchObject({ fromNodeId: "b", toNodeId: "d" });
  });

  it("leaves a problem where no two nodes are left to go to", () => {
    const commands = ["a", "b", "c", "d"].map(
      (nodeId): Command => ({ kind: "delete-node", line: ONE, nodeId }),
    );
    const after = commands.reduce(applyCommand, twoSections());
    expect(resolveLines(after).problems.map(({ kind }) => kind)).toEqual([
      "too-few-nodes",
      "followed-line-missing",
    ]);
  });

  it("takes out a following piece as well", () => {
    const after = applyCommand(twoSections(), {
      kind: "delete-node",
      line: { of: "item", itemId: "two" },
      nodeId: "shared",
    });
    expect(elementsOf(after, "two").map(({ id }) => id)).toEqual(["e", "f"]);
  });
});

describe("following an edge", () => {
  const separate = (): Project => {
    const project = oneSection(rectangle(0, 1000, 0, 200));
    const two = newSection({
      id: "two",
      number: 2,
      name: "Two",
      profileId: "flat",
      elements: rectangle(0, 1000, 230, 400),
      closed: true,
    });
    return { ...project, items: [...project.items, two] };
  };
  const edge = { itemId: "one", fromNodeId: "c", toNodeId: "d", hand: "right" } as const;

  it("replaces the stretch, both ends included", () => {
    const after = applyCommand(separate(), {
      kind: "follow-edge",
      itemId: "two",
      afterNodeId: "a",
      beforeNodeId: "b",
      edge,
      direction: "against",
      newId: "shared",
    });
    expect(elementsOf(after, "two").map(({ id }) => id)).toEqual(["shared", "c", "d"]);
    expect(planOf(after, "two").lengthMm).toBeCloseTo(2400, 9);
  });

  it("replaces it round the end of the outline too", () => {
    const turned = { ...separate() };
    const [a, b, c, d] = rectangle(0, 1000, 230, 400);
    const items = turned.items.map((item) =>
      item.kind === "section" && item.id === "two"
        ? { ...item, outline: { closed: true, elements: [b, c, d, a] } }
        : item,
    );
    const after = applyCommand(
      { ...turned, items },
      {
        kind: "follow-edge",
        itemId: "two",
        afterNodeId: "a",
        beforeNodeId: "b",
        edge,
        direction: "against",
        newId: "shared",
      },
    );
    expect(elementsOf(after, "two").map(({ id }) => id)).toEqual(["c", "d", "shared"]);
    expect(planOf(after, "two").lengthMm).toBeCloseTo(2400, 9);
  });

  it("moves references away from the nodes that give way", () => {
    const project = twoSections();
    const target = newSection({
      id: "zero",
      number: 3,
      name: "Zero",
      profileId: "flat",
      elements: rectangle(0, 1000, 600, 700),
      closed: true,
    });
    const after = applyCommand(
      { ...project, items: [...project.items, target] },
      {
        kind: "follow-edge",
        itemId: "one",
        afterNodeId: "b",
        beforeNodeId: "c",
        edge: { ...edge, itemId: "zero" },
        direction: "along",
        newId: "g",
      },
    );
    expect(followOf(after)).toMatchObject({ fromNodeId: "a", toNodeId: "d" });
  });

  it("given up leaves the line where it ran, nodes of its own and no reference", () => {
    const outline = curvedOutline();
    const project = twoSections();
    const one = oneSection(outline).items;
    const two = newSection({
      id: "two",
      number: 2,
      name: "Two",
      profileId: "flat",
      elements: [
        {
          kind: "follow",
          id: "shared",
          edge: { itemId: "one", fromNodeId: "b", toNodeId: "f", hand: "right" },
          direction: "against",
          next: "curve",
          edgeName: "Seam",
        },
        plan("e", 1050, 300, { next: "curve" }),
        plan("g", 600, 600, { next: "curve" }),
      ],
      closed: true,
    });
    const before: Project = { ...project, symmetry: "none", items: [...one, two] };
    const after = applyCommand(before, { kind: "unfollow-edge", itemId: "two", followId: "shared" });
    expect(elementsOf(after, "two").every(({ kind }) => kind === "node")).toBe(true);
    expect(elementsOf(after, "two")[0]?.edgeName).toBe("Seam");
    expect(farthestMm(planOf(before, "two"), planOf(after, "two"))).toBeLessThan(UNFOLLOW_MM);
  });

  it("given up keeps a radius between two lines as a radius", () => {
    const [a, b, c, d] = rectangle(0, 1000, 0, 200);
    const project = oneSection([a, { ...b, radiusMm: 60 }, c, d]);
    const fence = newFence({
      id: "fence",
      number: 1,
      name: "",
      elements: [
        {
          kind: "follow",
          id: "g",
          edge: { itemId: "one", fromNodeId: "a", toNodeId: "c", hand: "right" },
          direction: "along",
          next: "line",
        },
      ],
    });
    const after = applyCommand(
      { ...project, items: [...project.items, fence] },
      { kind: "unfollow-edge", itemId: "fence", followId: "g" },
    );
    expect(elementsOf(after, "fence")).toMatchObject([
      { id: "g-1", x: 0, y: 0 },
      { radiusMm: 60 },
      { id: "g-3", x: 1000, y: 200 },
    ]);
    expect(nodeOf(after, "fence", "g-2").x).toBeCloseTo(1000, 9);
    expect(nodeOf(after, "fence", "g-2").y).toBeCloseTo(0, 9);
    expect(at(planOf(after, "fence").pieces, 1).kind).toBe("arc");
  });
});
