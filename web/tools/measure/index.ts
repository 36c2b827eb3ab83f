export { type MeasureState, measureTool } from "./measure-tool.ts";
