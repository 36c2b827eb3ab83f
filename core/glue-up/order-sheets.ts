import { at, type PlanPoint } from "../foundation/index.ts";
import type { Bond } from "./glue-bonds.ts";
import { type GlueUnit, isImageOf } from "./glue-units.ts";

/** One set of units that comes at once, and how it is held. */
export interface Placement {
  readonly units: readonly GlueUnit[];
  readonly role: "first" | "next" | "closer";
}

/**
 * The order in which sheets come to the jig: the one nearest the centre line first (of several the one on most
 * ribs), then always a neighbour of what stands, nearest the centre first; a right and a left image that do not
 * touch come together. What would close a gap between two standing neighbours comes last, and so does a transition
 * between two sheets that the ribs place on their own: it takes up what these miss.
 */
export function orderSheets(sheets: readonly GlueUnit[], bonds: readonly Bond[]): Placement[] {
  const placements: Placement[] = [];
  let waiting = [...sheets];
  const standing: GlueUnit[] = [];
  while (waiting.length > 0) {
    const touching = waiting.filter((unit) => standingBonds(unit, standing, bonds).length > 0);
    const isEarly = (unit: GlueUnit) => waitsFor(unit, waiting, bonds);
    const open = touching.filter((unit) => !isCloser(unit, standing, bonds) && !isEarly(unit));
    const held = waiting.filter(
      (unit) => !touching.includes(unit) && unit.ribIds.length > 0 && !isEarly(unit),
    );
    const groups = [open, held, touching, waiting];
    const candidates = groups.find((group) => group.length > 0) ?? waiting;
    const chosen = at([...candidates].sort(byReach), 0);
    const image = candidates.find((unit) => isImageOf(unit, chosen));
    const isPair = image !== undefined && standingBonds(chosen, [image], bonds).length === 0;
    const units = isPair ? [chosen, image] : [chosen];
    const role = !touching.includes(chosen) ? "first" : open.includes(chosen) ? "next" : "closer";
    placements.push({ units, role });
    standing.push(...units);
    waiting = waiting.filter((unit) => !units.includes(unit));
  }
  return placements;
}

/** Nearest the centre line, then on most ribs, then foremost, then right before left, then by id. */
function byReach(a: GlueUnit, b: GlueUnit): number {
  return (
    Math.round(Math.abs(a.middle.y)) - Math.round(Math.abs(b.middle.y)) ||
    b.ribIds.length - a.ribIds.length ||
    Math.round(a.middle.x) - Math.round(b.middle.x) ||
    b.middle.y - a.middle.y ||
    (a.id < b.id ? -1 : 1)
  );
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
function waitsFor(unit: GlueUnit, waiting: readonly GlueUnit[], bonds: readonly Bond[]): boolean {
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
