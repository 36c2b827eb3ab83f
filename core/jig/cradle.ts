import { makingOf } from "../project/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { fenceBands } from "./fence-notches.ts";
import { hangingSheets } from "./hanging-sheets.ts";
import type { JigGround } from "./jig-ground.ts";
import { AS_DRAWN } from "./laid/laid-face.ts";
import { FINISHED_BODY } from "./resting-depth.ts";
import type { Stand } from "./rib-set.ts";

/**
 * The cradle of a jig, undefined where the document asks for none: the tray is turned over once its first face is
 * skinned, and lies on that skin with padding between. From an inverted jig it comes to lie upright on its air face, its
 * fences hanging in openings of the ribs; from an upright one it comes to lie upside down on its upper face.
 */
export function cradleStand(
  sheets: readonly Sheet[],
  project: JigGround,
  wings: Stand["hanging"],
): Stand | undefined {
  const { cradle } = makingOf(project);
  if (cradle === undefined) return undefined;
  const { paddingMm } = cradle;
  const turned = project.jig.attitude === "inverted";
  return {
    stand: "cradle",
    attitude: turned ? "upright" : "inverted",
    depthOf: ({ airMm, upperMm }) => (turned ? airMm - paddingMm : upperMm + paddingMm),
    bands: turned ? fenceBands(sheets, project) : [],
    seams: [],
    laid: AS_DRAWN,
    hanging: [...wings, ...hangingSheets(sheets, FINISHED_BODY)],
  };
}
