export { codeOfItem, codeOfOpening } from "./codes.ts";
export { FlatRulings } from "./FlatRulings.tsx";
export { chordsAt, flatSpot, loopPoints, loopsBounds, loopsPath } from "./flat-loops.ts";
export { HatchPatterns } from "./HatchPatterns.tsx";
export { PlanAndSide } from "./PlanAndSide.tsx";
export { PlanThumbnail } from "./PlanThumbnail.tsx";
export { PlateFlat } from "./PlateFlat.tsx";
export { HATCH_COUNT, hatchFill, hatchOfItem, partFill } from "./part-hatch.ts";
export { sizeOverAll } from "./picture-layout.ts";
export {
  type Bounds,
  boundsOf,
  fitScale,
  heightOf,
  middleOf,
  pathOf,
  type Scale,
  type Spot,
  scaleOf,
  unite,
  widen,
  widthOf,
} from "./scale.ts";
export { TwistFigures, TwistSign, wordTwist } from "./TwistFigures.tsx";
export { type TrayPicture, trayPicture } from "./tray-picture.ts";
