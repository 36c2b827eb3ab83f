import { formatNumber } from "../foundation/index.ts";
import type { Bond } from "./glue-bonds.ts";
import type { GlueUnit } from "./glue-units.ts";
import type { Placement } from "./neighbours.ts";
import { standingBonds } from "./neighbours.ts";

/** `A`, `A and B`, `A, B and C`. */
export function list(names: readonly string[]): string {
  const last = names[names.length - 1];
  if (last === undefined) return "";
  return names.length === 1 ? last : `${names.slice(0, -1).join(", ")} and ${last}`;
}

const wholeMm = (lengthMm: number): string => formatNumber(lengthMm, 0);

const ribs = (count: number): string => (count === 1 ? "1 rib" : `${count} ribs`);

/** Why a part is glued from its strips on the bench. */
export const whyOnBench = (unit: GlueUnit): string =>
  `Flat on the bench the seams lie true, and at ${wholeMm(unit.lengthMm)} by ${wholeMm(unit.widthMm)} mm the glued sheet can still be carried.`;

/** Why sheets come to the jig now. `standing` is what is there already. */
export function whySheet(
  { units, role }: Placement,
  standing: readonly GlueUnit[],
  bonds: readonly Bond[],
): string {
  const rest = restOn(units);
  const neighbours = [
    ...new Set(
      units.flatMap((unit) =>
        standingBonds(unit, standing, bonds).flatMap(({ sides }) =>
          sides.flat().filter((other) => !units.includes(other) && standing.includes(other)),
        ),
      ),
    ),
  ].map(({ id }) => id);
  const isOneSheet = units.every(({ part }) => part === units[0]?.part);
  const each = isOneSheet ? "It" : "Each";
  if (role === "closer")
    return `${each} closes the gap between ${list(neighbours)}, which stand already, so it comes last and is marked from the measured gap.`;
  if (role === "next")
    return `${each} meets ${list(neighbours)}, which ${verbFor(neighbours, "stand")} already, and ${rest}.`;
  if (standing.length > 0) return `${each} touches nothing that stands yet and ${rest}.`;
  return `${each} lies nearest the centre line and ${rest}; the others build outward from there.`;
}

/** Strips of one sheet rest on all of their ribs together; of several sheets the fewest are told. */
function restOn(units: readonly GlueUnit[]): string {
  const isOneSheet = units.every(({ part }) => part === units[0]?.part);
  const least = isOneSheet
    ? new Set(units.flatMap(({ ribIds }) => ribIds)).size
    : Math.min(...units.map(({ ribIds }) => ribIds.length));
  return least === 0 ? "has no rib under it" : `rests on ${ribs(least)}`;
}

/** The verb that goes with a list: `stand` for several, `stands` for one. */
const verbFor = (names: readonly string[], plural: "stand" | "lie" | "are"): string =>
  names.length > 1 ? plural : plural === "are" ? "is" : `${plural}s`;

/** Why a fence comes when it does. */
export function whyFence(moment: FenceMoment, carries: readonly string[]): string {
  const sheets = carries.length > 0 ? list(carries) : "the sheet above";
  switch (moment) {
    case "stands first":
      return `The lower edge cannot be reached once ${sheets} ${verbFor(carries, "lie")} on top, so it stands in the jig first, braced upright.`;
    case "on top":
      return `The tray lies upside down and ${sheets} ${verbFor(carries, "are")} firm, so the seat is open to the hand from above.`;
    case "after turning":
      return `It hangs under ${sheets}, so it waits until the shell is firm enough to be lifted off and turned over.`;
    case "on skin":
      return "Its seat is the finished lower skin, so it waits until that skin has cured.";
  }
}

export type FenceMoment = "stands first" | "on top" | "after turning" | "on skin";
