export { insertIntoEdge } from "./edit-chosen.ts";
export { heightRule } from "./height-rule.ts";
export { moveNodeCommands } from "./move-node-commands.ts";
export { type SelectState, selectTool } from "./select-tool.ts";
