export { ALL_SNAPS, SNAP_WORDS, type SnapKind, SnapKinds, type SnapSettings } from "./snap-kinds.ts";
export { type SnapRequest, snapPlace } from "./snap-place.ts";
