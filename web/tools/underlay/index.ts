export { turnPictureCommands, type UnderlayState, underlayTool } from "./underlay-tool.ts";
