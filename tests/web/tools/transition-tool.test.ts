import { describe, expect, it } from "vitest";
import {
  applyCommand,
  newPlate,
  newSection,
  type Project,
  resolveLines,
  type Transition,
} from "../../../core/project/index.ts";
import { findLine, sceneOf } from "../../../web/tools/index.ts";
import {
  CANCEL,
  click,
  contextOf,
  FINISH,
  hear,
  move,
  press,
  release,
  trayWithSection,
  type Work,
  workWith,
} from "./bench-of-tools.ts";

/** The section of the bench, y 100 to 400, and a second one from y 500 to 800 beside it. */
function trayWithTwo(): Project {
  const corners = [
    [0, 500],
    [1000, 500],
    [1000, 800],
    [0, 800],
  ] as const;
  return applyCommand(trayWithSection(), {
    kind: "add-section",
    section: newSection({
      id: "s2",
      number: 2,
      name: "Outer",
      profileId: "p1",
      closed: true,
      elements: corners.map(([x, y], index) => ({ kind: "node", id: `n${index + 1}`, x, y, next: "line" })),
    }),
  });
}

const transitionOf = ({ project }: Work): Transition | undefined =>
  project.items.flatMap((item) => (item.kind === "transition" ? [item] : []))[0];

describe("a transition between two edges that are there", () => {
  const made = () => hear(workWith("transition", trayWithTwo()), ...click([500, 400]), ...click([500, 500]));

  it("begins and ends at the edges that are clicked, from node to node of each", () => {
    const work = made();
    expect(transitionOf(work)).toMatchObject({
      number: 1,
      first: { kind: "stretch", edge: { itemId: "s1", fromNodeId: "n3", toNodeId: "n4", hand: "right" } },
      second: { kind: "stretch", edge: { itemId: "s2", fromNodeId: "n1", toNodeId: "n2", hand: "right" } },
    });
    expect([work.past.length, work.hand.name]).toEqual([1, "select"]);
    expect(resolveLines(work.project).problems).toEqual([]);
  });

  it("has an outline in plan that nothing can be grabbed on", () => {
    const { project } = made();
    const scene = sceneOf(project, resolveLines(project));
    const line = findLine(scene, { of: "item", itemId: transitionOf(made())?.id ?? "" });
    expect(line).toMatchObject({ kind: "transition", nodes: [], broken: false });
    expect(line?.edges.map((edge) => edge.edgeId).toSorted()).toEqual(["end", "first", "second", "start"]);
  });

  it("a click on the image takes the image's edge", () => {
    const work = hear(workWith("transition", trayWithTwo()), ...click([500, 100]), ...click([500, -100]));
    expect(transitionOf(work)).toMatchObject({
      first: { edge: { itemId: "s1", fromNodeId: "n1", hand: "right" } },
      second: { edge: { itemId: "s1", fromNodeId: "n1", hand: "left" } },
    });
  });

  it("the same edge twice makes no transition", () => {
    const work = hear(workWith("transition", trayWithTwo()), ...click([500, 400]), ...click([600, 400]));
    expect([transitionOf(work), work.hand.name]).toEqual([undefined, "transition"]);
  });

  it("the keys go from edge to edge and take one, as a click does", () => {
    const next = { kind: "next-node", by: 1 } as const;
    const work = hear(
      workWith("transition", trayWithTwo()),
      ...[next, next, next],
      FINISH,
      ...[next, next, next, next, next],
      FINISH,
    );
    expect(transitionOf(work)).toMatchObject({
      first: { edge: { itemId: "s1", fromNodeId: "n3" } },
      second: { edge: { itemId: "s2", fromNodeId: "n1" } },
    });
  });

  it("says which edge a click would take before it is taken", () => {
    const work = hear(workWith("transition", trayWithTwo()), move([500, 403]));
    expect(work.hand.sight(contextOf(work))).toMatchObject({
      edges: [{ line: { of: "item", itemId: "s1" }, edgeId: "n3", hand: "right", isTaken: false }],
      finish: "Take this edge",
      prompt: "Floor, the edge after node 3: click or press Enter to take it.",
    });
  });

  it("a click on the free edge of a plate's wing takes that, and not the bend below it", () => {
    const wing = {
      id: "w1",
      edgeId: "n3",
      angleRad: Math.PI / 2,
      insideRadiusMm: 3,
      lengthMm: 30,
      startInsetMm: 0,
      endInsetMm: 0,
      startTaperRad: 0,
      endTaperRad: 0,
    };
    const corners = [
      [200, 0],
      [800, 0],
      [800, 60],
      [200, 60],
    ] as const;
    const plate = {
      ...newPlate({
        id: "pl1",
        number: 1,
        name: "Plate",
        closed: true,
        zMm: 30,
        elements: corners.map(([x, y], index) => ({ kind: "node", id: `n${index + 1}`, x, y, next: "line" })),
      }),
      wings: [wing],
    };
    const start = {
      ...workWith("transition", applyCommand(trayWithTwo(), { kind: "add-plate", plate })),
      wingEdges: [{ itemId: "pl1", wingId: "w1", from: [800, 60], to: [200, 60] }] as const,
    };
    const work = hear(start, ...click([500, 60]), ...click([500, 100]));
    expect(transitionOf(work)).toMatchObject({
      first: { kind: "stretch", edge: { itemId: "pl1", fromNodeId: "w1-start", toNodeId: "w1-end" } },
      second: { kind: "stretch", edge: { itemId: "s1", fromNodeId: "n1", toNodeId: "n2" } },
    });
  });

  it("Escape lets go of the first edge before the tool", () => {
    const work = hear(workWith("transition", trayWithTwo()), ...click([500, 400]), CANCEL);
    expect(work.hand.sight(contextOf(work)).edges).toEqual([]);
    expect(hear(work, CANCEL).hand.name).toBe("select");
  });
});

