import { longestSideRad } from "./rings.ts";
import type { PackingLoop } from "./types.ts";

/** How finely a freely turned piece is turned. */
const STEP_RAD = Math.PI / 18;
const QUARTER_RAD = Math.PI / 2;
/** Two angles nearer than this are one. */
const SAME_RAD = 1e-9;

/**
 * Angles for a piece that may be turned freely, in order from 0 to under 2π: a full turn in steps of ten degrees that
 * begins where the longest side of its outline lies along the sheet, and the quarter turns of the piece as it is drawn.
 */
export function freeAngles(outline: PackingLoop): readonly number[] {
  const first = (((-longestSideRad(outline) % QUARTER_RAD) + QUARTER_RAD) % QUARTER_RAD) % STEP_RAD;
  const steps = Array.from({ length: Math.round((2 * Math.PI) / STEP_RAD) }, (_, k) => first + k * STEP_RAD);
  const quarters = [0, 1, 2, 3].map((k) => k * QUARTER_RAD);
  const others = steps.filter((angle) => quarters.every((quarter) => Math.abs(angle - quarter) > SAME_RAD));
  return [...quarters, ...others].sort((a, b) => a - b);
}
