import { at, crossSpace, dotSpace, type SpacePoint } from "../foundation/index.ts";
import { DEVELOPABLE_TWIST_RAD } from "./limits.ts";
import { sweepAt, sweptPoint } from "./sweep-at.ts";
import { SWEEP } from "./sweep-ruling.ts";
import type { Crease, PairedEdges } from "./types.ts";

/** A ruling this near to a corner stands on it. */
const ON_CORNER_MM = 1e-6;

/** The rulings whose two sides differ by more than 0.1°: in the planes at either end, whichever differ more. */
export function findCreases(paired: PairedEdges): readonly Crease[] {
  const { rulings } = paired;
  return rulings.slice(1, -1).flatMap(({ sMm, firstMm, secondMm }, index) => {
    if (!mayCrease(paired, index + 1)) return [];
    const [before, after] = [sweepAt(paired, sMm, index).numbers, sweepAt(paired, sMm, index + 1).numbers];
    const angleRad = Math.max(
      ...[SWEEP.firstNormal, SWEEP.secondNormal].map((place) =>
        angleBetween(sweptPoint(before, place), sweptPoint(after, place)),
      ),
    );
    return angleRad > DEVELOPABLE_TWIST_RAD ? [{ sMm, firstMm, secondMm, angleRad }] : [];
  });
}

/** Only where fans begin or end, or on a corner, can the two sides differ. */
function mayCrease({ rulings, first, second }: PairedEdges, index: number): boolean {
  const here = at(rulings, index);
  return (
    at(rulings, index - 1).fanAfter !== here.fanAfter ||
    first.cornersMm.some((mm) => Math.abs(mm - here.firstMm) < ON_CORNER_MM) ||
    second.cornersMm.some((mm) => Math.abs(mm - here.secondMm) < ON_CORNER_MM)
  );
}

function angleBetween(a: SpacePoint, b: SpacePoint): number {
  const cross = crossSpace(a, b);
  return Math.atan2(Math.sqrt(dotSpace(cross, cross)), dotSpace(a, b));
}
