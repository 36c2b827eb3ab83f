import type { BendZone } from "../bending/index.ts";
import { boundsOfLoops } from "../cutting/index.ts";
import type { GlueUnit } from "./glue-units.ts";
import type { StepKind } from "./types.ts";

/** A flat piece on so many ribs lies by itself; foam that is bent cold stays straight on two, and takes a third. */
const RIBS_TO_LIE = 2;
const RIBS_TO_BEND = 3;

/**
 * Whether pieces load the joints of those that they are glued to: not where all of them lie on ribs of their own; always
 * where one is pressed in between others or stands on them.
 */
export function isLoading(
  kind: StepKind,
  come: readonly GlueUnit[],
  neighbours: readonly GlueUnit[],
): boolean {
  if (kind !== "lay") return true;
  return [...come, ...neighbours].some((unit) => unit.ribIds.length < ribsToLie(unit));
}

/** On how many ribs a piece lies in its shape. */
export const ribsToLie = (unit: GlueUnit): number =>
  coldZones(unit).length > 0 ? RIBS_TO_BEND : RIBS_TO_LIE;

/** The bends of a piece that are held against its own stiffness: slots and planks lie in their shape. */
export function coldZones({ part, strips }: GlueUnit): readonly BendZone[] {
  const cold = part.zones.filter(
    ({ verdict, leastRadiusMm }) => verdict === "bend cold" && leastRadiusMm !== undefined,
  );
  if (cold.length === 0) return cold;
  const { leastUMm, mostUMm } = boundsOfLoops(strips.flatMap(({ loops }) => loops));
  return cold.filter(({ fromUMm, toUMm }) => fromUMm < mostUMm && toUMm > leastUMm);
}
