export { depthAtStation, type WantedDepth } from "./depth-at-station.ts";
export { type FenceState, fenceTool } from "./fence-tool.ts";
