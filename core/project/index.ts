export { applyCommand } from "./apply-command.ts";
export { checkDocument, soundProject } from "./check-document.ts";
export type {
  Command,
  FenceChanges,
  LineRef,
  NodeChanges,
  OpeningChanges,
  PlateChanges,
  SectionChanges,
  Settings,
  TransitionChanges,
} from "./command-types.ts";
export {
  emptyProject,
  newFence,
  newOpening,
  newPlate,
  newProfile,
  newSection,
  newTransition,
} from "./defaults.ts";
export { movedReferences } from "./delete-node.ts";
export { planLineOf } from "./edit-lines.ts";
export { closeGesture, type History, historyOf, pushHistory, redoHistory, undoHistory } from "./history.ts";
export { coreOf, foamOf, glueOf, metalOf, ribBoardOf } from "./lookups.ts";
export { nameOfCommand } from "./name-of-command.ts";
export { nameOfItem, nameOfOpening } from "./names.ts";
export { type ReadResult, readProject, writeProject } from "./read-project.ts";
export { resolveLines } from "./resolve-lines.ts";
export type { ResolvedEdge, ResolvedLines, TransitionEdges } from "./resolved-lines.ts";
export type {
  Board,
  Cloth,
  EdgeRef,
  Fence,
  Foam,
  FollowPiece,
  Glue,
  Item,
  ItemEdge,
  Metal,
  Opening,
  Origin,
  PaperName,
  PlanElement,
  PlanLine,
  PlanNode,
  Plate,
  Profile,
  Project,
  Resin,
  RibPlaces,
  Section,
  SideNode,
  SpaceNode,
  Stock,
  Transition,
  TransitionEdge,
  Wing,
} from "./schema.ts";
export { CURRENT_VERSION, PaperNames, ProjectSchema } from "./schema.ts";
