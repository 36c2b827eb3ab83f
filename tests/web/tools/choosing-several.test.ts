import { describe, expect, it } from "vitest";
import { applyCommand, newFence, newOpening, type Project } from "../../../core/project/index.ts";
import {
  CANCEL,
  click,
  hear,
  move,
  nodesOf,
  place,
  press,
  release,
  trayWithSection,
  type Work,
  workWith,
} from "./bench-of-tools.ts";

const node = (id: string, x: number, y: number) => ({ kind: "node", id, x, y, next: "line" }) as const;

/** The floor with a fence through it and an opening beside it. */
function trayWithThree(): Project {
  const fence = newFence({
    id: "f1",
    number: 1,
    name: "Fence",
    elements: [node("n1", 200, 200), node("n2", 800, 260)],
  });
  const heights = {
    kind: "heights",
    nodes: [
      { kind: "node", id: "n1", x: 200, z: 20, next: "line" },
      { kind: "node", id: "n2", x: 800, z: 20, next: "line" },
    ],
  } as const;
  const opening = newOpening({
    id: "o1",
    number: 1,
    name: "Hatch",
    closed: true,
    elements: [node("n1", 1200, 100), node("n2", 1300, 100), node("n3", 1300, 200)],
  });
  const withFence = applyCommand(trayWithSection(), {
    kind: "add-fence",
    fence: { ...fence, lowerEdge: heights },
  });
  return applyCommand(withFence, { kind: "add-opening", opening });
}

const adding = (at: readonly [number, number]) => ({ ...place(at), adds: true as const });
const shiftClick = (at: readonly [number, number]) =>
  [
    { kind: "press", place: adding(at) },
    { kind: "release", place: adding(at) },
  ] as const;
const box = (from: readonly [number, number], to: readonly [number, number]) =>
  [
    { kind: "press", place: adding(from) },
    { kind: "move", place: adding(to) },
    { kind: "release", place: adding(to) },
  ] as const;

const floor = { line: { of: "item", itemId: "s1" } } as const;
const fence = { line: { of: "item", itemId: "f1" } } as const;
const opening = { line: { of: "opening", openingId: "o1" } } as const;

const floorAndFence = (): Work =>
  workWith("select", trayWithThree(), { kind: "several", grips: [floor, fence] });

describe("choosing several", () => {
  it("a press with Shift adds what it lies on, and takes it away again", () => {
    const start = workWith("select", trayWithThree(), { kind: "item", itemId: "f1" });
    const both = hear(start, ...shiftClick([600, 380]));
    expect(both.selection).toEqual({ kind: "several", grips: [fence, floor] });
    expect(hear(both, ...shiftClick([600, 380])).selection).toEqual({ kind: "item", itemId: "f1" });
  });

  it("nodes can stand among what is chosen", () => {
    const start = workWith("select", trayWithThree(), { kind: "item", itemId: "f1" });
    expect(hear(start, ...shiftClick([1000, 400])).selection).toEqual({
      kind: "several",
      grips: [fence, { line: floor.line, nodeId: "n3" }],
    });
  });

  it("a box chooses what lies wholly inside, and not what it only touches", () => {
    const start = workWith("select", trayWithThree());
    expect(hear(start, ...box([150, 50], [1400, 300])).selection).toEqual({
      kind: "several",
      grips: [fence, opening],
    });
  });

  it("where nothing lies wholly inside, a box chooses nodes", () => {
    const start = workWith("select", trayWithThree());
    expect(hear(start, ...box([900, 50], [1100, 500])).selection).toEqual({
      kind: "several",
      grips: [
        { line: floor.line, nodeId: "n2" },
        { line: floor.line, nodeId: "n3" },
      ],
    });
  });

  it("Escape leaves off a box, and then lets go of everything", () => {
    const begun = hear(floorAndFence(), ...box([2000, 2000], [2400, 2400]).slice(0, 2));
    const left = hear(begun, CANCEL);
    expect(left.selection).toEqual(floorAndFence().selection);
    expect(hear(left, CANCEL).selection).toBeUndefined();
  });

  it("everything can be chosen at once", () => {
    const all = hear(workWith("select", trayWithThree()), { kind: "choose-all" });
    expect(all.selection).toEqual({
      kind: "several",
      grips: expect.arrayContaining([floor, fence, opening, { line: { of: "profile", profileId: "p1" } }]),
    });
  });

  it("a click on one of several chooses it alone", () => {
    expect(hear(floorAndFence(), ...click([500, 350])).selection).toEqual({ kind: "item", itemId: "s1" });
  });
});

