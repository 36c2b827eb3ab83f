import { describe, expect, it } from "vitest";
import { applyCommand, newFence } from "../../../core/project/index.ts";
import {
  CANCEL,
  click,
  contextOf,
  hear,
  move,
  nodesOf,
  place,
  press,
  release,
  trayWithSection,
  workWith,
} from "./bench-of-tools.ts";

const onFloor = { kind: "item", itemId: "s1" } as const;

describe("choosing", () => {
  it("a click on a node, on an edge and inside an outline choose node, edge and section", () => {
    const start = workWith("select", trayWithSection());
    expect(hear(start, ...click([1002, 396])).selection).toEqual({ ...onFloor, nodeId: "n3" });
    expect(hear(start, ...click([500, 402])).selection).toEqual({ ...onFloor, edgeId: "n3" });
    expect(hear(start, ...click([500, 250])).selection).toEqual(onFloor);
  });

  it("a click on the mirror image chooses what it is the image of", () => {
    expect(hear(workWith("select", trayWithSection()), ...click([500, -250])).selection).toEqual(onFloor);
  });

  it("a click on bare paper chooses nothing", () => {
    const work = hear(workWith("select", trayWithSection(), onFloor), ...click([3000, 2000]));
    expect(work.selection).toBeUndefined();
  });

  it("a click that does not move changes nothing", () => {
    const work = hear(
      workWith("select", trayWithSection()),
      press([1000, 400]),
      move([1003, 401]),
      release([1003, 401]),
    );
    expect(work.past).toEqual([]);
  });

  it("N and P go round the nodes of the chosen line", () => {
    const first = hear(workWith("select", trayWithSection(), onFloor), { kind: "next-node", by: 1 });
    expect(first.selection).toMatchObject({ nodeId: "n1" });
    expect(hear(first, { kind: "next-node", by: -1 }).selection).toMatchObject({ nodeId: "n4" });
  });
});

describe("dragging a node", () => {
  const dragged = () =>
    hear(
      workWith("select", trayWithSection()),
      press([1000, 400]),
      move([1040, 430]),
      move([1100, 480]),
      move([1153, 512]),
    );

  it("the node follows the pointer, on the grid", () => {
    expect(nodesOf(dragged().project, "s1")[2]).toEqual([1150, 510]);
  });

  it("a drag is one step to undo", () => {
    const work = hear(dragged(), release([1153, 512]));
    expect(work.past).toHaveLength(1);
    expect(work.isGestureOpen).toBe(false);
    expect(nodesOf(work.past[0] ?? work.project, "s1")[2]).toEqual([1000, 400]);
  });

  it("the node keeps its distance from the pointer that grabbed it beside its middle", () => {
    const work = hear(workWith("select", trayWithSection()), press([1006, 404]), move([1106, 454]));
    expect(nodesOf(work.project, "s1")[2]).toEqual([1100, 450]);
  });

  it("Escape puts the node back and leaves nothing to undo", () => {
    const work = hear(dragged(), CANCEL);
    expect(nodesOf(work.project, "s1")[2]).toEqual([1000, 400]);
    expect(work.past).toEqual([]);
  });

  it("with snaps held off the node lies where the pointer is", () => {
    const work = hear(
      workWith("select", trayWithSection()),
      press([1000, 400]),
      move([1153.3, 512.7], "plan", false),
    );
    expect(nodesOf(work.project, "s1")[2]).toEqual([1153.3, 512.7]);
  });

  it("a node of a profile is dragged in the side view", () => {
    const work = hear(
      workWith("select", trayWithSection()),
      press([1100, 60], "side"),
      move([1200, 120], "side"),
    );
    expect(work.project.profiles[0]?.nodes[1]).toMatchObject({ x: 1200, z: 120 });
  });

  it("a node whose segment is dragged by its fence's end keeps the lower edge under it", () => {
    const fence = newFence({
      id: "f1",
      number: 1,
      name: "Fence",
      elements: [
        { kind: "node", id: "n1", x: 200, y: 250, next: "line" },
        { kind: "node", id: "n2", x: 800, y: 250, next: "line" },
      ],
    });
    const project = applyCommand(trayWithSection(), {
      kind: "add-fence",
      fence: {
        ...fence,
        lowerEdge: {
          kind: "heights",
          nodes: [
            { kind: "node", id: "n1", x: 200, z: 20, next: "line" },
            { kind: "node", id: "n2", x: 800, z: 20, next: "line" },
          ],
        },
      },
    });
    const work = hear(workWith("select", project), press([800, 250]), move([900, 250]), move([940, 250]));
    const moved = work.project.items[1];
    expect(
      moved?.kind === "fence" && moved.lowerEdge.kind === "heights" ? moved.lowerEdge.nodes[1] : undefined,
    ).toMatchObject({
      x: 940,
      z: 20,
    });
  });
});

