import { formatAngle, formatMm } from "../foundation/index.ts";
import type { Release } from "./board-types.ts";

/** How the shell comes off its ribs, in sentences: what has to be off it, and what holds it. */
export function wordRelease({ steepestRad, locks }: Release, standName: string): readonly string[] {
  const wings = locks.filter(({ by }) => by === "wing");
  const holding = locks.filter(({ by }) => by !== "wing");
  const plates = [...new Set(wings.map(({ partId }) => partId))];
  return [
    holding.length === 0
      ? `The shell lifts straight up off the ${standName}: nothing of it lies under wood.`
      : `The shell does not lift straight up off the ${standName}: ${holding.map((lock) => `${lock.partId} reaches ${formatMm(lock.overMm)} mm under rib ${lock.ribId} (from ${formatMm(lock.alongMm[0])} to ${formatMm(lock.alongMm[1])} along it)`).join(", ")}. Open those tops there, or glue the part on after the shell is off.`,
    `The steepest face on the ribs leans ${formatAngle(steepestRad)} from level${standName === "jig" ? "; tape every top, so that glue does not hold it" : ""}.`,
    ...plates.map((plate) => {
      const own = wings.filter(({ partId }) => partId === plate);
      const ribs = [...new Set(own.map(({ ribId }) => ribId))].join(", ");
      const most = Math.max(...own.map(({ overMm }) => overMm));
      return `${plate}: fit it after the shell is off. Its wing reaches ${formatMm(most)} mm under ${ribs}.`;
    }),
  ];
}
