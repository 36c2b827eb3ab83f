export { drawnHeight } from "./drawn-height.ts";
export { drawnSelection, itemOfPart, useDrawnSelection } from "./drawn-selection.ts";
export { contextNow, followHand, hear, sightNow, useSight } from "./hand-in-use.ts";
export { sceneFor, useScene } from "./use-scene.ts";
export { wingEdgesInPlan } from "./wing-edges.ts";
export { designWithoutHidden } from "./without-hidden.ts";
