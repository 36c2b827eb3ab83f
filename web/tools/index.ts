export { chosenProfile } from "./chosen-profile.ts";
export type { DrawingView } from "./drawing-view.ts";
export { elementsOfLine } from "./elements-of-line.ts";
export { evaluateSum } from "./evaluate-sum.ts";
export { flattenForScreen } from "./flatten-for-screen.ts";
export { type FollowOffer, followOffers } from "./follow-offers.ts";
export { idsOf, newId } from "./new-id.ts";
export {
  findLine,
  isSameLine,
  lineKey,
  type Scene,
  type SceneEdge,
  type SceneLine,
  type SceneNode,
  sceneLinesOf,
  sceneOf,
  sceneOfLines,
  sceneOfProfile,
} from "./scene.ts";
export { moveNodeCommands } from "./select/index.ts";
export { lineOfSelection, selectLine } from "./selected-line.ts";
export { chosenKeys, targetAt } from "./target-at.ts";
export { type Hand, takeUp } from "./tools.ts";
export { directionOf } from "./typed-place.ts";
export type {
  Draft,
  Place,
  ProfileChoice,
  Selection,
  Sight,
  Snap,
  Target,
  ToolContext,
  ToolEvent,
  ToolName,
  TypedPlace,
} from "./types.ts";
export { ToolNames } from "./types.ts";
