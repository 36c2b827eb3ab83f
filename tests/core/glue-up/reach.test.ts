import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { closedJoints } from "../../../core/glue-up/closed-joints.ts";
import { glueBonds } from "../../../core/glue-up/glue-bonds.ts";
import { glueUnits } from "../../../core/glue-up/glue-units.ts";
import { orderSheets } from "../../../core/glue-up/order-sheets.ts";
import { groundOf } from "../../../core/glue-up/plan-order.ts";
import { type Fence, gluingOf } from "../../../core/project/index.ts";
import { box, boxBeside, section, straightProfile } from "../jig/jig-trays.ts";
import { level, planOf, tray, withJig } from "./glue-trays.ts";

const floor = section("floor", 1, box(0, 1200, 0, 600), "level");
const upsideDown = withJig({ attitude: "inverted", across: { kind: "spacing", spacingMm: 300 } });

const fenceAt = (number: number, y: number, changes: Partial<Fence> = {}): Fence => ({
  kind: "fence",
  id: `f${number}`,
  number,
  name: `Fence ${number}`,
  line: {
    closed: false,
    elements: [
      { kind: "node", id: "a", x: 100, y, next: "line" },
      { kind: "node", id: "b", x: 1100, y, next: "line" },
    ],
  },
  lowerEdge: { kind: "depths", nodes: [{ id: "d", alongMm: 0, depthMm: 90 }] },
  seat: "core",
  standsFirst: false,
  ...changes,
});

const fencesOf = (fences: readonly Fence[]) => {
  const plan = tray([floor, ...fences], { ...upsideDown, symmetry: "none" });
  const steps = plan.all.filter(({ kind }) => kind === "fence" || kind === "fence on skin");
  return {
    steps,
    order: steps.flatMap(({ adds }) => adds),
    problems: plan.problems.filter(({ kind }) => kind === "joint-out-of-reach"),
    thicknessMm: plan.project.core.thicknessMm,
  };
};

describe("the order of fences", () => {
  it("glues the one in the middle while a hand with its brush still goes beside it, and says why", () => {
    const { order, steps, problems } = fencesOf([fenceAt(1, 200), fenceAt(2, 320), fenceAt(3, 260)]);
    expect(order).toHaveLength(3);
    expect(order.at(-1)).not.toBe("F3");
    expect(problems).toEqual([]);
    const step = steps.find(({ adds }) => adds.includes("F3"));
    expect(step?.why).toContain("It comes before");
  });

  it("stays as it is drawn where there is room", () => {
    expect(fencesOf([fenceAt(1, 120), fenceAt(2, 500), fenceAt(3, 310)]).order).toEqual(["F1", "F2", "F3"]);
    const low = { lowerEdge: { kind: "depths", nodes: [{ id: "d", alongMm: 0, depthMm: 30 }] } } as const;
    expect(fencesOf([fenceAt(1, 200, low), fenceAt(2, 320, low), fenceAt(3, 260, low)]).order).toEqual([
      "F1",
      "F2",
      "F3",
    ]);
  });

  it("says what no order leaves a way to: one on the skin, between two that were glued to the foam", () => {
    const { problems, steps } = fencesOf([
      fenceAt(1, 200),
      fenceAt(2, 320),
      fenceAt(3, 260, { seat: "skin" }),
    ]);
    expect(problems).toEqual([
      expect.objectContaining({
        name: "F3",
        by: "beside it",
        closerIds: ["F1", "F2"],
        lengthMm: expect.closeTo(700, -2),
      }),
    ]);
    expect(steps.at(-1)?.how.join(" ")).toContain("tie the brush to a stick");
  });

  it("leaves no fence shut in that another order would have left open, over all orders", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 2, max: 11 }), { minLength: 2, maxLength: 5 }),
        (places) => {
          const ys = places.map((place) => place * 50);
          const { order, thicknessMm } = fencesOf(ys.map((y, i) => fenceAt(i + 1, y)));
          // Parallel fences of one length: shut in where one stands on each side with less than 80 mm between.
          const shut = (sequence: readonly number[]) =>
            sequence.filter((y, i) => {
              const gaps = sequence.slice(0, i).map((other) => other - y);
              const isNear = (gap: number) => Math.abs(gap) - thicknessMm < 80;
              return gaps.some((gap) => gap > 0 && isNear(gap)) && gaps.some((gap) => gap < 0 && isNear(gap));
            }).length;
          const own = order.map((id) => ys[Number(id.slice(1)) - 1] ?? 0);
          expect(own.toSorted()).toEqual(ys.toSorted());
          expect(shut(own)).toBe(Math.min(...permutations(ys).map(shut)));
        },
      ),
      { seed: 3, numRuns: 12 },
    );
  });
});

function permutations(values: readonly number[]): readonly (readonly number[])[] {
  if (values.length === 0) return [[]];
  return values.flatMap((value) =>
    permutations(values.filter((other) => other !== value)).map((rest) => [value, ...rest]),
  );
}

describe("a sheet that lies over joints of others", () => {
  const high = straightProfile("high", [
    [-100, 220],
    [4000, 220],
  ]);
  const row = [
    section("a", 1, box(0, 900, 0, 200), "level"),
    section("b", 2, boxBeside({ itemId: "a", edge: ["n3", "n4"] }, "y", [0, 900, 200, 400]), "level"),
    section("c", 3, boxBeside({ itemId: "b", edge: ["n3", "n4"] }, "y", [0, 900, 400, 600]), "level"),
  ];
  const roof = section("roof", 4, box(-50, 1300, -200, 800), "high");
  const found = (roofed = roof) => {
    const { project, sources } = planOf({
      profiles: [level, high],
      items: [...row, roofed],
      symmetry: "none",
      ...withJig({ across: { kind: "spacing", spacingMm: 150 } }),
    });
    const gluing = gluingOf(project);
    const units = glueUnits({ ...sources, mostCarriedMm: gluing.mostCarriedMm });
    const plain = glueBonds(units, sources.joints, sources.seams);
    const seen = closedJoints(plain, units, { sheets: sources.sheets, attitude: "upright", reachMm: 800 });
    const orderBy = (bonds: typeof seen) =>
      orderSheets(groundOf(units, bonds, project, gluing)).placements.flatMap((one) =>
        one.units.map(({ id }) => id),
      );
    return { seen, naive: orderBy(plain), order: orderBy(seen) };
  };

  it("comes when they are glued, though laying it while one sets would be quicker", () => {
    const { naive, order, seen } = found();
    expect(seen.map(({ closedBy = [] }) => closedBy.map(({ id }) => id))).toEqual([["S4"], ["S4"]]);
    expect(naive.indexOf("S4")).toBeLessThan(3);
    expect(order.indexOf("S4")).toBe(3);
  });

  it("leaves them open where a brush reaches in under its edge", () => {
    const { seen } = found(section("roof", 4, box(300, 560, -50, 650), "high"));
    expect(seen.every(({ closedBy }) => closedBy === undefined)).toBe(true);
  });
});
