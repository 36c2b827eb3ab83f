import { describe, expect, it } from "vitest";
import { resolveLines } from "../../../core/project/index.ts";
import {
  CANCEL,
  click,
  contextOf,
  emptyTray,
  FINISH,
  hear,
  nodesOf,
  trayWithSection,
  workWith,
} from "./bench-of-tools.ts";

describe("drawing a fence", () => {
  const drawn = () =>
    hear(workWith("fence", trayWithSection()), ...click([200, 250]), ...click([800, 250]), FINISH);

  it("a fence drawn under a section hangs 40 mm below its profile, along its whole length", () => {
    const fence = drawn().project.items[1];
    expect(nodesOf(drawn().project, "f1")).toEqual([
      [200, 250],
      [800, 250],
    ]);
    expect(fence).toMatchObject({
      kind: "fence",
      number: 1,
      lowerEdge: {
        kind: "heights",
        nodes: [
          { x: 200, z: 20 },
          { x: 800, z: 20 },
        ],
      },
    });
    expect(resolveLines(drawn().project).problems).toEqual([]);
  });

  it("a fence drawn forward hangs the same", () => {
    const work = hear(
      workWith("fence", trayWithSection()),
      ...click([800, 250]),
      ...click([200, 250]),
      FINISH,
    );
    const fence = work.project.items[1];
    const lower = fence?.kind === "fence" && fence.lowerEdge.kind === "heights" ? fence.lowerEdge.nodes : [];
    expect(lower.map((node) => node.x)).toEqual([200, 800]);
  });

  it("a fence that turns back in x is given depths along its own length", () => {
    const work = hear(
      workWith("fence", trayWithSection()),
      ...click([200, 150]),
      ...click([800, 250]),
      ...click([200, 350]),
      FINISH,
    );
    const fence = work.project.items[1];
    expect(fence?.kind === "fence" ? fence.lowerEdge.kind : undefined).toBe("depths");
  });

  it("one node makes no fence", () => {
    expect(
      hear(workWith("fence", trayWithSection()), ...click([200, 250]), FINISH).project.items,
    ).toHaveLength(1);
  });

  it("Escape drops the nodes first and the tool after", () => {
    const start = trayWithSection();
    const dropped = hear(workWith("fence", start), ...click([200, 250]), CANCEL);
    expect([dropped.hand.name, dropped.project]).toEqual(["fence", start]);
    expect(hear(dropped, CANCEL).hand.name).toBe("select");
  });
});

describe("drawing a profile", () => {
  const profileNodes = (work: ReturnType<typeof hear>, index = 0) =>
    work.project.profiles[index]?.nodes.map((node) => [node.x, node.z]);

  it("a new profile runs rearward, whichever node was set down first", () => {
    const work = hear(
      workWith("profile", emptyTray()),
      ...click([900, 140], "side"),
      ...click([0, 60], "side"),
      ...click([600, 60], "side"),
      FINISH,
    );
    expect(profileNodes(work)).toEqual([
      [0, 60],
      [600, 60],
      [900, 140],
    ]);
    expect(resolveLines(work.project).problems).toEqual([]);
  });

  const extended = (x: number, z: number) =>
    hear(workWith("profile", trayWithSection(), { kind: "item", itemId: "s1" }), ...click([x, z], "side"));

  it("a click behind the rear of the chosen section's profile makes it longer", () => {
    expect(profileNodes(extended(1500, 160))).toEqual([
      [-100, 60],
      [1100, 60],
      [1500, 160],
    ]);
  });

  it("a click before its front makes it longer there, and the old front stays where it was", () => {
    const work = extended(-400, 90);
    expect(profileNodes(work)).toEqual([
      [-400, 90],
      [-100, 60],
      [1100, 60],
    ]);
    expect(work.past).toHaveLength(1);
  });

  it("a click over it puts a node in between", () => {
    expect(profileNodes(extended(500, 100))).toEqual([
      [-100, 60],
      [500, 100],
      [1100, 60],
    ]);
  });

  it("Escape with nothing drawn leaves the tool", () => {
    const work = hear(workWith("profile", emptyTray()), ...click([0, 60], "side"), CANCEL);
    expect(work.hand.sight(contextOf(work)).draft?.nodes).toEqual([]);
    expect(hear(work, CANCEL).hand.name).toBe("select");
  });
});

describe("measuring", () => {
  it("two clicks give length, direction and both differences", () => {
    const work = hear(workWith("measure", emptyTray()), ...click([0, 100]), ...click([300, 500]));
    expect(work.hand.sight(contextOf(work)).prompt).toBe("500.0 mm at 53.1°, x 300.0, y 400.0");
  });

  it("Escape drops the measure first and the tool after", () => {
    const work = hear(workWith("measure", emptyTray()), ...click([0, 100]), CANCEL);
    expect(work.hand.name).toBe("measure");
    expect(hear(work, CANCEL).hand.name).toBe("select");
  });
});
