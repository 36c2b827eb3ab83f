import { describe, expect, it } from "vitest";
import { toRadians, type Vec2 } from "../../../core/foundation/index.ts";
import { checkDocument, resolveLines } from "../../../core/project/index.ts";
import {
  CANCEL,
  click,
  contextOf,
  emptyTray,
  FINISH,
  hear,
  move,
  nodesOf,
  trayWithSection,
  workWith,
} from "./bench-of-tools.ts";

const CORNERS: readonly Vec2[] = [
  [0, 0],
  [800, 0],
  [800, 300],
  [0, 300],
];

const drawn = (corners: readonly Vec2[]) =>
  hear(workWith("section", emptyTray()), ...corners.flatMap((corner) => click(corner)));

describe("drawing a section", () => {
  it("an outline that is clicked and closed on its first node is a section with a flat profile under it", () => {
    const work = hear(drawn(CORNERS), ...click([0, 0]));
    const [section] = work.project.items;
    expect(section?.kind).toBe("section");
    expect(nodesOf(work.project, "s1")).toEqual(CORNERS);
    expect(work.project.profiles[0]?.nodes.map((node) => [node.x, node.z])).toEqual([
      [-100, 60],
      [900, 60],
    ]);
    expect(work.selection).toEqual({ kind: "item", itemId: "s1" });
    expect(work.hand.name).toBe("select");
    expect([...checkDocument(work.project), ...resolveLines(work.project).problems]).toEqual([]);
  });

  it("a whole section is one step to undo", () => {
    const start = emptyTray();
    const work = hear(workWith("section", start), ...CORNERS.flatMap((corner) => click(corner)), FINISH);
    expect(work.past).toEqual([start]);
  });

  it("Enter closes an outline of three nodes and does nothing before", () => {
    const two = hear(drawn(CORNERS.slice(0, 2)), FINISH);
    expect(two.project.items).toEqual([]);
    expect(hear(two, ...click([800, 300]), FINISH).project.items).toHaveLength(1);
  });

  it("clicking the last node again closes the outline without a second node there", () => {
    const work = hear(drawn(CORNERS), ...click([0, 300]));
    expect(nodesOf(work.project, "s1")).toEqual(CORNERS);
  });

  it("a node placed left of the centre line comes onto it while mirroring is on", () => {
    const work = hear(
      workWith("section", emptyTray()),
      ...click([0, -80]),
      ...click([800, 0]),
      ...click([800, 300]),
      FINISH,
    );
    expect(nodesOf(work.project, "s1")[0]).toEqual([0, 0]);
  });

  it("the profile of a chosen section is offered for the next one", () => {
    const corners: readonly Vec2[] = [
      [0, 500],
      [900, 500],
      [900, 700],
    ];
    const start = workWith("section", trayWithSection(), { kind: "item", itemId: "s1" });
    const work = hear(start, ...corners.flatMap((corner) => click(corner)), FINISH);
    expect(work.project.items[1]).toMatchObject({ id: "s2", number: 2, profileId: "p1" });
    expect(work.project.profiles).toHaveLength(1);
  });

  it("C turns the segment being drawn and those after it into curves", () => {
    const work = hear(
      workWith("section", emptyTray()),
      ...click([0, 0]),
      ...click([800, 0]),
      { kind: "bend" },
      ...click([800, 300]),
      ...click([0, 300]),
      FINISH,
    );
    const [section] = work.project.items;
    const kinds = section?.kind === "section" ? section.outline.elements.map((element) => element.next) : [];
    expect(kinds).toEqual(["line", "curve", "curve", "curve"]);
  });
});

describe("typing a section", () => {
  it("a complete section can be typed: coordinates, then length and direction from the last node", () => {
    const work = hear(
      workWith("section", emptyTray()),
      { kind: "typed", typed: { first: 100, second: 50 } },
      { kind: "typed", typed: { lengthMm: 400, directionRad: 0 } },
      { kind: "typed", typed: { lengthMm: 250, directionRad: toRadians(90) } },
      FINISH,
    );
    const nodes = nodesOf(work.project, "s1");
    expect(nodes[1]).toEqual([500, 50]);
    expect(nodes[2]?.[0]).toBeCloseTo(500, 9);
    expect(nodes[2]?.[1]).toBeCloseTo(300, 9);
  });

  it("a typed length alone goes toward the pointer", () => {
    const work = hear(drawn([[0, 0]]), move([300, 400]), { kind: "typed", typed: { lengthMm: 100 } });
    const draft = work.hand.sight(contextOf(work)).draft;
    expect(draft?.nodes[1]?.at[0]).toBeCloseTo(60, 9);
    expect(draft?.nodes[1]?.at[1]).toBeCloseTo(80, 9);
  });

  it("one typed coordinate leaves the other to the pointer", () => {
    const work = hear(drawn([[0, 0]]), move([300, 400]), { kind: "typed", typed: { first: 777 } });
    expect(work.hand.sight(contextOf(work)).draft?.nodes[1]?.at).toEqual([777, 400]);
  });

  it("a typed place is not snapped", () => {
    const work = hear(drawn([[0, 0]]), { kind: "typed", typed: { first: 123.4, second: 56.7 } });
    expect(work.hand.sight(contextOf(work)).draft?.nodes[1]?.at).toEqual([123.4, 56.7]);
  });
});

describe("leaving off a section", () => {
  it("Delete takes the last node back", () => {
    const work = hear(drawn(CORNERS), { kind: "delete" });
    expect(work.hand.sight(contextOf(work)).draft?.nodes).toHaveLength(3);
  });

  it("Escape drops the nodes first and the tool after, and the document is as it was", () => {
    const start = emptyTray();
    const dropped = hear(workWith("section", start), ...click([0, 0]), ...click([800, 0]), CANCEL);
    expect(dropped.hand.name).toBe("section");
    expect(dropped.hand.sight(contextOf(dropped)).draft?.nodes).toEqual([]);
    const left = hear(dropped, CANCEL);
    expect(left.hand.name).toBe("select");
    expect(left.project).toBe(start);
  });
});
