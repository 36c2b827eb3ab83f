import type { Project } from "../project/index.ts";
import type { Need } from "./types.ts";

/** A ream, and the smaller packs of larger sheets (common practice); what is larger still is sold singly. */
const PACKS: Readonly<Record<string, number>> = { A4: 500, Letter: 500, A3: 100, Tabloid: 100 };
/** A plotter roll is sold by this length, m (common practice). */
const ROLL_M = 45;

/** Paper for the templates: pages of a size, or lengths off a roll, mm in all. */
export function paperNeed({ paper }: Pick<Project, "paper">, pages: number, rollMm: number): Need {
  return paper.size === "roll"
    ? {
        key: "paper roll",
        name: `Paper for the templates, roll of ${paper.rollWidthMm} mm`,
        unit: "m",
        needed: rollMm / 1000,
        packOf: ROLL_M,
      }
    : {
        key: `paper ${paper.size}`,
        name: `Paper for the templates, ${paper.size}`,
        unit: "pieces",
        needed: pages,
        packOf: PACKS[paper.size] ?? 1,
      };
}
