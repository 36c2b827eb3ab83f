export { checkDocument } from "./check-document.ts";
export { applyCommand, type Command, nameOfCommand } from "./commands.ts";
export { emptyProject, newFence, newProfile, newSection } from "./defaults.ts";
export { coreOf, foamOf, glueOf, ribBoardOf } from "./lookups.ts";
export { readProject, writeProject } from "./read-project.ts";
export { type ResolvedLines, resolveLines } from "./resolve-lines.ts";
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
