import type { FaceDepths } from "../laminate/index.ts";

/** How deep the resting face of a sheet lies behind its drawn surface. */
export type DepthOf = (depths: FaceDepths) => number;

/** Behind the drawn surface lies the lower core face on an upright jig, the upper one on an inverted jig. */
export const restingDepth =
  (attitude: "upright" | "inverted"): DepthOf =>
  ({ coreLowerMm, coreUpperMm }) =>
    attitude === "upright" ? coreLowerMm : coreUpperMm;
