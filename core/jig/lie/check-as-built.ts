import type { PlanPoint } from "../../foundation/index.ts";
import type { Project } from "../../project/index.ts";
import type { Rib } from "../types.ts";
import { fitRigid } from "./fit-rigid.ts";
import type { AsBuilt } from "./types.ts";

/** A shim thinner than this is not set, mm. */
const THINNEST_SHIM_MM = 0.2;

/**
 * Measured heights of the laid foam against the drawn ones: what every place stands off, the rigid move that fits best,
 * and what is left of it at each rib, which is what it is shimmed by. Places off the tray are left out.
 */
export function checkAsBuilt(
  measured: NonNullable<Project["asBuilt"]>,
  ribs: readonly Rib[],
  drawnOver: (p: PlanPoint) => number | undefined,
): AsBuilt | undefined {
  const places = measured.flatMap(({ x, y, heightMm }) => {
    const drawnMm = drawnOver({ x, y });
    const ribId = ribNear(ribs, { x, y });
    if (drawnMm === undefined || ribId === undefined) return [];
    return [{ at: { x, y }, ribId, measuredMm: heightMm, drawnMm, offMm: heightMm - drawnMm }];
  });
  if (places.length === 0) return undefined;
  const fit = fitRigid(places);
  const left = places.map((place) => ({
    ...place,
    leftMm: place.offMm - fit.liftMm - fit.slopeX * place.at.x - fit.slopeY * place.at.y,
  }));
  const shims = ribs.flatMap(({ id }) => {
    const own = left.filter(({ ribId }) => ribId === id);
    const byMm = own.length === 0 ? 0 : -own.reduce((sum, { leftMm }) => sum + leftMm, 0) / own.length;
    return Math.abs(byMm) < THINNEST_SHIM_MM ? [] : [{ ribId: id, byMm }];
  });
  return { places: left, fit, shims };
}

/** The rib that stands nearest under a plan point. */
function ribNear(ribs: readonly Rib[], { x, y }: PlanPoint): string | undefined {
  const far = ({ runs, atMm, outlineMm }: Rib): number => {
    const [over, along] = runs === "across" ? [x, y] : [y, x];
    const us = outlineMm.map(({ u }) => u);
    const beyond = Math.max(0, Math.min(...us) - along, along - Math.max(...us));
    return Math.hypot(over - atMm, beyond);
  };
  return ribs.reduce<Rib | undefined>((best, rib) => (best && far(best) <= far(rib) ? best : rib), undefined)
    ?.id;
}
