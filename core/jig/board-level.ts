import type { Problem } from "../foundation/index.ts";
import { makingOf } from "../project/index.ts";
import type { FenceBand } from "./fence-notches.ts";
import type { JigGround } from "./jig-ground.ts";
import type { TopPoint } from "./top-stretches.ts";
import type { Baseboard, Rib } from "./types.ts";

/** Fences hang clear of the baseboard by this, mm. */
const FENCE_CLEARANCE_MM = 10;
/** A rib that is lower has no wood for slots and screws, mm (common practice). */
const LOWEST_RIB_MM = 20;

export interface LevelSettings extends Pick<Baseboard, "attitude"> {
  readonly stand: Rib["stand"];
  readonly project: JigGround;
}

/** Where a board lies, and what is wrong with where it was wanted. */
export interface BoardLevel {
  readonly levelZMm: number;
  readonly problems: readonly Problem[];
}

/**
 * Height of the baseboard, above ground (upright) or as the level that the tray is turned over to (inverted): where it is
 * typed, else so that the lowest rib is as high as is asked for and fences hang clear. Problem: baseboard-in-tray where it
 * is typed so that a rib would have no wood or a fence no room; then it lies as if nothing were typed.
 */
export function boardLevel(
  tops: readonly TopPoint[],
  bands: readonly FenceBand[],
  { attitude, stand, project }: LevelSettings,
): BoardLevel {
  if (tops.length === 0) return { levelZMm: 0, problems: [] };
  const sign = attitude === "upright" ? 1 : -1;
  // Counted upward in the jig's own attitude.
  const lowestMm = tops.reduce((least, { zMm }) => Math.min(least, sign * zMm), Number.POSITIVE_INFINITY);
  const fenceMm = Math.min(...bands.map(({ leastZMm }) => leastZMm)) - FENCE_CLEARANCE_MM;
  const under = (ribMm: number) =>
    sign * Math.min(lowestMm - ribMm, attitude === "upright" ? fenceMm : lowestMm);
  const levelZMm = under(project.jig.leastHeightMm);
  const typedMm = stand === "jig" ? makingOf(project).baseZMm : undefined;
  if (typedMm === undefined) return { levelZMm, problems: [] };
  const limitMm = under(Math.min(LOWEST_RIB_MM, project.jig.leastHeightMm));
  if (sign * typedMm <= sign * limitMm) return { levelZMm: typedMm, problems: [] };
  const place = { setting: "jig.making.baseZMm" };
  const words = { name: "The baseboard", attitude, heightMm: typedMm, limitMm, usedMm: levelZMm };
  return { levelZMm, problems: [{ kind: "baseboard-in-tray", place, ...words }] };
}
