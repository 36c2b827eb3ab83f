import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { GlueStep } from "../../../core/glue-up/index.ts";
import { orderSheets } from "../../../core/glue-up/order-sheets.ts";
import type { OrderWish } from "../../../core/project/index.ts";
import { box, boxBeside, section } from "../jig/jig-trays.ts";
import { costOf, leastCost } from "./every-order.ts";
import { addsOf, centre, outer, plainGlue, tray, withJig } from "./glue-trays.ts";
import { groundFor, groundOfGrid } from "./grids.ts";

describe("the order of sheets", () => {
  it("costs no more than the best of all orders, on every small tray", () => {
    const any = fc.record({
      columns: fc.integer({ min: 2, max: 4 }),
      count: fc.integer({ min: 3, max: 7 }),
      ribs: fc.uniqueArray(fc.integer({ min: 1, max: 15 }), { maxLength: 6 }),
      clampHours: fc.integer({ min: 1, max: 10 }),
    });
    fc.assert(
      fc.property(any, ({ columns, count, ribs, clampHours }) => {
        const atMm = ribs.map((at) => at * 100 + 50);
        const { ground } = groundOfGrid(columns, count, withJig({ across: { kind: "typed", atMm } }));
        const warm = { ...ground, times: { ...ground.times, clampHours } };
        const found = orderSheets(warm);
        const own = costOf(
          found.placements.map(({ units }) => units),
          warm,
        );
        const inMinutes = (cost: readonly number[]) => cost.map((value) => Math.round(value * 1000) / 1000);
        expect(inMinutes(own)).toEqual(inMinutes(found.cost));
        expect(inMinutes(found.cost)).toEqual(inMinutes(leastCost(warm)));
      }),
      { seed: 19, numRuns: 40 },
    );
  }, 120_000);

  it("uses the hours in which one joint sets for another piece", () => {
    // Two rows apart from each other: each has a chain of three.
    const row = (from: number, y: number) =>
      [0, 1, 2].map((i) => {
        const place = [i * 400, i * 400 + 400, y, y + 200] as const;
        const before = { itemId: `s${from + i - 1}`, edge: ["n2", "n3"] as const };
        const outline = i === 0 ? box(...place) : boxBeside(before, "x", place);
        return section(`s${from + i}`, from + i + 1, outline, "level");
      });
    const { ground } = groundFor(
      [...row(0, 0), ...row(3, 600)],
      withJig({ across: { kind: "spacing", spacingMm: 150 } }),
    );
    const { cost } = orderSheets(ground);
    const work =
      ground.bundles.reduce((sum, { layMinutes }) => sum + layMinutes, 0) +
      ground.bonds.reduce((sum, bond) => sum + ground.jointMinutes(bond), 0);
    // One wait for the pins instead of two.
    expect(cost[4]).toBeLessThan(ground.times.clampHours * 60 + work);
    expect(cost.slice(0, 4)).toEqual([0, 0, 0, 0]);
  });

  it("waits in every step for each joint next to those that it makes, and has each piece held", () => {
    for (const count of [4, 6, 9]) {
      const { steps } = groundOfGrid(3, count);
      expect(faultsOf(steps)).toEqual([]);
    }
  });
});

/** Joints made before what they stand on, or sooner than the pins of a joint beside them come out. */
function faultsOf(steps: readonly GlueStep[]): readonly string[] {
  const endsOf = (joinId: string) => joinId.replace(/#\d+$/, "").split("/");
  return steps.flatMap((step, i) =>
    step.joins.flatMap((joinId) => {
      const missing = endsOf(joinId).filter((id) => ![...step.standing, ...step.adds].includes(id));
      const touched = endsOf(joinId).filter((id) => !step.adds.includes(id));
      const soon = steps
        .slice(0, i)
        .filter(({ joins }) => joins.flatMap(endsOf).some((id) => touched.includes(id)))
        .filter(({ step: number, clampHours }) => {
          const wait = step.after.find((one) => one.step === number);
          return wait === undefined || wait.waitHours < clampHours;
        });
      return [
        ...missing.map((id) => `${joinId} is made without ${id}`),
        ...soon.map(({ step: number }) => `${joinId} does not wait for step ${number}`),
      ];
    }),
  );
}

describe("the builder's own order", () => {
  const wished = (order: readonly OrderWish[], items = [centre, outer]) =>
    tray(items, { glue: { ...plainGlue, order } });

  it("puts a sheet first, last, or not before another", () => {
    expect(addsOf(wished([{ kind: "first", unitId: "S2R" }]).steps)[0]).toBe("S2R");
    expect(addsOf(wished([{ kind: "last", unitId: "S1" }]).steps).at(-1)).toBe("S1");
    expect(addsOf(wished([{ kind: "after", unitId: "S2R", otherId: "S2L" }]).steps)).toEqual([
      "S1",
      "S2L",
      "S2R",
    ]);
  });

  it("keeps two sheets out of one step", () => {
    expect(addsOf(wished([{ kind: "apart", unitId: "S2R", otherId: "S2L" }]).steps)).toEqual([
      "S1",
      "S2R",
      "S2L",
    ]);
  });

  it("says what has to be let in between others then", () => {
    const { problems, steps } = wished([{ kind: "last", unitId: "S1" }]);
    expect(addsOf(steps).at(-1)).toBe("S1");
    expect(problems).toEqual([expect.objectContaining({ kind: "order-wish-costs", closerIds: ["S1"] })]);
  });

  it("names a wish for nothing, and one against those before it, and leaves both out", () => {
    const order: readonly OrderWish[] = [
      { kind: "first", unitId: "S9" },
      { kind: "after", unitId: "S2R", otherId: "S1" },
      { kind: "after", unitId: "S1", otherId: "S2R" },
      { kind: "after", unitId: "S1", otherId: "S1" },
    ];
    const { problems, steps } = wished(order);
    expect(problems.map(({ kind, name }) => [kind, name])).toEqual([
      ["order-names-nothing", "S9"],
      ["order-contradicts", "S1"],
      ["order-contradicts", "S1"],
    ]);
    expect(addsOf(steps)).toEqual(["S1", "S2R+S2L"]);
  });
});
