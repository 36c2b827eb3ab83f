import type { PlanPoint } from "../../foundation/index.ts";
import type { LyingSheet } from "../../surfaces/index.ts";
import type { JigGround } from "../jig-ground.ts";
import { drawnFoamFace } from "../laid/laid-face.ts";
import type { Rib } from "../types.ts";
import type { LyingFoam } from "./lanes-of.ts";
import { stationNear } from "./station-near.ts";
import type { CheckPlace, LieLine } from "./types.ts";

/** A station this near to a rib lies over it, mm. */
const OVER_RIB_MM = 1;

/** Over every rib, on every line that crosses it. */
export function checkPlaces(
  lines: readonly LieLine[],
  ribs: readonly Rib[],
  drawnOver: (p: PlanPoint) => number | undefined,
): readonly CheckPlace[] {
  return ribs.flatMap(({ id }) =>
    lines.flatMap((line): CheckPlace[] => {
      const index = line.ribIds.indexOf(id);
      const place = index < 0 ? undefined : stationNear(line, line.ribsMm[index] ?? 0);
      if (!place) return [];
      // Typed off a tape: whole millimetres.
      const spot = { x: Math.round(place.at.x), y: Math.round(place.at.y) };
      const drawnMm = drawnOver(spot);
      // Past a trim line there is no drawn foam to measure.
      const isOver = Math.abs(place.alongMm - (line.ribsMm[index] ?? 0)) < OVER_RIB_MM;
      return drawnMm === undefined || !isOver ? [] : [{ ribId: id, partId: line.partId, at: spot, drawnMm }];
    }),
  );
}

/** Height above the baseboard of the foam's face that looks up on the jig, over a plan point. */
export function upFaceOver(
  { sheets, laid }: LyingFoam,
  { jig, symmetry }: JigGround,
  levelZMm: number,
): (p: PlanPoint) => number | undefined {
  const isUpright = jig.attitude === "upright";
  const faces = sheets
    .filter((sheet): sheet is LyingSheet => sheet.kind !== "fence" && sheet.planLoops.length > 0)
    .map((sheet) => ({
      hands: sheet.hands,
      over: drawnFoamFace(sheet, isUpright ? sheet.depths.coreUpperMm : sheet.depths.coreLowerMm, laid),
    }));
  return ({ x, y }) => {
    for (const { hands, over } of faces) {
      const isImage = symmetry === "mirrored" && hands.includes("left") && y < 0;
      const face = over({ x, y: isImage ? -y : y });
      if (face) return isUpright ? face.z - levelZMm : levelZMm - face.z;
    }
    return undefined;
  };
}
