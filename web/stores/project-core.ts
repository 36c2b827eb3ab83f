export type { History } from "./project-stand-in.ts";
export {
  applyCommand,
  emptyProject,
  historyOf,
  nameOfCommand,
  pushHistory,
  redoHistory,
  undoHistory,
} from "./project-stand-in.ts";
