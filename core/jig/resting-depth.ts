import type { FaceDepths } from "../laminate/index.ts";
import { rulingAt } from "../rulings/index.ts";
import type { LyingSheet } from "../surfaces/index.ts";

/** How deep the resting face of a sheet lies behind its drawn surface. */
export type DepthOf = (depths: FaceDepths) => number;

/** Behind the drawn surface lies the lower core face on an upright jig, the upper one on an inverted jig. */
export const restingDepth =
  (attitude: "upright" | "inverted"): DepthOf =>
  ({ coreLowerMm, coreUpperMm }) =>
    attitude === "upright" ? coreLowerMm : coreUpperMm;

/** Between which depths the shell is when it is lifted off the jig, with the skin that is on by then. */
export const bodyOn = (attitude: "upright" | "inverted"): readonly [DepthOf, DepthOf] => [
  restingDepth(attitude),
  attitude === "upright" ? ({ upperMm }) => upperMm : ({ airMm }) => airMm,
];

/** The same of the shell in its cradle, with both skins. */
export const FINISHED_BODY: readonly [DepthOf, DepthOf] = [({ airMm }) => airMm, ({ upperMm }) => upperMm];

/**
 * A depth behind the drawn surface of one sheet, where `depthOf` tells it of sheets whose core lies over their air face. A
 * transition may have its core below: its upper core face is the lower one then.
 */
export function depthIn(sheet: LyingSheet, depthOf: DepthOf): number {
  const { airMm, coreLowerMm, neutralMm, coreUpperMm, upperMm } = sheet.depths;
  if (!hasCoreBelow(sheet)) return depthOf(sheet.depths);
  return -depthOf({
    airMm: -upperMm,
    coreLowerMm: -coreUpperMm,
    neutralMm: -neutralMm,
    coreUpperMm: -coreLowerMm,
    upperMm: -airMm,
  });
}

const PROBES = 9;

function hasCoreBelow(sheet: LyingSheet): boolean {
  if (sheet.kind !== "transition") return false;
  const { surface } = sheet.chart;
  const rises = Array.from({ length: PROBES }, (_, i) => {
    return rulingAt(surface, (surface.lengthSMm * (i + 0.5)) / PROBES).normal.z;
  });
  return rises.reduce((sum, z) => sum + z, 0) < -1e-6;
}
