export { type PlateState, plateTool } from "./plate-tool.ts";
