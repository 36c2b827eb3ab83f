export { PlaceMenu } from "./PlaceMenu.tsx";
export { type HoldHandlers, useHold } from "./use-hold.ts";
