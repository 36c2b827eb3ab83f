export { emptyProject } from "../../core/project/defaults.ts";
export {
  closeGesture,
  type History,
  historyOf,
  pushHistory,
  redoHistory,
  undoHistory,
} from "../../core/project/history.ts";
export { readProject, writeProject } from "../../core/project/read-project.ts";
export { applyCommand } from "./project-stand-in.ts";
