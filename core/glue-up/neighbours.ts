import { at, type PlanPoint } from "../foundation/index.ts";
import type { Bond } from "./glue-bonds.ts";
import type { GlueUnit } from "./glue-units.ts";

/** One set of units that comes at once, and how it is held. */
export interface Placement {
  readonly units: readonly GlueUnit[];
  readonly role: "first" | "next" | "closer";
}

/** Bonds from a unit to any of the others. */
export const standingBonds = (
  unit: GlueUnit,
  others: readonly GlueUnit[],
  bonds: readonly Bond[],
): readonly Bond[] =>
  bonds.filter(({ sides }) =>
    [0, 1].some(
      (own) =>
        at(sides, own).includes(unit) &&
        at(sides, 1 - own).some((other) => other !== unit && others.includes(other)),
    ),
  );

/** Whether what stands lies on opposite sides of a unit, so that it has to be let in between. */
export function isCloser(unit: GlueUnit, standing: readonly GlueUnit[], bonds: readonly Bond[]): boolean {
  const own = standingBonds(unit, standing, bonds);
  if (unit.part.kind === "transition") return isBetween(unit, own);
  const toward = own.flatMap(({ middle }) => (middle === undefined ? [] : [direction(unit.middle, middle)]));
  return toward.some((a) => toward.some((b) => a.x * b.x + a.y * b.y < -0.5));
}

/** Whether bonds hold a transition along both its long sides: its first and second edge, or where it was divided. */
function isBetween(unit: GlueUnit, own: readonly Bond[]): boolean {
  const sides = own.flatMap(({ id, edgeIds, sides: [first] }) => {
    const edgeId = edgeIds?.[first.includes(unit) ? 0 : 1] ?? id;
    return edgeId === "start" || edgeId === "end" ? [] : [edgeId];
  });
  return new Set(sides).size > 1;
}

/** Whether a transition lies between sheets and one of these is still to come and rests on ribs of its own. */
export function waitsFor(unit: GlueUnit, waiting: readonly GlueUnit[], bonds: readonly Bond[]): boolean {
  if (unit.part.kind !== "transition") return false;
  const own = bonds.filter(({ sides }) => sides.some((side) => side.includes(unit)));
  if (!isBetween(unit, own)) return false;
  return own.some(({ sides }) =>
    sides
      .flat()
      .some(
        (other) => other.part.kind !== "transition" && waiting.includes(other) && other.ribIds.length > 0,
      ),
  );
}

function direction(from: PlanPoint, to: PlanPoint): PlanPoint {
  const lengthMm = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  return { x: (to.x - from.x) / lengthMm, y: (to.y - from.y) / lengthMm };
}
