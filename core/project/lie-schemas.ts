import * as v from "valibot";
import { Typed } from "./typed-fields.ts";

/** What is asked of foam that lies on the ribs; what is absent is at its default (`lieSettingsOf`). */
export const LieSchema = v.strictObject({
  /** How far the foam may lie off the drawn shape when the skin sets on it. */
  toleranceMm: v.optional(Typed),
  /** A hand's push on the bare foam that it must stand; 0 where nobody leans on it. */
  pushN: v.optional(Typed),
  /** The wet skin on it, per square metre; from the nominal skin if absent. */
  wetKgPerM2: v.optional(Typed),
  /** How far foam runs past a free edge that its bend reaches, over a rib of its own; 0 for not at all. */
  runPastMm: v.optional(Typed),
  /** Ribs are bent too far by what the tray gives back with one skin; the x given keeps its place, or the middle. */
  overBend: v.optional(v.strictObject({ keepXMm: v.optional(Typed) })),
});

/** Heights of the laid foam's upward face above the baseboard, as measured. */
export const AsBuiltSchema = v.array(v.strictObject({ x: Typed, y: Typed, heightMm: Typed }));
