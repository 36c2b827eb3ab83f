import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at } from "../../../core/foundation/index.ts";
import type { GlueStep } from "../../../core/glue-up/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { box, boxBeside, section } from "../jig/jig-trays.ts";
import { stretchOf, transition } from "../trays.ts";
import { centre, fence, materials, outer, plainGlue, tray, withJig } from "./glue-trays.ts";

const MINUTES = 1e-9;

const shop = (laminate: NonNullable<Project["laminate"]>) => ({ laminate });
const withGlue = (changes: Partial<Project["materials"]["glues"][number]>) => ({
  materials: { ...materials, glues: materials.glues.map((glue) => ({ ...glue, ...changes })) },
});
const kindsOf = (steps: readonly GlueStep[]) => steps.map(({ kind }) => kind);

describe("the times of a step", () => {
  it("are those of one joint after the other: ready, lay, spread, shut and pin", () => {
    const step = at(tray([centre, outer]).steps, 1);
    // Two joints of 1.2 m with 28 pins each, and two sheets of 1.2 × 0.25 m × 10 mm of XPS at 32 kg/m³.
    const wet = 5 + 2.5 * 1.2 + 28 / 6;
    const ready = 10 + 4 * 1.2;
    const lay = 4 + 2 * at(step.lines, 0).lengthMm * 1e-3 * 0.25 * 0.01 * 32;
    expect(step.rounds.map(({ wetMinutes }) => wetMinutes)).toEqual([
      expect.closeTo(wet, 6),
      expect.closeTo(wet, 6),
    ]);
    expect(step.workMinutes).toBeCloseTo(2 * (wet + ready + lay), 1);
    expect(step).toMatchObject({ openMinutes: 20, clampHours: 6, waitHours: 24 });
  });

  it("with weights are shorter for there are fewer of them, and the step says so", () => {
    const step = at(tray([centre, outer], { glue: { ...plainGlue, heldBy: "weights" } }).steps, 1);
    expect(step).toMatchObject({ heldBy: "weights", pins: 2 * (12 + 1) });
  });

  it("double where the shop is ten degrees colder, and so does the open time", () => {
    const warm = at(tray([centre, outer], shop({ shopCelsius: 22 })).steps, 1);
    const cold = at(tray([centre, outer], shop({ shopCelsius: 12 })).steps, 1);
    expect(cold.openMinutes).toBeCloseTo(2 * warm.openMinutes, 9);
    expect(cold.clampHours).toBeCloseTo(2 * warm.clampHours, 9);
    expect(cold.waitHours).toBeCloseTo(2 * warm.waitHours, 9);
  });
});

describe("a step against its glue's open time", () => {
  it("is one go where all of it fits, and piece by piece where it does not", () => {
    // Each side takes 12.7 min: together 25.3.
    expect(at(tray([centre, outer], withGlue({ openMinutes: 26 })).steps, 1).rounds).toHaveLength(1);
    const { rounds, how } = at(tray([centre, outer], withGlue({ openMinutes: 25 })).steps, 1);
    expect(rounds.map(({ joins }) => joins)).toEqual([["S2R/S1"], ["S2L/S1"]]);
    expect(how.join(" ")).toContain("2 goes, each with fresh glue inside the 25 min");
  });

  it("glues a closer that takes too long along its longest joint first", () => {
    const apart = section("apart", 2, box(0, 1100, 330, 500), "level");
    const bridge = transition(1, stretchOf("centre", "n3", "n4"), stretchOf("apart", "n1", "n2"));
    const jig = withJig({ across: { kind: "typed", atMm: [100, 600, 1000] } });
    const { steps } = tray([bridge, apart, centre], { ...jig, ...withGlue({ openMinutes: 14 }) });
    const { rounds, lines } = at(steps, 2);
    expect(rounds).toHaveLength(4);
    const lengthOf = (id = "") => lines.find(({ joinId }) => joinId === id)?.lengthMm ?? 0;
    const lengths = rounds.map(({ joins: [first] }) => lengthOf(first));
    expect(at(lengths, 0)).toBeGreaterThan(at(lengths, 1));
    expect(at(lengths, 2)).toBeGreaterThan(at(lengths, 3));
  });

  it("names a joint that alone outlasts the glue, and plans it all the same", () => {
    const { steps, problems } = tray([centre, outer], withGlue({ openMinutes: 10 }));
    expect(problems).toEqual([
      expect.objectContaining({ kind: "glue-outlasted", name: "S2R/S1", count: 2, openMinutes: 10 }),
    ]);
    expect(at(steps, 1).rounds).toHaveLength(2);
  });

  it("with more hands no go takes longer, and there are no more of them", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 8, max: 60 }), (hands, openMinutes) => {
        const plan = (count: number) =>
          at(tray([centre, outer], { ...shop({ hands: count }), ...withGlue({ openMinutes }) }).steps, 1);
        const [few, many] = [plan(hands), plan(2 * hands)];
        expect(many.rounds.length).toBeLessThanOrEqual(few.rounds.length);
        expect(many.workMinutes).toBeLessThanOrEqual(few.workMinutes + MINUTES);
        expect(many.glueMassKg).toBe(few.glueMassKg);
      }),
      { seed: 4, numRuns: 20 },
    );
  });
});

