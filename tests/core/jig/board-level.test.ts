import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { wordProblem } from "../../../core/foundation/index.ts";
import type { Item, Project, TypedMaking } from "../../../core/project/index.ts";
import { plainProject } from "../cutting/plain-project.ts";
import { fence, planNode } from "../trays.ts";
import { box, section, straightProfile } from "./jig-trays.ts";

/** A floor whose foam lies from z 100.8 to 110.8, and 200 mm higher at its rear end. */
const ramp = straightProfile("ramp", [
  [0, 100],
  [1000, 300],
]);
const { jig: plainJig } = plainProject();

function jigOn(making: TypedMaking, jig: Partial<Project["jig"]> = {}, items: readonly Item[] = []) {
  const design = designTray(
    plainProject({
      profiles: [ramp],
      items: [section("floor", 1, box(0, 1000, 0, 300), "ramp"), ...items],
      jig: { ...plainJig, across: { kind: "typed", atMm: [200, 500] }, ...jig, making },
    }),
  );
  const told = design.problems.flatMap((problem) => (problem.kind === "baseboard-in-tray" ? [problem] : []));
  const { ribs, baseboard, cradle } = design.jig;
  return { ribs, level: baseboard.levelZMm, cradle, told, problems: design.problems };
}

/** Closed form: the lower core face of a slope of 0.2 over x, a skin of 0.8 behind the drawn face. */
const lowerFaceMm = (x: number) => 100 + 0.2 * x + 0.8 * Math.sqrt(1.04);

describe("a typed height of the baseboard", () => {
  it("is where heights of ribs count from, upright", () => {
    const { ribs, level, told } = jigOn({ baseZMm: -25 });
    expect(level).toBe(-25);
    expect(told).toEqual([]);
    for (const { atMm, heights } of ribs)
      for (const { stationFaceMm } of heights) expect(stationFaceMm).toBeCloseTo(lowerFaceMm(atMm) + 25, 6);
  });

  it("is the level that the tray hangs under, upside down", () => {
    const { ribs, level, told } = jigOn({ baseZMm: 400 }, { attitude: "inverted" });
    expect([level, told]).toEqual([400, []]);
    for (const { atMm, heights } of ribs)
      for (const { stationFaceMm } of heights)
        expect(stationFaceMm).toBeCloseTo(400 - (lowerFaceMm(atMm) + 10 * Math.sqrt(1.04)), 6);
  });

  it("leaves the cradle on a board of its own", () => {
    const making = { cradle: { paddingMm: 4 } };
    const [typed, free] = [jigOn({ ...making, baseZMm: -25 }), jigOn(making)];
    expect(typed.cradle?.baseboard.levelZMm).toBe(free.cradle?.baseboard.levelZMm);
  });

  it.each([
    { attitude: "upright", baseZMm: 500, by: "or less" },
    { attitude: "upright", baseZMm: 125, by: "or less" },
    { attitude: "inverted", baseZMm: 0, by: "or more" },
    { attitude: "inverted", baseZMm: 220, by: "or more" },
  ] as const)("in the tray at $baseZMm, $attitude, is named, and the lowest rib sets it", (given) => {
    const { attitude, baseZMm, by } = given;
    const { level, ribs, told } = jigOn({ baseZMm }, { attitude });
    expect(told).toHaveLength(1);
    expect(level).toBe(jigOn({}, { attitude }).level);
    expect(ribs).toHaveLength(2);
    const [problem] = told;
    if (!problem) return;
    expect(problem.place).toEqual({ setting: "jig.making.baseZMm" });
    expect(wordProblem(problem)).toContain(by);
    // What the words ask for is good, and a little past it is not.
    const sign = attitude === "upright" ? 1 : -1;
    expect(jigOn({ baseZMm: problem.limitMm }, { attitude }).told).toEqual([]);
    expect(jigOn({ baseZMm: problem.limitMm + sign }, { attitude }).told).toHaveLength(1);
    const least = jigOn({ baseZMm: problem.limitMm }, { attitude }).ribs.flatMap(({ heights }) =>
      heights.map(({ stationFaceMm }) => stationFaceMm),
    );
    expect(Math.min(...least)).toBeCloseTo(20, 6);
  });

  it("that leaves fences no room is named too", () => {
    const standing = fence(1, [planNode("a", 100, 100), planNode("b", 900, 100)], { standsFirst: true });
    const { told } = jigOn({ baseZMm: 78 }, {}, [standing]);
    expect(told).toHaveLength(1);
    // The fence hangs 40 mm under the slope at x 100, its skin in that, and 10 mm of room are kept.
    const limitMm = told[0]?.limitMm ?? 0;
    expect(limitMm).toBeLessThan(100 + 0.2 * 100 - 40 - 9);
    expect(limitMm).toBeGreaterThan(100 + 0.2 * 100 - 40 - 13);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, 1e9])("of %d is no height, and is named", (baseZMm) => {
    const { problems, level } = jigOn({ baseZMm });
    const named = problems.filter(({ kind }) => kind === "number-out-of-range");
    expect(named.map(({ place }) => place.setting)).toEqual(["jig.making.baseZMm"]);
    expect(level).toBe(jigOn({}).level);
  });
});