describe("several at once", () => {
  it("a drag of one moves all, as one step to undo", () => {
    const work = hear(
      floorAndFence(),
      press([500, 350]),
      move([540, 380]),
      move([600, 400]),
      release([600, 400]),
    );
    expect(nodesOf(work.project, "s1")[0]).toEqual([100, 150]);
    expect(nodesOf(work.project, "f1")).toEqual([
      [300, 250],
      [900, 310],
    ]);
    expect(work.past).toHaveLength(1);
    expect(work.past[0]).toEqual(trayWithThree());
  });

  it("the lower edge of a fence goes along the tray with it and keeps its heights", () => {
    const work = hear(floorAndFence(), { kind: "nudge", byMm: [10, 0] });
    const moved = work.project.items.find(({ id }) => id === "f1");
    const heights =
      moved?.kind === "fence" && moved.lowerEdge.kind === "heights" ? moved.lowerEdge.nodes : [];
    expect(heights.map(({ x, z }) => [x, z])).toEqual([
      [210, 20],
      [810, 20],
    ]);
  });

  it("nothing of it crosses the centre line, and all keeps its shape", () => {
    const work = hear(floorAndFence(), press([500, 350]), move([500, 0]), release([500, 0]));
    expect(nodesOf(work.project, "s1")[0]).toEqual([0, 0]);
    expect(nodesOf(work.project, "f1")[0]).toEqual([200, 100]);
  });

  it("Escape in the middle of a drag puts all back", () => {
    const work = hear(floorAndFence(), press([500, 350]), move([600, 400]), CANCEL);
    expect(work.project).toEqual(trayWithThree());
    expect(work.past).toEqual([]);
  });

  it("Delete takes all away in one step, with the profiles that nothing needs any longer", () => {
    const all = hear(workWith("select", trayWithThree()), { kind: "choose-all" });
    const gone = hear(all, { kind: "delete" });
    expect([gone.project.items, gone.project.openings, gone.project.profiles]).toEqual([[], [], []]);
    expect(gone.past).toHaveLength(1);
    expect(gone.selection).toBeUndefined();
  });

  it("chosen nodes are bent, given nodes between them, and taken away together", () => {
    const nodes = ["n2", "n3", "n4"].map((nodeId) => ({ line: floor.line, nodeId }));
    const start = workWith("select", trayWithThree(), { kind: "several", grips: nodes });
    const nexts = (work: Work) => {
      const section = work.project.items[0];
      return section?.kind === "section" ? section.outline.elements.map(({ next }) => next) : [];
    };
    const bent = hear(start, { kind: "bend" });
    expect(nexts(bent)).toEqual(["line", "curve", "curve", "line"]);
    expect(nexts(hear(bent, { kind: "bend" }))).toEqual(["line", "line", "line", "line"]);
    const between = hear(start, { kind: "insert" });
    expect(nodesOf(between.project, "s1")).toEqual([
      [0, 100],
      [1000, 100],
      [1000, 250],
      [1000, 400],
      [500, 400],
      [0, 400],
    ]);
    expect(between.past).toHaveLength(1);
    expect(nodesOf(hear(between, { kind: "delete" }).project, "s1")).toEqual([[0, 100]]);
  });
});