describe("dragging a section", () => {
  it("a section that is not chosen yet is not dragged away by a stray pull", () => {
    const work = hear(
      workWith("select", trayWithSection()),
      press([500, 250]),
      move([600, 300]),
      release([600, 300]),
    );
    expect(work.past).toEqual([]);
  });

  it("a chosen section goes as a whole, in one step to undo", () => {
    const work = hear(
      workWith("select", trayWithSection(), onFloor),
      press([500, 250]),
      move([560, 280]),
      move([620, 300]),
      release([620, 300]),
    );
    expect(nodesOf(work.project, "s1")).toEqual([
      [120, 150],
      [1120, 150],
      [1120, 450],
      [120, 450],
    ]);
    expect(work.past).toHaveLength(1);
  });

  it("no node of it crosses the centre line while mirroring is on", () => {
    const work = hear(workWith("select", trayWithSection(), onFloor), press([500, 250]), move([500, 0]));
    expect(Math.min(...nodesOf(work.project, "s1").map((node) => node[1]))).toBe(0);
  });

  it("Escape puts the section back", () => {
    const work = hear(
      workWith("select", trayWithSection(), onFloor),
      press([500, 250]),
      move([560, 280]),
      CANCEL,
    );
    expect(nodesOf(work.project, "s1")[0]).toEqual([0, 100]);
    expect(work.past).toEqual([]);
  });
});

describe("changing what is chosen", () => {
  it("the arrow keys move the chosen node", () => {
    const start = workWith("select", trayWithSection(), { ...onFloor, nodeId: "n2" });
    const work = hear(start, { kind: "nudge", byMm: [10, 0] }, { kind: "nudge", byMm: [0, -1] });
    expect(nodesOf(work.project, "s1")[1]).toEqual([1010, 99]);
    expect(work.past).toHaveLength(2);
  });

  it("Delete takes the chosen node away, else the section", () => {
    const node = hear(workWith("select", trayWithSection(), { ...onFloor, nodeId: "n2" }), {
      kind: "delete",
    });
    expect(nodesOf(node.project, "s1")).toHaveLength(3);
    expect(hear(node, { kind: "delete" }).project.items).toEqual([]);
  });

  it("a double click on an edge puts a node there, and the outline keeps its shape", () => {
    const work = hear(workWith("select", trayWithSection(), onFloor), {
      kind: "double",
      place: place([302, 403]),
    });
    const nodes = nodesOf(work.project, "s1");
    expect(nodes).toHaveLength(5);
    expect(nodes[3]?.[0]).toBeCloseTo(302, 6);
    expect(nodes[3]?.[1]).toBeCloseTo(400, 6);
    expect(work.selection).toMatchObject({ nodeId: "n5" });
  });

  it("C turns the chosen edge into a curve and back", () => {
    const start = workWith("select", trayWithSection(), { ...onFloor, edgeId: "n3" });
    const bent = hear(start, { kind: "bend" });
    const next = (work: typeof bent) => {
      const [section] = work.project.items;
      return section?.kind === "section" ? section.outline.elements[2]?.next : undefined;
    };
    expect(next(bent)).toBe("curve");
    expect(next(hear(bent, { kind: "bend" }))).toBe("line");
  });

  it("Escape lets go of the node, then of the section", () => {
    const start = workWith("select", trayWithSection(), { ...onFloor, nodeId: "n2" });
    expect(hear(start, CANCEL).selection).toEqual(onFloor);
    expect(hear(start, CANCEL, CANCEL).selection).toBeUndefined();
  });

  it("every phase of choosing answers Escape with rest", () => {
    const start = workWith("select", trayWithSection(), onFloor);
    const phases = [
      start,
      hear(start, press([1000, 400])),
      hear(start, press([1000, 400]), move([1100, 480])),
      hear(start, press([500, 250])),
      hear(start, press([500, 250]), move([600, 300])),
    ];
    for (const phase of phases) {
      const work = hear(phase, CANCEL);
      expect(work.project).toEqual(start.project);
      expect(work.hand.sight(contextOf(work)).snap).toBeUndefined();
    }
  });
});
