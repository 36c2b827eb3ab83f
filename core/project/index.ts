export { applyCommand } from "./apply-command.ts";
export { checkDocument, soundProject } from "./check-document.ts";
export { checkRemarks } from "./check-remarks.ts";
export { dateOfDay, dayOfDate, weekdayOf } from "./civil-date.ts";
export type {
  Command,
  Copies,
  FenceChanges,
  Grip,
  LineRef,
  NodeChanges,
  NodeMove,
  NoteChanges,
  OpeningChanges,
  PlateChanges,
  SectionChanges,
  Settings,
  Standing,
  TransitionChanges,
  UnderlayChanges,
} from "./command-types.ts";
export {
  type Comparison,
  compareProjects,
  isDifferent,
  type NodeChange,
  type NodePlace,
  type ThingChange,
} from "./compare-projects.ts";
export {
  type Cutting,
  copiesOf,
  cuttingOf,
  gripsOfCopies,
  repeatCommands,
} from "./copies.ts";
export { couponProblems } from "./coupons.ts";
export { type CuttingResult, readCutting, writeCutting } from "./cutting-text.ts";
export {
  CLOSER_SPARE_MM,
  emptyProject,
  newFence,
  newOpening,
  newPlate,
  newProfile,
  newSection,
  newTransition,
} from "./defaults.ts";
export { movedReferences } from "./delete-node.ts";
export { depthAlong } from "./depth-along.ts";
export { finishOfEdge, type LetIn, letInAt } from "./edge-finishes.ts";
export { planLineOf } from "./edit-lines.ts";
export { type Gluing, gluingOf } from "./gluing.ts";
export {
  cancelGesture,
  closeGesture,
  type History,
  type HistoryStep,
  historyOf,
  jumpHistory,
  nameOfRedo,
  nameOfUndo,
  pushHistory,
  pushInGesture,
  redoHistory,
  undoHistory,
} from "./history.ts";
export { joinItems } from "./join-items.ts";
export type { JoinRefusal, JoinResult } from "./joined-item.ts";
export { type ClothPly, clothPlies, type LaminateSettings, laminateOf } from "./laminate-settings.ts";
export { type LieSettings, lieSettingsOf } from "./lie-settings.ts";
export { type Lock, lockedSectionOf, locksAgainst } from "./locks.ts";
export { coreOf, foamOf, glueOf, isPolystyrene, leastBendRatioOf, metalOf, ribBoardOf } from "./lookups.ts";
export { MAKING_DEFAULTS, type Making, makingOf, PADDING_MM, type TypedMaking } from "./making.ts";
export type { Motion } from "./motion.ts";
export { nameOfCommand, thingName } from "./name-of-command.ts";
export { type CommandWords, nameOfGesture, wordsOfCommand } from "./name-of-gesture.ts";
export { nameOfItem, nameOfNote, nameOfOpening, nameOfProfile, nameOfUnderlay } from "./names.ts";
export { type OffsetResult, offsetLine } from "./offset-line.ts";
export { ownerKey } from "./owner-key.ts";
export { measuredPanelMm } from "./panels.ts";
export { type PaperName, PaperNames, type TemplateWay, TemplateWays } from "./paper-schemas.ts";
export { nodePlace, pinPlace, textPlace, viewOfLine } from "./pin-place.ts";
export {
  cornersOfPicture,
  isOnPicture,
  laidInto,
  levelled,
  movedBy,
  type Placement,
  pixelAt,
  pixelInView,
  scaledByTwoPoints,
  turnedAbout,
} from "./place-underlay.ts";
export { type ReadResult, readProject, writeProject } from "./read-project.ts";
export { resolveLines } from "./resolve-lines.ts";
export type { ResolvedEdge, ResolvedLines, TransitionEdges } from "./resolved-lines.ts";
export type {
  AcceptedLayout,
  BendChoice,
  BendMethod,
  Board,
  Cloth,
  EdgeFinish,
  EdgeRef,
  Fence,
  Foam,
  FollowPiece,
  Glue,
  Item,
  ItemEdge,
  Laying,
  Metal,
  Note,
  Opening,
  OrderWish,
  Origin,
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
  ThingRef,
  Transition,
  TransitionEdge,
  Underlay,
  ViewPoint,
  Wing,
} from "./schema.ts";
export { CURRENT_VERSION, ProjectSchema } from "./schema.ts";
export { type Bought, soundShopping } from "./shopping.ts";
export { coversWhole } from "./split-item.ts";
export {
  allThings,
  hiddenThings,
  isProfileShown,
  type StandingOf,
  standingOf,
  thingOfLine,
} from "./standing.ts";
export { defaultTemplateWay, templateWayOf } from "./template-ways.ts";
export { leftOfCentreMm } from "./transform-things.ts";
export { type ComparisonRow, type ComparisonTables, wordComparison } from "./word-comparison.ts";
export {
  type LoggedTask,
  type WorkingHours,
  type WorkingTime,
  weekdayName,
  workingTimeOf,
} from "./working-time.ts";
export type { ReinforcementZone } from "./zones.ts";
