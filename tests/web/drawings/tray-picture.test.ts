import { describe, expect, it } from "vitest";
import { STARTERS, starterOf, usualNumbers } from "../../../core/starters/index.ts";
import { layOutPair, layOutPlan, sizeOverAll } from "../../../web/drawings/picture-layout.ts";
import { type TrayPicture, trayPicture } from "../../../web/drawings/tray-picture.ts";

const START = { id: "tray", issuedOn: "2026-11-25" };
const ROOM = { widthPx: 700, heightPx: 400, marginPx: 10 };

describe("the picture of a tray", () => {
  it("is as long and as wide as the numbers it was made from, both halves", () => {
    expect(sizeOverAll(pictureOf("rear-ramp"))).toEqual({ lengthMm: 1950, widthMm: 1200 });
    expect(sizeOverAll(pictureOf("practice-piece"))).toEqual({ lengthMm: 590, widthMm: 290 });
  });

  it("has no edge along the centre line, where a half meets its image", () => {
    const edges = pictureOf("two-tunnels").plan.filter(({ kind }) => kind === "edge");
    const isAlongCentre = ([a, b]: readonly (readonly [number, number])[]) => a?.[1] === 0 && b?.[1] === 0;
    const steps = edges.flatMap(({ points }) =>
      points.slice(1).map((point, i) => [points[i] ?? point, point]),
    );
    expect(steps.length).toBeGreaterThan(20);
    expect(steps.filter(isAlongCentre)).toEqual([]);
  });

  it("shows a centre line where there are two halves, and none beside one piece", () => {
    expect(layOutPlan(pictureOf("two-tunnels"), ROOM)?.datum).not.toBe("");
    expect(layOutPlan(pictureOf("practice-piece"), ROOM)?.datum).toBe("");
    expect(layOutPair(pictureOf("practice-piece"), ROOM)?.side.datum).not.toBe("");
  });

  it("is small enough to be kept beside every work", () => {
    for (const starter of STARTERS)
      expect(JSON.stringify(pictureOf(starter.name)).length).toBeLessThan(20_000);
  });

  it("goes into its room with its side view, x under x and at one scale", () => {
    const layout = layOutPair(pictureOf("rear-ramp"), ROOM);
    const [plan, side] = [layout?.plan, layout?.side];
    expect(plan?.widthPx).toBeCloseTo(ROOM.widthPx, 6);
    expect(side?.widthPx).toBeCloseTo(ROOM.widthPx, 6);
    expect((plan?.heightPx ?? 0) + (side?.heightPx ?? 0)).toBeLessThanOrEqual(ROOM.heightPx + 1e-6);
    const spans = [plan, side].map((view) => spanOf(view?.lines.map(({ path }) => path).join("") ?? ""));
    expect(spans[0]).toEqual(spans[1]);
  });

  it("of nothing drawn is blank", () => {
    const blank: TrayPicture = { plan: [], side: [] };
    expect(layOutPlan(blank, ROOM)).toBeUndefined();
    expect(layOutPair(blank, ROOM)).toBeUndefined();
    expect(sizeOverAll(blank)).toBeUndefined();
  });
});

function pictureOf(name: Parameters<typeof starterOf>[0]): TrayPicture {
  const starter = starterOf(name);
  const made = starter?.make(usualNumbers(starter), START);
  if (!made?.ok) throw new Error(`${name} is not made`);
  return trayPicture(made.value);
}

/** The least and the largest x of a path of straight steps, px. */
function spanOf(path: string): readonly [number, number] {
  const xs = [...path.matchAll(/[ML](-?[\d.]+) /g)].map(([, x]) => Number(x));
  return [Math.min(...xs), Math.max(...xs)];
}
