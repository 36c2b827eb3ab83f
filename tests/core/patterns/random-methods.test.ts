import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { at } from "../../../core/foundation/index.ts";
import type { BendMethod, Project } from "../../../core/project/index.ts";
import { fibreOf } from "../../../core/surfaces/index.ts";
import { anySection, projectOf } from "../random-sections.ts";
import { layTray, relativeMiss } from "../trays.ts";

const PATTERN_RELATIVE = 1e-6;
const HARMLESS = ["bend-too-tight", "bend-choice-without-bend"];
const METHODS = ["bend cold", "closing slots", "opening slots", "planks"] as const;

/** The bends of a section, one after the other in the ways that the numbers say. */
function withMethods(project: Project, choices: readonly number[]): Project {
  const [part] = layTray(project).parts;
  const bends = (part?.zones ?? []).flatMap(({ bend }, i) => {
    const method: BendMethod = at(METHODS, (choices[i % choices.length] ?? 0) % METHODS.length);
    return bend ? [{ atMm: bend.atMm, method }] : [];
  });
  const items = project.items.map((item) => (item.kind === "section" ? { ...item, bends } : item));
  return { ...project, items };
}

describe("a random section with a method of its own for each bend", { timeout: 120_000 }, () => {
  it("has flat edges and a flat area as on the fibre that keeps its length, continuous and rising", () => {
    let slotted = 0;
    let planked = 0;
    fc.assert(
      fc.property(anySection, fc.array(fc.nat(3), { minLength: 3, maxLength: 6 }), (random, choices) => {
        const project = withMethods(projectOf(random), choices);
        const laid = layTray(project);
        fc.pre(laid.problems.every(({ kind }) => HARMLESS.includes(kind)));
        for (const part of laid.parts) {
          slotted += part.zones.filter(({ verdict }) => verdict === "relief slots").length;
          planked += part.zones.filter(({ verdict }) => verdict === "planks").length;
          for (const edge of part.edges)
            expect(relativeMiss(edge.spaceLengthMm, edge.flatLengthMm)).toBeLessThan(PATTERN_RELATIVE);
          expect(relativeMiss(part.flatAreaMm2, part.spaceAreaMm2)).toBeLessThan(PATTERN_RELATIVE);
          const sheet = laid.sheets.find(({ id }) => id === part.sheetId);
          if (!sheet) throw new Error("a sheet");
          const { flatAt, middleAt } = fibreOf(sheet, part.stretches);
          const middles = Array.from({ length: 200 }, (_, i) => i * 6 - 40);
          const flats = middles.map(flatAt);
          flats.slice(1).forEach((flat, i) => {
            expect(flat - at(flats, i)).toBeGreaterThan(0);
            expect(flat - at(flats, i)).toBeLessThan(12);
          });
          middles.forEach((middle, i) => {
            expect(middleAt(at(flats, i))).toBeCloseTo(middle, 6);
          });
        }
      }),
      { seed: 20261, numRuns: 16 },
    );
    expect(slotted).toBeGreaterThan(5);
    expect(planked).toBeGreaterThan(3);
  });
});
