import { describe, expect, it } from "vitest";
import { planGlueUp } from "../../../core/glue-up/index.ts";
import { holdBends } from "../../../core/jig/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { box, boxBeside, section } from "../jig/jig-trays.ts";
import { arcProfile } from "../trays.ts";
import { level, planOf, withJig } from "./glue-trays.ts";

const RADIUS_MM = 1500;
const arc = { id: "arc", name: "Arc", nodes: arcProfile([0, 150], RADIUS_MM, 0.4, 1) };
const along = RADIUS_MM * (2 * Math.tan(0.2));
const bent = section("bent", 1, box(40, along - 40, 0, 400), "arc");

/** The plan of a sheet of 20 mm foam bent to 1500 mm over ribs at some stations, held as the document says. */
function plan(atMm: readonly number[], bending: Partial<Project["bending"]> = {}, items = [bent]) {
  const base = planOf({ profiles: [arc, level], items });
  const { project, sources } = planOf({
    profiles: [arc, level],
    items,
    symmetry: "none",
    core: { ...base.project.core, thicknessMm: 20 },
    bending: { ...base.project.bending, ...bending },
    ...withJig({ across: { kind: "typed", atMm } }),
  });
  const holds = holdBends(sources.parts, sources.seams, project);
  const steps = planGlueUp({ ...sources, holds }, project);
  return { project, ...steps };
}

/** M = E t³ / (12 R) over the width, R at mid-thickness: inside the arc of the air face by skin and half the foam. */
function momentNmm({ materials, core, skins }: Project): number {
  const foam = materials.foams.find(({ id }) => id === core.foamId);
  const radiusMm = RADIUS_MM - skins.lowerMm - core.thicknessMm / 2;
  return ((foam?.modulusMPa ?? 0) * core.thicknessMm ** 3 * 400) / (12 * radiusMm);
}

const heldIn = ({ problems }: ReturnType<typeof plan>) =>
  problems.flatMap((problem) => (problem.kind === "bend-not-held" ? [problem] : []));

describe("a bent sheet that comes to the jig", () => {
  it("on three ribs is held down by what its moment asks over the lever to the next rib", () => {
    const three = plan([80, 300, 520]);
    const forceN = momentNmm(three.project) / 300;
    expect(heldIn(three)).toEqual([]);
    expect(three.steps.flatMap(({ how }) => how).join(" ")).toContain(
      `pushes back with ${(momentNmm(three.project) / 1000).toFixed(1)} N m`,
    );
    expect(three.steps.flatMap(({ how }) => how).join(" ")).toContain(`with ${Math.ceil(forceN)} N`);
  });

  it("is not held by bags that are too light for it, as many as find room: it says by how much", () => {
    const light = plan([80, 300, 520], { sandbagKg: 0.1 });
    // Two bags find room on 400 mm, each of 0.1 kg.
    expect(heldIn(light)).toEqual([
      expect.objectContaining({
        by: "ribs",
        momentNmm: expect.closeTo(momentNmm(light.project), 1),
        forceN: expect.closeTo(momentNmm(light.project) / 300, 3),
        heldN: expect.closeTo(2 * 0.1 * 9.80665, 6),
      }),
    ]);
    expect(light.steps.flatMap(({ how }) => how).join(" ")).toContain("batten");
  });

  it("stays straight on two ribs until weights bend it, over half the bend as the lever; straps find no rib there", () => {
    const two = plan([80, 520]);
    const [step] = two.steps.filter(({ how }) => how.some((words) => words.includes("on two ribs")));
    expect(step).toBeDefined();
    expect(heldIn(two)).toEqual([]);
    const strapped = heldIn(plan([80, 520], { holdBy: "straps" }));
    expect(strapped).toEqual([expect.objectContaining({ by: "joints", heldN: 0 })]);
    // The bend runs over the whole sheet: its neutral arc between the two trimmed ends.
    const radiusMm = RADIUS_MM - two.project.skins.lowerMm - two.project.core.thicknessMm / 2;
    const arcMm = radiusMm * (Math.asin((along - 40) / RADIUS_MM) - Math.asin(40 / RADIUS_MM));
    expect(strapped[0]?.forceN).toBeCloseTo(momentNmm(two.project) / (arcMm / 2), 0);
  });

  it("waits until the joints beside it bear load, where it lies on two ribs", () => {
    const flat = section(
      "flat",
      2,
      boxBeside({ itemId: "bent", edge: ["n3", "n4"] }, "y", [40, along - 40, 400, 700]),
      "arc",
    );
    const last = section(
      "last",
      3,
      boxBeside({ itemId: "flat", edge: ["n3", "n4"] }, "y", [40, along - 40, 700, 900]),
      "arc",
    );
    const waits = (atMm: readonly number[]) =>
      plan(atMm, {}, [bent, flat, last]).steps.flatMap(({ kind, after }) =>
        kind === "lay" ? after.map(({ waitHours }) => waitHours) : [],
      );
    const { steps } = plan([80, 520], {}, [bent, flat, last]);
    const { clampHours = 0, waitHours = 0 } = steps.find(({ joins }) => joins.length > 0) ?? {};
    expect(Math.max(...waits([80, 520]))).toBe(waitHours);
    expect(Math.max(...waits([80, 300, 520]))).toBe(clampHours);
    expect(clampHours).toBeLessThan(waitHours);
  });

  it("asks nothing of what holds it where it is flat", () => {
    const flat = section("flat", 1, box(0, 600, 0, 400), "level");
    expect(heldIn(plan([80, 520], { sandbagKg: 0.1 }, [flat]))).toEqual([]);
  });
});
