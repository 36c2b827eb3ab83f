import { describe, expect, it } from "vitest";
import { resolveLines } from "../../../core/project/index.ts";
import { circleOf } from "../../../web/tools/index.ts";
import {
  CANCEL,
  click,
  contextOf,
  emptyTray,
  FINISH,
  hear,
  move,
  nodesOf,
  press,
  release,
  trayWithSection,
  workWith,
} from "./bench-of-tools.ts";

const CIRCLE = { kind: "choose-shape", shape: "circle" } as const;

describe("drawing an opening", () => {
  const drawn = () =>
    hear(
      workWith("opening", trayWithSection()),
      ...click([200, 200]),
      ...click([400, 200]),
      ...click([400, 300]),
      FINISH,
    );

  it("an opening drawn corner by corner is cut upright and belongs to the tray", () => {
    const { project, selection, past, hand } = drawn();
    expect(project.openings).toMatchObject([{ number: 1, name: "Opening 1", cut: "upright" }]);
    expect(project.items).toHaveLength(1);
    expect(selection).toEqual({ kind: "opening", openingId: project.openings[0]?.id });
    expect([past.length, hand.name]).toEqual([1, "select"]);
    expect(resolveLines(project).problems).toEqual([]);
  });

  const circleAt = (centre: readonly [number, number], radiusMm: number) =>
    hear(workWith("opening", trayWithSection()), CIRCLE, ...click(centre), {
      kind: "typed",
      typed: { lengthMm: radiusMm },
    }).project;

  it("a circle is one of exact arcs, as wide all round as it was typed", () => {
    const project = circleAt([500, 250], 80);
    const curve = resolveLines(project).openings.o1;
    expect(curve?.lengthMm).toBeCloseTo(2 * Math.PI * 80, 9);
    expect(curve?.pieces.map((piece) => piece.kind)).toEqual(Array(8).fill("arc"));
    const outline = project.openings[0]?.outline;
    expect(outline && circleOf(outline)).toEqual({ centre: [500, 250], radiusMm: 80, isHalf: false });
  });

  it("a circle about the centre line is drawn as its right half, which its image completes", () => {
    const project = circleAt([500, 0], 80);
    const curve = resolveLines(project).openings.o1;
    expect(curve?.lengthMm).toBeCloseTo(Math.PI * 80 + 160, 9);
    expect(resolveLines(project).problems).toEqual([]);
  });

  it("a circle near the centre line grows no farther than to it", () => {
    const outline = circleAt([500, 30], 80).openings[0]?.outline;
    expect(outline && circleOf(outline)?.radiusMm).toBe(30);
  });

  it("a circle can be pulled from its centre in one drag, in steps of the grid", () => {
    const work = hear(
      workWith("opening", trayWithSection()),
      CIRCLE,
      press([500, 250]),
      move([550, 262]),
      release([550, 262]),
    );
    const outline = work.project.openings[0]?.outline;
    expect(outline && circleOf(outline)).toEqual({ centre: [500, 250], radiusMm: 50, isHalf: false });
  });

  it("an outline that is no circle is not taken for one", () => {
    const outline = drawn().project.openings[0]?.outline;
    expect(outline && circleOf(outline)).toBeUndefined();
  });

  it("a dragged corner makes a circle wider about its centre, and moving it whole keeps it a circle", () => {
    const start = workWith("select", circleAt([500, 250], 80), { kind: "opening", openingId: "o1" });
    const wider = hear(start, press([580, 330]), move([620, 330]), release([620, 330]));
    const outlineOf = (work: typeof start) =>
      work.project.openings[0]?.outline ?? { closed: true, elements: [] };
    expect(circleOf(outlineOf(wider))).toEqual({ centre: [500, 250], radiusMm: 120, isHalf: false });
    expect(wider.past).toHaveLength(1);
    const moved = hear(workWith("select", circleAt([500, 250], 80), { kind: "opening", openingId: "o1" }), {
      kind: "nudge",
      byMm: [10, -20],
    });
    expect(circleOf(outlineOf(moved))).toEqual({ centre: [510, 230], radiusMm: 80, isHalf: false });
  });

  it("Escape lets go of the centre first and of the tool after", () => {
    const work = hear(workWith("opening", trayWithSection()), CIRCLE, ...click([500, 250]), CANCEL);
    expect(work.hand.sight(contextOf(work)).shape).toBe("circle");
    expect(hear(work, CANCEL).hand.name).toBe("select");
  });
});

describe("drawing a plate", () => {
  const corners = [...click([200, 200]), ...click([400, 200]), ...click([400, 300])];

  it("a plate under a section lies at the height of its surface", () => {
    const start = { ...workWith("plate", trayWithSection()), heightOver: () => 47 };
    const { project, selection } = hear(start, ...corners, FINISH);
    const plate = project.items[1];
    expect(plate).toMatchObject({ kind: "plate", number: 1, zMm: 47, wings: [] });
    expect(nodesOf(project, plate?.id ?? "")).toHaveLength(3);
    expect(selection).toEqual({ kind: "item", itemId: plate?.id });
    expect(resolveLines(project).problems).toEqual([]);
  });

  it("a typed height goes before that of the surface", () => {
    const start = { ...workWith("plate", emptyTray()), heightOver: () => 47 };
    const work = hear(start, { kind: "choose-height", zMm: 30 }, ...corners, FINISH);
    expect(work.project.items[0]).toMatchObject({ zMm: 30 });
  });
});
