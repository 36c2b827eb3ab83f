import type { Vec2 } from "../../../core/foundation/index.ts";
import type { Command } from "../../../core/project/index.ts";
import type { DrawingView } from "../drawing-view.ts";

/** What typing into a dimension does: the commands, or what keeps it from being done, in words. */
export type DimensionEdit =
  | { readonly ok: true; readonly commands: readonly Command[] }
  | { readonly ok: false; readonly why: string };

/** One measure of what is chosen, where it is drawn, and what typing another value does. */
export interface Dimension {
  readonly id: string;
  readonly view: DrawingView;
  /** Straight from point to point, along a curve, a radius, or square to an axis from its zero. */
  readonly kind: "straight" | "arc" | "radius" | "axis";
  readonly from: Vec2;
  readonly to: Vec2;
  /** Where it is drawn if not between its ends: the middle of a curve, or of an arc. */
  readonly middle?: Vec2;
  /** Unit, away from what is measured, mm. */
  readonly outward: Vec2;
  readonly valueMm: number;
  /** What it is, for a label: "length of Outer". */
  readonly word: string;
  /** What moves when it is changed, in words; absent where it cannot be changed here. */
  readonly moves?: string;
  readonly edit?: (valueMm: number) => DimensionEdit;
}

export const refuse = (why: string): DimensionEdit => ({ ok: false, why });
export const carryOut = (commands: readonly Command[]): DimensionEdit => ({ ok: true, commands });
