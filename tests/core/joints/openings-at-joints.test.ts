import { describe, expect, it } from "vitest";
import { boxNodes, circleNodes, opening, withOpenings } from "../openings.ts";
import {
  followEdge,
  planNode,
  rectangle,
  relativeMiss,
  section,
  soundTray,
  straightProfile,
  tray,
} from "../trays.ts";

/** Two sections, level and rising to the side, that meet along y = 400 from x = 0 to 1000. */
const pair = () =>
  tray({ p: straightProfile(0, 100, 1000, 100) }, [
    section(1, rectangle(0, 1000, 0, 400)),
    section(
      2,
      [
        followEdge("along", { itemId: "s1", fromNodeId: "outer", toNodeId: "front" }, "against"),
        planNode("rear", 1000, 700),
        planNode("outer", 0, 700),
      ],
      { tiltRad: 0.3, pivotYMm: 400 },
    ),
  ]);

/**
 * Square edges end where an upright wall meets them at the neutral fibre, which leans away from the air side: here by
 * 10.8 sin 0.3 = 3.2 mm, where the chord of a circle of 80 mm is shorter by 0.13 mm.
 */
const LEANING_MM = 0.14;

const shared = (laid: ReturnType<typeof soundTray>) =>
  laid.joints.filter(({ kind }) => kind === "shared edge");
const totalMm = (laid: ReturnType<typeof soundTray>) =>
  shared(laid).reduce((sum, { lengthMm }) => sum + lengthMm, 0);

describe("an opening at a joint", () => {
  it("whole sheets meet along their edge", () => {
    const laid = soundTray(pair());
    expect(relativeMiss(totalMm(laid), 1000)).toBeLessThan(1e-9);
  });

  it("across it leaves the rest of the joint and no problem", () => {
    const laid = soundTray(withOpenings(pair(), opening(1, circleNodes(500, 400, 80))));
    expect(Math.abs(totalMm(laid) - 840)).toBeLessThan(LEANING_MM);
    expect(shared(laid).every(({ foldRad }) => Math.abs(Math.abs(foldRad[0]) - 0.3) < 1e-9)).toBe(true);
  });

  it("that divides one of the sheets leaves a joint with each part", () => {
    const laid = soundTray(withOpenings(pair(), opening(1, boxNodes(450, 550, -50, 480))));
    expect(laid.parts.map(({ id }) => id)).toEqual(["S1.1", "S1.2", "S2"]);
    const pairs = shared(laid).map(({ partIds }) => [...partIds].sort().join("/"));
    expect([...new Set(pairs)].sort()).toEqual(["S1.1/S2", "S1.2/S2"]);
    expect(Math.abs(totalMm(laid) - 900)).toBeLessThan(0.01);
  });

  it("that ends at it takes nothing from it, whichever side it lies on", () => {
    for (const [y0, y1] of [
      [300, 399],
      [401, 500],
    ] as const) {
      const laid = soundTray(withOpenings(pair(), opening(1, boxNodes(450, 550, y0, y1))), [
        "web-too-narrow",
      ]);
      expect(relativeMiss(totalMm(laid), 1000)).toBeLessThan(1e-9);
    }
  });
});
