import { type LieSettings, lieSettingsOf, type RibPlaces } from "../../project/index.ts";
import type { JigGround } from "../jig-ground.ts";
import { outboardPlaces } from "../outboard-places.ts";
import { fewestPlaces, type Shares } from "./fewest-places.ts";
import { fixedPlaces } from "./fixed-places.ts";
import { type LyingFoam, lanesOf } from "./lanes-of.ts";
import { type Obstacle, type Obstacles, shiftedClear } from "./obstacles.ts";
import { type QuickLane, quickLane } from "./quick-lane.ts";
import { sharesBetween, unlikeLanes } from "./shares-between.ts";
import type { Lane } from "./types.ts";

/**
 * Ribs placed so that the foam lies in its shape: as few as keep every lane within what is allowed (`judgeLine`), with one on
 * both sides of every end, joint and splice that runs across. Between those, ribs are shifted until every stretch asks
 * for as much as its neighbours, and their number is the least with which none asks for more than is allowed; closer than
 * 40 mm they are not set. They are shifted clear of openings and fences where that costs no rib. Places that are typed, spaced or none stay as they are.
 */
export function placeRibs(
  foam: LyingFoam,
  project: JigGround,
  obstacles: Obstacles = { across: [], along: [] },
): Pick<JigGround["jig"], "across" | "along"> {
  const placesOf = (over: Lane["over"]): RibPlaces =>
    project.jig[over].kind === "automatic"
      ? automatic(foam, project, over, obstacles[over])
      : project.jig[over];
  return { across: placesOf("across"), along: placesOf("along") };
}

function automatic(
  foam: LyingFoam,
  project: JigGround,
  over: Lane["over"],
  obstacles: readonly Obstacle[],
): RibPlaces {
  const all = lanesOf(foam, project, over);
  const lanes = unlikeLanes(all).map(quickLane);
  if (lanes.length === 0) return { kind: "none" };
  const settings = lieSettingsOf(project);
  const isMirrored = over === "along" && project.symmetry === "mirrored";
  const borders = fixedPlaces(all, foam, over).filter((mm) => !isMirrored || mm >= 0);
  const shares: Shares = (placesMm, window) =>
    isMirrored ? sharesOfRight(lanes, placesMm, settings) : sharesBetween(lanes, placesMm, settings, window);
  const ends = isMirrored ? [0, ...borders.filter((mm) => mm > 1)] : borders;
  const isEnough = (placesMm: readonly number[]): boolean =>
    [...shares(placesMm, { from: 0, to: placesMm.length - 1 }).values()].every((share) => share <= 1);
  const atMm = shiftedClear(fewestPlaces(ends, shares), ends, obstacles, isEnough);
  // Those past trim lines stand in any case, whatever is typed.
  const outboard = over === "across" ? outboardPlaces(foam.laid).map((place) => place.atMm) : [];
  return { kind: "typed", atMm: atMm.filter((mm) => outboard.every((out) => Math.abs(out - mm) > 1)) };
}

/** Ribs along stand on both hands alike: what is asked for on the right one is told. */
function sharesOfRight(
  lanes: readonly QuickLane[],
  rightMm: readonly number[],
  settings: LieSettings,
): ReadonlyMap<number, number> {
  const leftMm = rightMm
    .filter((mm) => mm > 0)
    .map((mm) => -mm)
    .reverse();
  const all = sharesBetween(lanes, [...leftMm, ...rightMm], settings);
  return new Map([...all].flatMap(([i, share]) => (i < leftMm.length ? [] : [[i - leftMm.length, share]])));
}
