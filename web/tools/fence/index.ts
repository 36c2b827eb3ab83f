export { type FenceState, fenceTool } from "./fence-tool.ts";
