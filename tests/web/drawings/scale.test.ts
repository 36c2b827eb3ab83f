import { describe, expect, it } from "vitest";
import {
  boundsOf,
  fitScale,
  hatchOfItem,
  loopsBounds,
  loopsPath,
  scaleOf,
} from "../../../web/drawings/index.ts";
import { sampleDesign, sampleProject } from "../sample-design.ts";

const NEAR_PX = 9;

describe("scales of pictures", () => {
  it("puts the second axis upward: the right side of the car is at the top of a plan", () => {
    const scale = scaleOf({ left: 0, right: 100, bottom: -50, top: 50 }, 2, 10);
    expect(scale.toPx([0, 50])).toEqual([10, 10]);
    expect(scale.toPx([100, -50])).toEqual([210, 210]);
  });

  it("fits the whole box into the room, with its margin, at one scale both ways", () => {
    const bounds = { left: -20, right: 1980, bottom: 0, top: 300 };
    const scale = fitScale(bounds, { widthPx: 440, heightPx: 300, marginPx: 20 });
    expect(scale.pixelsPerMm).toBeCloseTo(0.2, NEAR_PX);
    expect(scale.toPx([1980, 0])[0]).toBeCloseTo(420, NEAR_PX);
    expect(scale.heightPx).toBeCloseTo(100, NEAR_PX);
  });

  it("has no box around nothing", () => {
    expect(boundsOf([])).toBeUndefined();
  });

  it("draws every loop of a part as a closed path", () => {
    const loops = sampleDesign.parts[0]?.loops ?? [];
    const bounds = loopsBounds(loops);
    expect(bounds).toEqual({ left: 0, right: 2010, bottom: -300, top: 300 });
    if (bounds)
      expect(loopsPath(loops, scaleOf(bounds, 0.1, 0))).toBe(
        "M0.00 60.00L201.00 60.00L201.00 0.00L0.00 0.00Z",
      );
  });

  it("hatches both hands of an item alike, and neighbours differently", () => {
    expect(hatchOfItem(sampleProject, "s1")).not.toBe(hatchOfItem(sampleProject, "s2"));
    expect(hatchOfItem(sampleProject, "gone")).toBe(1);
  });
});
