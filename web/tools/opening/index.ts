export { type Circle, circleOf, circleOutline } from "./circle.ts";
export { type OpeningState, openingTool } from "./opening-tool.ts";
