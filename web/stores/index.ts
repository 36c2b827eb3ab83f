export { AMomentLater } from "./a-moment-later.ts";
export { type DesignCore, type DesignStore, followDocument, useDesign } from "./design-store.ts";
export { type DocumentStore, useDocument } from "./document-store.ts";
export { type DrawingAids, useDrawingAids } from "./drawing-aids.ts";
export { type LayingStore, useLaying } from "./laying-store.ts";
export { type PlaceMenuStore, usePlaceMenu } from "./place-menu-store.ts";
export { type Pointed, usePointed } from "./pointed-store.ts";
export { type Preferences, usePreferences } from "./preferences-store.ts";
export {
  type Overlay,
  type PhoneView,
  ScaleLimits,
  type Selection,
  type StageName,
  StageNames,
  type ToolName,
  useView,
  type Viewport,
} from "./view-store.ts";
