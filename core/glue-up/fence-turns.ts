import { at } from "../foundation/index.ts";
import type { Project } from "../project/index.ts";
import type { FenceSheet, Sheet } from "../surfaces/index.ts";
import type { Bond } from "./glue-bonds.ts";
import { type GlueUnit, isImageOf } from "./glue-units.ts";
import { type FenceMoment, list } from "./say-why.ts";

/** A fence and the moment at which it comes. */
export interface FenceTurn {
  readonly unit: GlueUnit;
  readonly moment: FenceMoment;
}

/** When each fence comes: by the jig's attitude, its seat, and whether the builder wants it first. */
export function fenceTurns(
  units: readonly GlueUnit[],
  sheets: readonly Sheet[],
  { jig }: Project,
): FenceTurn[] {
  const momentOf = (sheet: FenceSheet): FenceMoment => {
    if (sheet.seatOn === "skin") return "on skin";
    if (jig.attitude === "inverted") return "on top";
    return sheet.standsFirst ? "stands first" : "after turning";
  };
  return units.flatMap((unit): FenceTurn[] => {
    const sheet = sheets.find(({ id }) => id === unit.part.sheetId);
    return sheet?.kind === "fence" ? [{ unit, moment: momentOf(sheet) }] : [];
  });
}

/** Units with their images beside them, in the order given. */
export function pairs(units: readonly GlueUnit[]): GlueUnit[][] {
  const paired: GlueUnit[][] = [];
  for (const unit of units) {
    const partner = paired.find((pair) => pair.length === 1 && isImageOf(at(pair, 0), unit));
    if (partner === undefined) paired.push([unit]);
    else partner.push(unit);
  }
  return paired;
}

/** The sheets that fences are seated on. */
export function carriedBy(fences: readonly GlueUnit[], bonds: readonly Bond[]): string[] {
  const sheets = bonds
    .filter(({ sides }) => sides.flat().some((unit) => fences.includes(unit)))
    .flatMap(({ sides }) => sides.flat().filter((unit) => unit.part.kind !== "fence"));
  return [...new Set(sheets.map(({ part }) => part.id))];
}

/** What the step of some fences is called. */
export function fenceTitle(moment: FenceMoment, fences: readonly GlueUnit[]): string {
  const names = list(fences.map(({ id }) => id));
  return moment === "stands first" ? `Stand ${names} in the jig` : `Seat ${names}`;
}
