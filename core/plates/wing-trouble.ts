import type { DrawnWing } from "./course.ts";

/**
 * Why a wing cannot be made on its base: the edge beside it is too short for its relief ("no room"), nothing is left
 * of its bend or of its free edge, or another wing stands on the same stretch.
 */
export interface WingTrouble {
  readonly wing: DrawnWing;
  readonly kind: "no room" | "no width" | "no free edge" | "overlap";
  readonly other?: DrawnWing;
}

export type Tried<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly trouble: WingTrouble };

/** All values, or the first trouble. */
export function allTried<T>(tried: readonly Tried<T>[]): Tried<readonly T[]> {
  const values: T[] = [];
  for (const one of tried) {
    if (!one.ok) return one;
    values.push(one.value);
  }
  return { ok: true, value: values };
}
