export { applyCommand } from "./apply-command.ts";
export { checkDocument, soundProject } from "./check-document.ts";
export type {
  Command,
  FenceChanges,
  LineRef,
  NodeChanges,
  SectionChanges,
  Settings,
} from "./command-types.ts";
export { emptyProject, newFence, newProfile, newSection } from "./defaults.ts";
export { movedReferences } from "./delete-node.ts";
export { closeGesture, type History, historyOf, pushHistory, redoHistory, undoHistory } from "./history.ts";
export { coreOf, foamOf, glueOf, ribBoardOf } from "./lookups.ts";
export { nameOfCommand } from "./name-of-command.ts";
export { type ReadResult, readProject, writeProject } from "./read-project.ts";
export { resolveLines } from "./resolve-lines.ts";
export type { ResolvedLines } from "./resolved-lines.ts";
export type {
  Board,
  Cloth,
  EdgeRef,
  Fence,
  Foam,
  FollowPiece,
  Glue,
  Item,
  Origin,
  PaperName,
  PlanElement,
  PlanLine,
  PlanNode,
  Profile,
  Project,
  Resin,
  RibPlaces,
  Section,
  SideNode,
  Stock,
} from "./schema.ts";
export { CURRENT_VERSION, PaperNames, ProjectSchema } from "./schema.ts";