describe("a transition to an edge of its own", () => {
  const drawn = (...before: readonly Parameters<typeof hear>[1][]) =>
    hear(
      workWith("transition", trayWithSection()),
      ...click([500, 400]),
      ...before,
      ...click([0, 600]),
      ...click([500, 650]),
      ...click([1000, 600]),
      FINISH,
    );
  const heights = (work: Work) => {
    const edge = transitionOf(work)?.second;
    return edge?.kind === "free" ? edge.nodes.map((node) => node.z) : undefined;
  };

  it("clicks on bare paper draw it in plan, at the typed height", () => {
    const work = drawn({ kind: "choose-height", zMm: 90 });
    expect(heights(work)).toEqual([90, 90, 90]);
    expect(resolveLines(work.project).problems).toEqual([]);
    expect(work.past).toHaveLength(1);
  });

  it("without a typed height each node takes the height of the surface where it lies", () => {
    const start = hear(
      { ...workWith("transition", trayWithSection()), heightOver: ([x]) => 50 + x / 100 },
      ...click([500, 400]),
      { kind: "choose-way", way: "draw" },
      ...click([0, 400]),
      ...click([1000, 400]),
      FINISH,
    );
    expect(heights(start)).toEqual([50, 60]);
  });

  it("its nodes show in the side view as well, where a drag lifts them", () => {
    const made = drawn({ kind: "choose-height", zMm: 90 });
    const lifted = hear(
      made,
      press([500, 90], "side"),
      move([500, 150], "side", false),
      release([500, 150], "side"),
    );
    const edge = transitionOf(lifted)?.second;
    expect(edge?.kind === "free" ? edge.nodes[1] : undefined).toMatchObject({ x: 500, y: 650, z: 150 });
    expect(lifted.past).toHaveLength(2);
  });

  it("two free edges have no node of one name", () => {
    const work = hear(
      workWith("transition", trayWithSection()),
      { kind: "choose-way", way: "draw" },
      ...click([0, 500]),
      ...click([1000, 500]),
      FINISH,
      ...click([0, 700]),
      ...click([1000, 700]),
      FINISH,
    );
    const transition = transitionOf(work);
    const ids = [transition?.first, transition?.second].flatMap((edge) =>
      edge?.kind === "free" ? edge.nodes.map((node) => node.id) : [],
    );
    expect(ids).toEqual(["n1", "n2", "n3", "n4"]);
  });

  it("a node put into it by command leaves its shape and takes a name of its own", () => {
    const made = drawn({ kind: "choose-height", zMm: 90 });
    const itemId = transitionOf(made)?.id ?? "";
    const chosen = {
      ...made,
      selection: { kind: "item", itemId, line: "second-edge", edgeId: "n1" },
    } as const;
    const split = hear(chosen, { kind: "insert" });
    const edge = transitionOf(split)?.second;
    expect(edge?.kind === "free" ? edge.nodes.map(({ id, x, y, z }) => [id, x, y, z]) : []).toEqual([
      ["n1", 0, 600, 90],
      ["n4", 250, 625, 90],
      ["n2", 500, 650, 90],
      ["n3", 1000, 600, 90],
    ]);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, 1e300, -1e9])(
    "a slip of the keyboard to %d leaves the line on the board as its bare chords",
    (z) => {
      const made = drawn({ kind: "choose-height", zMm: 90 });
      const itemId = transitionOf(made)?.id ?? "";
      const line = { of: "edge", itemId, side: "second", view: "side" } as const;
      const slipped = applyCommand(made.project, { kind: "move-node", line, nodeId: "n2", to: [500, z] });
      const scene = sceneOf(slipped, resolveLines(slipped));
      expect(findLine(scene, { ...line, view: "plan" })?.broken).toBe(true);
      expect(findLine(scene, line)?.nodes).toHaveLength(3);
    },
  );

  it("moves as a whole with its nodes, and keeps their heights", () => {
    const made = drawn({ kind: "choose-height", zMm: 90 });
    const moved = hear(made, { kind: "nudge", byMm: [10, 5] });
    const edge = transitionOf(moved)?.second;
    expect(edge?.kind === "free" ? edge.nodes[0] : undefined).toMatchObject({ x: 10, y: 605, z: 90 });
  });

  it("Delete takes away the chosen node, and with none chosen the transition", () => {
    const made = drawn();
    const itemId = transitionOf(made)?.id ?? "";
    const selection = { kind: "item", itemId, line: "second-edge", nodeId: "n2" } as const;
    const fewer = hear({ ...made, selection }, { kind: "delete" });
    const edge = transitionOf(fewer)?.second;
    expect(edge?.kind === "free" ? edge.nodes.length : 0).toBe(2);
    expect(transitionOf(hear(fewer, { kind: "delete" }))).toBeUndefined();
  });
});
