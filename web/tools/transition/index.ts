export { edgeRefAt } from "./edge-ref-at.ts";
export { type TransitionState, transitionTool } from "./transition-tool.ts";
