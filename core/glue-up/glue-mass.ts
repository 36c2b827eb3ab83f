import type { Strip } from "../cutting/index.ts";
import type { Part } from "../patterns/index.ts";
import { glueOf, type Project } from "../project/index.ts";

/**
 * Glue that stays in a joint, kg: its length times the thinnest foam that meets there times the glue's spread.
 * A seat's face is the fence's thickness, which is the thinner one or as thick; a scarf's is as long as its taper.
 */
export function glueMassKg(lengthMm: number, parts: readonly Part[], project: Project, scarfMm = 0): number {
  const thicknessMm = Math.hypot(Math.min(...parts.map((part) => part.thicknessMm)), scarfMm);
  const spread = glueOf(project)?.spreadKgPerM2 ?? 0;
  const massKg = (lengthMm / 1000) * (thicknessMm / 1000) * spread;
  return Number.isFinite(massKg) && massKg > 0 ? massKg : 0;
}

/** Glue that fills the relief slots of strips once they are bent, kg. */
export const slotFillingKg = (
  strips: readonly Pick<Strip, "slots">[],
  { bending }: Pick<Project, "bending">,
): number =>
  strips
    .flatMap(({ slots }) => slots ?? [])
    .reduce((sum, { fillMm3 }) => sum + fillMm3 * 1e-9 * bending.fillingKgPerM3, 0);
