export {
  pulledDirection,
  pulledRadius,
  radiusCommand,
  segmentCommand,
  tangentCommand,
} from "./shape-commands.ts";
export {
  type CornerGrip,
  NO_GRIPS,
  type SegmentGrip,
  type ShapeGrips,
  shapeGripsOf,
  type TangentGrip,
} from "./shape-grips.ts";
