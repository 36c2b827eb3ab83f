import { type BendZone, countFor, holdDownN, holdingMomentPerMm, weightN } from "../bending/index.ts";
import { boundsOfLoops } from "../cutting/index.ts";
import type { BendHold } from "../jig/index.ts";
import { foamOf, type Gluing, type Project } from "../project/index.ts";
import type { GlueUnit } from "./glue-units.ts";
import { holdLine } from "./hold-line.ts";
import { coldZones, ribsToLie } from "./loads.ts";
import type { GlueLine } from "./step-draft.ts";

/** What a bent piece asks of what holds it when it comes, and what that gives. */
export interface BendNeed {
  readonly unit: GlueUnit;
  /** It pushes back with so much over its width. */
  readonly momentNmm: number;
  /**
   * By the ribs that it lies on; on two of them, where foam stays straight, by weights laid on it; where it lies on fewer, or
   * stands, by its joints with what stands already.
   */
  readonly by: "ribs" | "weights" | "joints";
  /** Needed at the rib that holds it down most, or at each end of the bend; and given there. */
  readonly forceN: number;
  readonly heldN: number;
  readonly ribId?: string;
  readonly holder: Project["bending"]["holdBy"];
  /** How many of them are needed; null where one holds nothing. Of pins it is not told. */
  readonly count: number | null;
}

/** What needs are reckoned from. */
export interface NeedGround {
  readonly holds: readonly BendHold[];
  readonly project: Project;
  readonly gluing: Gluing;
}

/** A piece pushes back with less than this at an end: a strip of tape holds it (common practice), N. */
const TAPED_N = 5;
/** A bag, a strap or a screw takes so much of the width of a sheet (common practice), mm. */
const EACH_TAKES_MM = { sandbags: 250, straps: 150, screws: 60 } as const;
/** Ribs that are not known to hold it down are taken to stand so far apart, mm. */
const USUAL_LEVER_MM = 300;

/** What each bent piece that comes needs, where tape does not do. `standing` is what it may be held by. */
export const bendNeeds = (
  come: readonly GlueUnit[],
  standing: readonly GlueUnit[],
  lines: readonly GlueLine[],
  ground: NeedGround,
): readonly BendNeed[] =>
  come.flatMap((unit) => {
    const needs = coldZones(unit).map((zone) => needOf(unit, zone, standing, lines, ground));
    const [worst] = needs.toSorted(
      (a, b) => b.forceN - b.heldN - (a.forceN - a.heldN) || b.forceN - a.forceN,
    );
    return worst === undefined || worst.forceN < TAPED_N ? [] : [worst];
  });

function needOf(
  unit: GlueUnit,
  zone: BendZone,
  standing: readonly GlueUnit[],
  lines: readonly GlueLine[],
  { holds, project, gluing }: NeedGround,
): BendNeed {
  const { part } = unit;
  const acrossMm = widthMm(unit, zone, holds);
  const momentNmm =
    acrossMm *
    holdingMomentPerMm({
      modulusMPa: foamOf(project, part.foamId)?.modulusMPa ?? 0,
      thicknessMm: part.thicknessMm,
      radiusMm: zone.leastRadiusMm ?? Number.POSITIVE_INFINITY,
    });
  const { bending } = project;
  const holder = bending.holdBy;
  const hold = holdOf(unit, zone, holds)?.holdDown;
  if (part.kind !== "fence" && unit.ribIds.length >= ribsToLie(unit)) {
    const share = hold && hold.widthMm > 0 ? Math.min(1, acrossMm / hold.widthMm) : 1;
    const forceN = hold ? hold.forceN * share : momentNmm / USUAL_LEVER_MM;
    const fit = 1 + Math.floor(acrossMm / EACH_TAKES_MM[holder]);
    const eachN = hold?.eachN ?? 0;
    const pinsN = bending.pinN * Math.floor(acrossMm / gluing.pinSpacingCurvedMm);
    const count = eachN > 0 ? Math.max(0, Math.ceil((forceN - pinsN) / eachN - 1e-9)) : null;
    const ribId = hold?.ribId;
    const heldN = pinsN + fit * eachN;
    return { unit, momentNmm, by: "ribs", forceN, heldN, ...(ribId && { ribId }), holder, count };
  }
  const forceN = holdDownN(momentNmm, 1, Math.max(1, (zone.toUMm - zone.fromUMm) / 2));
  if (part.kind !== "fence" && unit.ribIds.length === ribsToLie(unit) - 1 && holder === "sandbags") {
    const eachN = weightN(bending.sandbagKg);
    const heldN = eachN * (1 + Math.floor(acrossMm / EACH_TAKES_MM.sandbags));
    const count = countFor(forceN, eachN);
    return {
      unit,
      momentNmm,
      by: "weights",
      forceN,
      heldN,
      holder,
      count: Number.isFinite(count) ? count : null,
    };
  }
  const own = lines.filter(
    ({ units }) => units.includes(unit) && units.some((other) => standing.includes(other)),
  );
  const pins = own.reduce((sum, line) => sum + holdLine(line, gluing).pins, 0);
  // Half of the pins lie toward either end.
  return { unit, momentNmm, by: "joints", forceN, heldN: (bending.pinN * pins) / 2, holder, count: null };
}

const holdOf = ({ part }: GlueUnit, zone: BendZone, holds: readonly BendHold[]): BendHold | undefined =>
  holds.find(({ partId, fromUMm }) => partId === part.id && Math.abs(fromUMm - zone.fromUMm) < 1e-6);

/** How wide a piece is along the rulings of a bend, mm: as its part there, and no more than the piece itself. */
function widthMm(unit: GlueUnit, zone: BendZone, holds: readonly BendHold[]): number {
  const { leastVMm, mostVMm } = boundsOfLoops(unit.strips.flatMap(({ loops }) => loops));
  return Math.min(
    mostVMm - leastVMm,
    holdOf(unit, zone, holds)?.holdDown?.widthMm ?? Number.POSITIVE_INFINITY,
  );
}
