import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Bundle } from "../../../core/glue-up/bundles.ts";
import type { GlueUnit } from "../../../core/glue-up/glue-units.ts";
import { improveOrder } from "../../../core/glue-up/improve-order.ts";
import type { GlueStep } from "../../../core/glue-up/index.ts";
import { isCheaper, prepared } from "../../../core/glue-up/order-ground.ts";
import { orderSheets, quickOrder } from "../../../core/glue-up/order-sheets.ts";
import { laid, startOf } from "../../../core/glue-up/order-state.ts";
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

  it("lays nothing after a closer that could come before it, though that would end sooner", () => {
    // A row of three whose middle one is wished last, and apart from it a row with joints that have to set.
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
    const wished = {
      ...ground,
      mayCome: (bundle: Bundle, standing: readonly GlueUnit[]) =>
        bundle.units[0]?.id !== "S2" || ["S1", "S3"].every((id) => standing.some((unit) => unit.id === id)),
    };
    const found = orderSheets(wished);
    expect(found.placements.at(-1)).toMatchObject({ role: "closer", units: [{ id: "S2" }] });
    expect(found.cost.slice(0, 4)).toEqual([0, 1, 0, 0]);
    const rounded = (cost: readonly number[]) => cost.map((value) => Math.round(value * 1000) / 1000);
    expect(rounded(found.cost)).toEqual(rounded(leastCost(wished)));
    // Sooner it would end with the closer let in while a joint of the other row sets.
    const unitOf = (id: string) => {
      const unit = ground.bundles.flatMap(({ units }) => units).find((one) => one.id === id);
      if (unit === undefined) throw new Error(id);
      return [unit];
    };
    const early = costOf(["S1", "S3", "S4", "S5", "S2", "S6"].map(unitOf), wished);
    expect(early[3]).toBe(1);
    expect(early[4]).toBeLessThan(found.cost[4]);
  });

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

describe("an order that is made cheaper by moving pieces", () => {
  const any = fc.record({
    columns: fc.integer({ min: 2, max: 4 }),
    count: fc.integer({ min: 4, max: 7 }),
    ribs: fc.uniqueArray(fc.integer({ min: 1, max: 15 }), { minLength: 2, maxLength: 6 }),
  });
  const inMinutes = (cost: readonly number[]) => cost.map((value) => Math.round(value * 1000) / 1000);

  it("is what its figures say, and on most small trays the best of all", () => {
    let [trays, best] = [0, 0];
    fc.assert(
      fc.property(any, ({ columns, count, ribs }) => {
        const atMm = ribs.map((at) => at * 100 + 50);
        const { ground } = groundOfGrid(columns, count, withJig({ across: { kind: "typed", atMm } }));
        const ready = prepared(ground);
        const found = quickOrder(ready, 12_000);
        const units = found.placements.map((one) => one.units);
        expect(
          units
            .flat()
            .map(({ id }) => id)
            .toSorted(),
        ).toEqual(ready.bundles.flatMap((bundle) => bundle.units.map(({ id }) => id)).toSorted());
        expect(inMinutes(costOf(units, ground))).toEqual(inMinutes(found.cost));
        const least = inMinutes(leastCost(ground));
        trays += 1;
        if (inMinutes(found.cost).join() === least.join()) best += 1;
      }),
      { seed: 7, numRuns: 25 },
    );
    expect(best / trays).toBeGreaterThanOrEqual(0.7);
  }, 120_000);

  it("does not go against the builder's wishes", () => {
    const { ground } = groundOfGrid(3, 9);
    const [first] = ground.bundles;
    const wished = {
      ...ground,
      mayCome: (one: Bundle, standing: readonly GlueUnit[]) => one !== first || standing.length === 8,
    };
    const order = orderSheets(wished).placements.flatMap(({ units }) => units);
    expect(order.at(-1)).toBe(first?.units[0]);
  });

  it("ends a tray of twelve sooner than always taking the next best", () => {
    const { ground } = groundOfGrid(4, 12);
    const ready = prepared(ground);
    const drawn = ready.bundles.reduce((state, bundle) => laid([bundle], state, ready).after, startOf(ready));
    const moved = improveOrder(drawn, ready, 4_000);
    expect(isCheaper(drawn.cost, moved.cost)).toBe(false);
    const found = orderSheets(ground);
    expect(found.cost.slice(0, 4)).toEqual([0, 0, 0, 0]);
    // The longest chain of joints that have to set one after the other is no more than half of what the drawn order waits for.
    expect(found.cost[4]).toBeLessThan(0.6 * drawn.cost[4]);
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
