import { at, type FlatPoint } from "../foundation/index.ts";

/** Least and greatest place along a line, mm. */
export type Stretch = readonly [fromMm: number, toMm: number];

/** A rib as far as others are concerned: its body in plan and its top. */
export interface CrossingRib {
  readonly id: string;
  readonly runs: "across" | "along";
  /** Its body: least and greatest x (across) or y (along). */
  readonly body: Stretch;
  readonly top: readonly FlatPoint[];
}

/** Touching faces are not in one another, mm. */
const TOUCH_MM = 1e-6;

/** Where a rib starts and ends along itself. */
export const endsOf = ({ top }: Pick<CrossingRib, "top">): Stretch => [at(top, 0).u, at(top, -1).u];

/** How much two stretches of one line have in common, mm; 0 where they only touch. */
export function sharedMm(a: Stretch, b: Stretch): number {
  const mm = Math.min(a[1], b[1]) - Math.max(a[0], b[0]);
  return mm > TOUCH_MM ? mm : 0;
}
