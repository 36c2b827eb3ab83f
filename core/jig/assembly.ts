import { bodyOfRib } from "./body-of-rib.ts";
import { type Stretch, sharedMm } from "./crossing-rib.ts";
import type { AssemblyStep, Rib } from "./types.ts";

/** Two boards that come nearer than this in height touch, mm. */
const TOUCH_MM = 1e-6;

/**
 * The order in which ribs are set up, and which of them no longer go in: ribs along stand first, then each rib across
 * comes straight down over them. A rib goes in where, at every crossing, all of it lies above all of what stands there;
 * else it is locked out.
 */
export function orderOfAssembly(ribs: readonly Rib[]): readonly AssemblyStep[] {
  const inOrder = [
    ...ribs.filter(({ runs }) => runs === "along"),
    ...ribs.filter(({ runs }) => runs === "across"),
  ];
  return inOrder.map((rib, i): AssemblyStep => {
    const standing = inOrder.slice(0, i);
    const crossed = rib.laps.map(({ otherId }) => otherId);
    const over = standing.filter(({ id }) => crossed.includes(id));
    const lockedBy = over.filter((other) => !comesDownOver(rib, other)).map(({ id }) => id);
    return { ribId: rib.id, over: over.map(({ id }) => id), lockedBy };
  });
}

/** Whether a rib comes down over another one: where both bodies are, its lowest wood lies over the other's highest. */
function comesDownOver(rib: Rib, other: Rib): boolean {
  const [lowest] = woodOver(rib, bodyOfRib(other));
  const [, highest] = woodOver(other, bodyOfRib(rib));
  return lowest >= highest - TOUCH_MM;
}

/** The lowest and the highest wood of a rib over a stretch along it. */
function woodOver({ outlineMm }: Rib, stretch: Stretch): readonly [number, number] {
  let [lowest, highest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const see = (v: number) => {
    lowest = Math.min(lowest, v);
    highest = Math.max(highest, v);
  };
  outlineMm.forEach((to, i) => {
    const from = outlineMm[(i + outlineMm.length - 1) % outlineMm.length] ?? to;
    const [low, high] = [Math.min(from.u, to.u), Math.max(from.u, to.u)];
    if (sharedMm([low, high], stretch) === 0) return;
    for (const u of [Math.max(low, stretch[0]), Math.min(high, stretch[1])]) {
      see(from.v + ((u - from.u) / (to.u - from.u)) * (to.v - from.v));
    }
  });
  return [lowest, highest];
}
