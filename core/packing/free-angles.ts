import { at } from "../foundation/index.ts";
import type { PackingLoop } from "./types.ts";

/** How finely a freely turned piece is turned. */
const STEP_RAD = Math.PI / 36;

/**
 * Angles for a piece that may be turned freely: a full turn in steps of five degrees that begins where the longest
 * side of its outline lies along the sheet, so that straight pieces can lie along its edges. In order, from 0 to 2π.
 */
export function freeAngles(outline: PackingLoop): readonly number[] {
  const sides = outline.map((b, index) => {
    const a = at(outline, index - 1);
    return { length: Math.hypot(b.x - a.x, b.y - a.y), angle: Math.atan2(b.y - a.y, b.x - a.x) };
  });
  const longest = sides.reduce((best, next) => (next.length > best.length ? next : best));
  const quarter = Math.PI / 2;
  const first = ((-longest.angle % quarter) + quarter) % quarter;
  return Array.from({ length: Math.round((2 * Math.PI) / STEP_RAD) }, (_, k) => {
    const angle = first + k * STEP_RAD;
    return angle >= 2 * Math.PI ? angle - 2 * Math.PI : angle;
  }).sort((a, b) => a - b);
}
