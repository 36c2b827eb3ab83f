export { chosenProfile } from "./chosen-profile.ts";
export { type Comb, combsOf, wordComb } from "./comb/index.ts";
export { describeDrawing, describeSelection, nameOfSelection } from "./describe/index.ts";
export { type Dimension, type DimensionEdit, dimensionsOf, totalLength } from "./dimensions/index.ts";
export type { DrawingView } from "./drawing-view.ts";
export { wordEdge, wordItem } from "./edge-words.ts";
export { elementsOfLine } from "./elements-of-line.ts";
export { depthAtStation } from "./fence/index.ts";
export { flattenForScreen } from "./flatten-for-screen.ts";
export { type FollowOffer, followOffers } from "./follow-offers.ts";
export { idsOf, itemIdsOf, newId, takenIds } from "./new-id.ts";
export {
  isBlock,
  type NodeColumn,
  nodeTableOf,
  pasteBlock,
  readBlock,
  writeNodeTable,
} from "./node-table/index.ts";
export { type Circle, circleOf, circleOutline } from "./opening/index.ts";
export {
  findLine,
  inView,
  isSameLine,
  lineKey,
  ownerKey,
  type Scene,
  type SceneEdge,
  type SceneLine,
  type SceneNode,
} from "./scene.ts";
export { sceneLinesOf, sceneOf, sceneOfLines, sceneOfOpening, sceneOfProfile } from "./scene-lines.ts";
export { heightRule, insertIntoEdge, moveNodeCommands } from "./select/index.ts";
export {
  chosenEdgeId,
  chosenNodeId,
  type DrawnSelection,
  isDrawn,
  lineOfSelection,
  selectLine,
} from "./selected-line.ts";
export {
  chosenNodesByLine,
  chosenOwnersOf,
  gripKey,
  gripsOf,
  selectGrips,
  wholeOf,
} from "./several.ts";
export {
  type CornerGrip,
  pulledDirection,
  pulledRadius,
  radiusCommand,
  type SegmentGrip,
  segmentCommand,
  shapeGripsOf,
  type TangentGrip,
  tangentCommand,
} from "./shaping/index.ts";
export {
  ALL_SNAPS,
  SNAP_WORDS,
  type SnapKind,
  SnapKinds,
  type SnapSettings,
  snapPlace,
} from "./snaps/index.ts";
export { LEAST_STRONG_PX, marksBetween } from "./stations.ts";
export { chosenOwner, targetAt } from "./target-at.ts";
export { type Hand, takeUp } from "./tools.ts";
export { type EdgeEnd, edgeRefAt, endsOfEdges } from "./transition/index.ts";
export { directionOf, segmentFigures } from "./typed-place.ts";
export type {
  Draft,
  EdgeWay,
  OpeningShape,
  PictureTask,
  Place,
  ProfileChoice,
  Selection,
  ShownEdge,
  Sight,
  Snap,
  SnapSign,
  Target,
  ToolContext,
  ToolEvent,
  ToolName,
  TypedPlace,
  WingEdgeInPlan,
} from "./types.ts";
export { ToolNames } from "./types.ts";
export { turnPictureCommands } from "./underlay/index.ts";
