export type { Dimension, DimensionEdit } from "./dimension.ts";
export { dimensionsOf } from "./dimensions-of.ts";
export { totalLength } from "./total-length.ts";
