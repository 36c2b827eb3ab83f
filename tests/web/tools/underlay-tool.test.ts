import { describe, expect, it } from "vitest";
import { distance2, type Vec2 } from "../../../core/foundation/index.ts";
import {
  type Placement,
  type Project,
  pixelAt,
  pixelInView,
  type Underlay,
} from "../../../core/project/index.ts";
import type { PictureTask, ToolEvent } from "../../../web/tools/index.ts";
import {
  CANCEL,
  click,
  contextOf,
  emptyTray,
  hear,
  move,
  press,
  release,
  type Work,
  workWith,
} from "./bench-of-tools.ts";

const underlay: Underlay = {
  id: "u",
  name: "Old floor",
  view: "plan",
  picture: "data:image/png;base64,AA==",
  widthPx: 400,
  heightPx: 300,
  origin: { x: 0, up: 600 },
  mmPerPx: 2,
  turnRad: 0,
  opacity: 0.5,
};
const laid = (changes: Partial<Underlay> = {}): Project => ({
  ...emptyTray(),
  underlays: [{ ...underlay, ...changes }],
});
const task = (name: PictureTask): ToolEvent => ({ kind: "choose-task", task: name });
const pictureOf = (work: Work): Placement => work.project.underlays[0] ?? underlay;
const promptOf = (work: Work): string => work.hand.sight(contextOf(work)).prompt;

describe("a picture under the drawing", () => {
  it("goes with the hand, and the whole drag is one step back", () => {
    const work = hear(
      workWith("underlay", laid()),
      press([100, 100]),
      move([150, 90]),
      move([200, 80]),
      release([200, 80]),
    );
    expect(pictureOf(work).origin).toEqual({ x: 100, up: 580 });
    expect(work.selection).toEqual({ kind: "underlay", underlayId: "u" });
    expect(work.past).toHaveLength(1);
  });

  it("is back where it was when a drag is left off", () => {
    const work = hear(workWith("underlay", laid()), press([100, 100]), move([300, 100]), CANCEL);
    expect(pictureOf(work).origin).toEqual(underlay.origin);
  });

  it.each<readonly [string, Partial<Underlay>]>([
    ["locked", { locked: true }],
    ["hidden", { hidden: true }],
    ["under the other view", { view: "side" }],
  ])("is not taken hold of when it is %s", (_title, changes) => {
    const work = hear(
      workWith("underlay", laid(changes)),
      press([100, 100]),
      move([200, 80]),
      release([200, 80]),
    );
    expect(pictureOf(work).origin).toEqual(underlay.origin);
    expect(work.selection).toBeUndefined();
  });

  it("takes its scale from two of its points and the distance between them", () => {
    const [first, second]: readonly [Vec2, Vec2] = [
      [100, 500],
      [500, 200],
    ];
    const picked = hear(workWith("underlay", laid()), task("scale"), ...click(first), ...click(second));
    expect(promptOf(picked)).toContain("500.0 mm apart now");
    const work = hear(picked, { kind: "typed", typed: { lengthMm: 1250 } });
    const after = pictureOf(work);
    const [from, to] = [first, second].map((at) => pixelInView(after, pixelAt(underlay, at)));
    expect(from).toEqual(first);
    expect(from && to && distance2(from, to)).toBeCloseTo(1250, 9);
    expect(after.mmPerPx).toBe(5);
    expect(work.past).toHaveLength(1);
  });

  it("keeps its scale while nothing sensible is typed", () => {
    const picked = hear(
      workWith("underlay", laid()),
      task("scale"),
      ...click([100, 500]),
      ...click([500, 200]),
    );
    for (const lengthMm of [0, -3]) {
      const work = hear(picked, { kind: "typed", typed: { lengthMm } });
      expect(work.project).toBe(picked.project);
      expect(promptOf(work)).toContain("Type their true distance");
    }
  });

  it("is level after two points of a line that is to be level", () => {
    const [first, second]: readonly [Vec2, Vec2] = [
      [100, 500],
      [500, 470],
    ];
    const work = hear(workWith("underlay", laid()), task("level"), ...click(first), ...click(second));
    const [from, to] = [first, second].map((at) => pixelInView(pictureOf(work), pixelAt(underlay, at)));
    expect(from?.[1]).toBeCloseTo(500, 9);
    expect(to?.[1]).toBeCloseTo(500, 9);
  });

  it("is pushed by the arrow keys and deleted by its key when it is chosen", () => {
    const chosen = workWith("underlay", laid(), { kind: "underlay", underlayId: "u" });
    expect(pictureOf(hear(chosen, { kind: "nudge", byMm: [0, -10] })).origin).toEqual({ x: 0, up: 590 });
    expect(hear(chosen, { kind: "delete" }).project.underlays).toEqual([]);
  });

  it("lets go step by step: what was picked, then the task, then the tool", () => {
    const begun = hear(workWith("underlay", laid()), task("scale"), ...click([100, 500]));
    const taskLeft = hear(begun, CANCEL);
    expect(promptOf(taskLeft)).toContain("Click one end");
    expect(promptOf(hear(taskLeft, CANCEL))).toContain("Drag the picture");
    expect(hear(taskLeft, CANCEL, CANCEL).hand.name).toBe("select");
  });
});
