import { describe, expect, it } from "vitest";
import type { Vec2 } from "../../../core/foundation/index.ts";
import {
  contains,
  fitViews,
  layoutOf,
  panBy,
  planTransform,
  sideTransform,
  toMm,
  toPx,
  zoomAbout,
} from "../../../web/board/viewport.ts";

const LAYOUT = layoutOf(1000, 700);
const VIEWPORT = { centreXMm: 900, planCentreYMm: 20, sideCentreZMm: 80, pixelsPerMm: 0.3 };
const TALL = 2;
/** Pixels: far finer than any screen. */
const PX_DIGITS = 6;

describe("the views of the board", () => {
  it("plan and side view share the x axis at every zoom", () => {
    for (const pixelsPerMm of [0.05, 0.3, 4]) {
      const viewport = { ...VIEWPORT, pixelsPerMm };
      const plan = toPx(planTransform(viewport, LAYOUT), [1234, 0]);
      const side = toPx(sideTransform(viewport, LAYOUT, TALL), [1234, 0]);
      expect(plan[0]).toBeCloseTo(side[0], PX_DIGITS);
    }
  });

  it("y to the right of the car and z point up on the screen", () => {
    const plan = planTransform(VIEWPORT, LAYOUT);
    expect(toPx(plan, [0, 100])[1]).toBeLessThan(toPx(plan, [0, 0])[1]);
    const side = sideTransform(VIEWPORT, LAYOUT, TALL);
    expect(toPx(side, [0, 100])[1]).toBeLessThan(toPx(side, [0, 0])[1]);
  });

  it("a place goes to pixels and back", () => {
    for (const transform of [planTransform(VIEWPORT, LAYOUT), sideTransform(VIEWPORT, LAYOUT, TALL)]) {
      const [x, up] = toMm(transform, toPx(transform, [321.5, -45.25]));
      expect(x).toBeCloseTo(321.5, PX_DIGITS);
      expect(up).toBeCloseTo(-45.25, PX_DIGITS);
    }
  });

  it.each([
    ["plan", [200, 100], planTransform],
    [
      "side view",
      [200, 600],
      (viewport: typeof VIEWPORT, layout: typeof LAYOUT) => sideTransform(viewport, layout, TALL),
    ],
  ] as const)("zooming in the %s keeps the place under the pointer", (_, px, transformOf) => {
    const at = toMm(transformOf(VIEWPORT, LAYOUT), px as Vec2);
    const zoomed = zoomAbout(VIEWPORT, LAYOUT, px as Vec2, { factor: 1.7, heightFactor: TALL });
    const after = toPx(transformOf(zoomed, LAYOUT), at);
    expect(after[0]).toBeCloseTo(px[0], PX_DIGITS);
    expect(after[1]).toBeCloseTo(px[1], PX_DIGITS);
  });

  it("pulling the side view moves it with the hand and leaves the plan's y where it was", () => {
    const pulled = panBy(VIEWPORT, "side", [30, -12], TALL);
    const before = toPx(sideTransform(VIEWPORT, LAYOUT, TALL), [500, 60]);
    const after = toPx(sideTransform(pulled, LAYOUT, TALL), [500, 60]);
    expect(after[0] - before[0]).toBeCloseTo(30, PX_DIGITS);
    expect(after[1] - before[1]).toBeCloseTo(-12, PX_DIGITS);
    expect(pulled.planCentreYMm).toBe(VIEWPORT.planCentreYMm);
  });

  it("fitting shows everything in both views", () => {
    const plan = { left: 0, right: 2000, bottom: -650, top: 650 };
    const side = { left: -100, right: 2100, bottom: 0, top: 147 };
    const viewport = fitViews(LAYOUT, plan, side, TALL);
    for (const at of [
      [plan.left, plan.bottom],
      [plan.right, plan.top],
    ] as const) {
      expect(contains(LAYOUT.plan, toPx(planTransform(viewport, LAYOUT), at))).toBe(true);
    }
    for (const at of [
      [side.left, side.bottom],
      [side.right, side.top],
    ] as const) {
      expect(contains(LAYOUT.side, toPx(sideTransform(viewport, LAYOUT, TALL), at))).toBe(true);
    }
  });

  it("a narrow board has no cross-section, and its side view takes the whole width", () => {
    const narrow = layoutOf(390, 600);
    expect(narrow.section).toBeUndefined();
    expect(narrow.side.widthPx).toBe(390);
  });
});
