export { edgeRefAt } from "./edge-ref-at.ts";
export { type EdgeEnd, endsOfEdges } from "./ends-of-edges.ts";
export { type TransitionState, transitionTool } from "./transition-tool.ts";
