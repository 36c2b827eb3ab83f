import { at, type PlanPoint } from "../foundation/index.ts";
import { boundsOfLoops } from "./loop-bounds.ts";

type Loops = readonly (readonly PlanPoint[])[];

/** Places each way that are looked at: for letters that is near enough. */
const PLACES = 24;

/** The place inside loops (even-odd) that is farthest from their lines and from the other lines, and how far that is, mm. */
export function roomiestPlace(
  loops: Loops,
  others: Loops,
): { readonly place: PlanPoint; readonly roomMm: number } {
  const box = boundsOfLoops(loops);
  const first = loops[0]?.[0] ?? { x: 0, y: 0 };
  let best = { place: first, roomMm: 0 };
  if (!box) return best;
  const lines = [...loops, ...others];
  for (let i = 0; i < PLACES; i++)
    for (let k = 0; k < PLACES; k++) {
      const place = {
        x: box.left + ((box.right - box.left) * (i + 0.5)) / PLACES,
        y: box.bottom + ((box.top - box.bottom) * (k + 0.5)) / PLACES,
      };
      if (!isInside(place, loops)) continue;
      const roomMm = Math.min(...lines.map((loop) => awayFrom(place, loop)));
      if (roomMm > best.roomMm) best = { place, roomMm };
    }
  return best;
}

function isInside({ x, y }: PlanPoint, loops: Loops): boolean {
  let count = 0;
  for (const loop of loops)
    for (const [i, b] of loop.entries()) {
      const a = at(loop, (i + loop.length - 1) % loop.length);
      if (a.y > y !== b.y > y && a.x + ((y - a.y) * (b.x - a.x)) / (b.y - a.y) > x) count += 1;
    }
  return count % 2 === 1;
}

function awayFrom({ x, y }: PlanPoint, loop: readonly PlanPoint[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [i, b] of loop.entries()) {
    const a = at(loop, (i + loop.length - 1) % loop.length);
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const share = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, Math.hypot(x - a.x - share * dx, y - a.y - share * dy));
  }
  return least;
}
