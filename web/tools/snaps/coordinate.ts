import type { Vec2 } from "../../../core/foundation/index.ts";
import type { SnapSign } from "../types.ts";

/** One coordinate of a place drawn onto something: its value, why in words, and the sign for where it comes to lie. */
export interface Coordinate {
  readonly value: number;
  readonly reason: string;
  readonly sign: (at: Vec2) => SnapSign;
}

export type Axis = 0 | 1;