describe("a shop too cold for the glue", () => {
  it("has no plan, and says what to do", () => {
    const { all, problems } = tray([centre, outer], shop({ shopCelsius: 9 }));
    expect(all).toEqual([]);
    expect(problems).toEqual([
      expect.objectContaining({ kind: "glue-too-cold", celsius: 9, leastCelsius: 10 }),
    ]);
  });

  it("goes by what is typed for the glue", () => {
    const cold = withGlue({ leastCelsius: 5 });
    expect(tray([centre, outer], { ...shop({ shopCelsius: 9 }), ...cold }).problems).toEqual([]);
  });

  it("is no matter where nothing is glued", () => {
    const { all, problems } = tray([centre], shop({ shopCelsius: 5 }));
    expect(problems).toEqual([]);
    expect(kindsOf(all)).toEqual(["lay"]);
  });
});

describe("what a step waits for", () => {
  it("a sheet glued on the bench bears load before it is carried and fitted dry", () => {
    const long = section("long", 1, box(0, 2000, 0, 250), "level");
    const other = section("other", 2, box(0, 2000, 300, 500), "level");
    const { all } = tray([long, other]);
    expect(kindsOf(all)).toEqual(["bench", "bench", "bench", "dry fit", "lay", "lay"]);
    expect(at(all, 3).after).toEqual([1, 2, 3].map((step) => ({ step, waitHours: 24 })));
    expect(at(all, 4).after).toContainEqual({ step: 1, waitHours: 24 });
  });

  it("a joint next to one that was glued before waits until the pins come out, and a fence on top until it bears load", () => {
    const beside = { itemId: "outer", edge: ["n3", "n4"] as const };
    const third = section("third", 3, boxBeside(beside, "y", [0, 1200, 500, 700]), "level");
    const { all } = tray([centre, outer, third, fence("core", false)], withJig({ attitude: "inverted" }));
    const step = (id: string) => all.find(({ adds }) => adds.includes(id));
    const [s2, s3, f1] = [step("S2R"), step("S3R"), step("F1R")];
    expect(s3?.joins).toContain("S3R/S2R");
    expect(s3?.after).toContainEqual({ step: s2?.step, waitHours: 6 });
    expect(f1?.after).toContainEqual({ step: s2?.step, waitHours: 24 });
  });

  it("from 18 to 25 °C every wait is shorter, and the glue the same", () => {
    const items = [centre, outer, fence("core", false)];
    const at18 = tray(items, { ...withJig({ attitude: "inverted" }), ...shop({ shopCelsius: 18 }) }).all;
    const at25 = tray(items, { ...withJig({ attitude: "inverted" }), ...shop({ shopCelsius: 25 }) }).all;
    expect(at25.map(({ adds }) => adds)).toEqual(at18.map(({ adds }) => adds));
    expect(at18.some(({ after }) => after.some(({ waitHours }) => waitHours > 0))).toBe(true);
    at18.forEach((step, i) => {
      const warm = at(at25, i);
      expect(warm.glueMassKg).toBe(step.glueMassKg);
      if (step.waitHours > 0) expect(warm.waitHours).toBeLessThan(step.waitHours);
      step.after.forEach(({ waitHours }, k) => {
        if (waitHours > 0) expect(at(warm.after, k).waitHours).toBeLessThan(waitHours);
      });
    });
  });
});
