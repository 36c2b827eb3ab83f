import { describe, expect, it } from "vitest";
import { edgeOf, partOf, planNode, section, sideNode, soundTray, tray } from "../trays.ts";

/** A fold of 30° at x = 300: 20 mm foam without skins is set back by 10 tan 15°. */
const SLOPE = Math.tan((30 * Math.PI) / 180);
const profile = [sideNode("a", 0, 0), sideNode("b", 300, 0), sideNode("c", 700, 400 * SLOPE)];
const SET_BACK_MM = 10 * Math.tan((15 * Math.PI) / 180);

describe("an edge that is set back", () => {
  it("takes with it a neighbour shorter than the set-back, and ends on the one behind that", () => {
    const outline = [
      planNode("inner", 0, 0),
      planNode("rear", 600, 0),
      planNode("outer", 600, 200),
      planNode("nick", 300.4, 200),
      planNode("low", 299, 199),
      planNode("front", 0, 199),
    ];
    const laid = soundTray(tray({ p: profile }, [section(1, outline)], { skinMm: 0, gapLimitMm: 0 }));
    const rear = partOf(laid, "S1.2");
    expect(edgeOf(rear, "fold-b").flatLengthMm).toBeCloseTo(200, 6);
    const long = 300 / Math.cos(Math.PI / 6) - SET_BACK_MM;
    expect(edgeOf(rear, "outer").flatLengthMm).toBeCloseTo(long, 6);
    expect(rear.flatAreaMm2).toBeCloseTo(200 * long, 3);
  });

  it("may be one of two: a tip cut off by a fold", () => {
    const outline = [
      planNode("a", 400, 0, { next: "curve", meets: "smooth" }),
      planNode("b", 400, 200, { next: "curve", meets: "smooth" }),
      planNode("c", 200, 100, { next: "curve", meets: "smooth" }),
    ];
    const cut = profile.map((node) => (node.id === "b" ? { ...node, x: 380 } : node));
    const laid = soundTray(tray({ p: cut }, [section(1, outline)], { skinMm: 0, gapLimitMm: 0 }));
    expect(laid.parts.map(({ id }) => id)).toEqual(["S1.1", "S1.2"]);
    for (const part of laid.parts)
      expect(Math.abs(part.flatAreaMm2 / part.spaceAreaMm2 - 1)).toBeLessThan(1e-6);
  });
});
