import type { Lengths } from "../../lengths/index.ts";
import type { Dimension } from "../../tools/index.ts";

/** A dimension as it is written on the drawing: R before a radius, the axis before a place. */
export function wordDimension({ id, kind, valueMm }: Dimension, { show }: Lengths): string {
  const number = show(valueMm);
  if (kind === "radius") return `R ${number}`;
  if (kind === "arc") return `arc ${number}`;
  return kind === "axis" ? `${id.split("/", 1)[0]} ${number}` : number;
}
