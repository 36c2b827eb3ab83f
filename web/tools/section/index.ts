export { type SectionState, sectionTool } from "./section-tool.ts";
