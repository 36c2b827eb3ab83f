import { expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { THIN_SPACE } from "../../../core/foundation/index.ts";
import { applyCommand, foamOf, type Project } from "../../../core/project/index.ts";
import { compareMeasures, measureTray } from "../../../core/totals/index.ts";
import { oneSection, rectangle } from "../project/small-projects.ts";

const measured = (project: Project) => measureTray(designTray(project));
const said = (before: Project, after: Project) =>
  compareMeasures(measured(before), measured(after)).map(({ what, from, to, by }) =>
    [what, from, to, by].join(" | ").replaceAll(THIN_SPACE, " "),
  );
const floor = (toX: number): Project => oneSection(rectangle(0, toX, 100, 300));

it("a flat sheet of 800 by 200 mm measures that, and weighs area times thickness times density", () => {
  const project = floor(800);
  const density = foamOf(project, project.core.foamId)?.densityKgPerM3 ?? 0;
  const [right] = measured(project).parts;
  expect(right).toMatchObject({ id: "S1R", lengthMm: 800, widthMm: 200 });
  expect(right?.massKg).toBeCloseTo(0.8 * 0.2 * (project.core.thicknessMm / 1000) * density, 9);
});

it("a floor made 100 mm longer is told part by part, and what stays is left out", () => {
  const rows = said(floor(800), floor(900));
  expect(rows).toContain("S1R One, right: developed length | 800.0 mm | 900.0 mm | +100.0 mm");
  expect(rows).toContain("S1L One, left: developed length | 800.0 mm | 900.0 mm | +100.0 mm");
  expect(rows).toContain("Foam, area | 0.320 m² | 0.360 m² | +0.040 m²");
  expect(rows.some((row) => row.includes("width"))).toBe(false);
  expect(said(floor(900), floor(800))).toContain(
    "S1R One, right: developed length | 900.0 mm | 800.0 mm | −100.0 mm",
  );
});

it("parts that are gone are named with their size", () => {
  const before = floor(800);
  const after = applyCommand(before, { kind: "delete-item", itemId: "one" });
  expect(said(before, after).find((row) => row.startsWith("S1R"))).toMatch(
    /^S1R One, right \| 800\.0 × 200\.0 mm, .* \| – \| gone$/,
  );
});

it("two trays that are the same differ in nothing", () => {
  expect(said(floor(800), floor(800))).toEqual([]);
});
