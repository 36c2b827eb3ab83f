import type { OverBending, Rib } from "../types.ts";
import type { OverBend } from "./find-over-bend.ts";

/** What over-bending does, or would do, to every rib. */
export function overBending(
  { share, keepXMm, liftAt, drawnX, why }: OverBend,
  ribs: readonly Rib[],
  applied: boolean,
): OverBending {
  const most = ({ runs, atMm, heights, attitude }: Rib): number => {
    const lifts = (runs === "across" ? [atMm] : heights.map((height) => height.atMm)).map(liftAt);
    const lift = lifts.reduce((best, mm) => (Math.abs(mm) > Math.abs(best) ? mm : best), 0);
    return attitude === "upright" ? lift : -lift;
  };
  const drawnAt = ({ runs, atMm }: Rib): number => (runs === "across" ? drawnX(atMm) : atMm);
  return {
    applied,
    ...(why !== undefined && { why }),
    share,
    keepXMm,
    ribs:
      why === undefined ? ribs.map((rib) => ({ ribId: rib.id, byMm: most(rib), drawnMm: drawnAt(rib) })) : [],
  };
}

/** A rib that says how much higher its top stands than drawn. */
export function markOverBent(rib: Rib, { ribs }: OverBending): Rib {
  const byMm = ribs.find(({ ribId }) => ribId === rib.id)?.byMm;
  return byMm === undefined ? rib : { ...rib, overBentMm: byMm };
}
