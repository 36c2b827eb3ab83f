import { formatMm, type Problem } from "../foundation/index.ts";
import { type FenceRoom, HAND_MM, tightPlace } from "./fence-room.ts";
import type { Bond } from "./glue-bonds.ts";
import type { GlueUnit } from "./glue-units.ts";
import { list } from "./say-why.ts";
import type { GlueLine } from "./step-draft.ts";

/** Something that is glued where hand and brush do not go when its turn comes. */
export interface OutOfReach {
  /** The joint under others, or the fence between others. */
  readonly name: string;
  readonly unit: GlueUnit;
  readonly by: "over it" | "beside it";
  readonly closerIds: readonly string[];
  readonly lengthMm: number;
}

/** The room beside each fence. */
type Rooms = ReadonlyMap<GlueUnit, FenceRoom>;

/** Joints of a step that something lies over by then. */
export const closedOff = (
  lines: readonly GlueLine[],
  bonds: readonly Bond[],
  there: readonly GlueUnit[],
): readonly OutOfReach[] =>
  lines.flatMap(({ id: name, lengthMm, units: [unit] }) => {
    const over = bonds.find(({ id }) => id === name)?.closedBy?.filter((one) => there.includes(one)) ?? [];
    const closerIds = over.map(({ id }) => id);
    return unit && over.length > 0 ? [{ name, unit, by: "over it" as const, closerIds, lengthMm }] : [];
  });

/** Fences of a step that others stand beside on both sides. */
export const tight = (
  come: readonly GlueUnit[],
  standing: readonly GlueUnit[],
  rooms: Rooms,
): readonly OutOfReach[] =>
  come.flatMap((unit) => {
    const room = rooms.get(unit);
    if (room === undefined) return [];
    const { lengthMm, beside } = tightPlace(room, standing);
    const closerIds = beside.map(({ id }) => id);
    return lengthMm > 0 ? [{ name: unit.id, unit, by: "beside it" as const, closerIds, lengthMm }] : [];
  });

/** Why a fence comes before others, where it could not be reached after them; empty where it could. */
export function whyBefore(
  come: readonly GlueUnit[],
  standing: readonly GlueUnit[],
  all: readonly GlueUnit[],
  rooms: Rooms,
): string {
  const later = all.filter((unit) => !come.includes(unit) && !standing.includes(unit));
  const closers = tight(come, [...standing, ...later], rooms).flatMap(({ closerIds }) => closerIds);
  const names = later.filter(({ id }) => closers.includes(id)).map(({ id }) => id);
  const isOpen = tight(come, standing, rooms).length === 0;
  return isOpen && names.length > 0
    ? ` It comes before ${list(names)}: beside ${names.length > 1 ? "them" : "it"} no hand with a brush would fit later.`
    : "";
}

/** What to do in the step about what is out of reach. */
export const reachWords = ({ name, by, closerIds, lengthMm }: OutOfReach): string =>
  by === "over it"
    ? `${name} lies under ${list(closerIds)} by now, out of reach of hand and brush: spread its glue before these come down, or lift them off for it.`
    : `${name} stands between ${list(closerIds)} with less than ${formatMm(HAND_MM)} mm beside it over ${formatMm(lengthMm)} mm: tie the brush to a stick, draw its bead with a long nozzle, and look along it with a mirror.`;

/** The same as a problem. */
export const reachProblem = ({ name, unit, by, closerIds, lengthMm }: OutOfReach): Problem => ({
  kind: "joint-out-of-reach",
  place: { itemId: unit.part.itemId, partId: unit.part.id },
  name,
  by,
  closerIds,
  lengthMm,
});
