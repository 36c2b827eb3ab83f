import { at } from "../foundation/index.ts";
import type { Bond } from "./glue-bonds.ts";
import type { GlueUnit } from "./glue-units.ts";
import { type Placement, standingBonds } from "./neighbours.ts";

/** Where a closer is fitted to the measured gap: the last of its joints to be made. */
export interface Closing {
  readonly jointId: string;
  readonly stripIds: readonly string[];
  /** The closer's edge there. */
  readonly edgeId: string;
  /** The part that it meets there. */
  readonly meetsPartId: string;
}

/**
 * The last joint of every closer that comes now, in the order of the units: of those with what stands the one farthest
 * from the centre line, for the work goes outward from there; of several the rearmost. None for a unit that only seams
 * hold.
 */
export function closingsOf(
  { units, role }: Placement,
  standing: readonly GlueUnit[],
  bonds: readonly Bond[],
): readonly Closing[] {
  if (role !== "closer") return [];
  return units.flatMap((unit): readonly Closing[] => {
    const [last] = standingBonds(unit, standing, bonds)
      .flatMap((bond) => closingAt(bond, unit))
      .sort((a, b) => b.farMm - a.farMm || b.rearMm - a.rearMm || (a.jointId < b.jointId ? -1 : 1));
    if (last === undefined) return [];
    const { farMm: _far, rearMm: _rear, ...closing } = last;
    return [closing];
  });
}

interface Place {
  readonly farMm: number;
  readonly rearMm: number;
}

function closingAt({ id, edgeIds, middle, sides }: Bond, unit: GlueUnit): readonly (Closing & Place)[] {
  if (edgeIds === undefined || middle === undefined) return [];
  const own = at(sides, 0).includes(unit) ? 0 : 1;
  const [other] = at(sides, 1 - own);
  if (other === undefined) return [];
  return [
    {
      jointId: id,
      stripIds: unit.strips.map((strip) => strip.id),
      edgeId: at(edgeIds, own),
      meetsPartId: other.part.id,
      farMm: Math.round(Math.abs(middle.y)),
      rearMm: Math.round(middle.x),
    },
  ];
}
