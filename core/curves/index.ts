export { compilePath, type PathProblem } from "./compile-path.ts";
export { crossingParameters, extremeParameters } from "./crossings.ts";
export { flattenPiece } from "./flatten.ts";
export { frameAtLength, locateLength, nodePlace, subCurve, toCurve } from "./lookup.ts";
export {
  derivativeOnPiece,
  endOfPiece,
  mirrorPiece,
  pieceLengthMm,
  pointOnPiece,
  reversePiece,
  secondDerivativeOnPiece,
  startOfPiece,
  trimPiece,
} from "./pieces.ts";
export { findSelfCrossings, type SelfCrossing } from "./self-crossings.ts";
export { splitSegment } from "./split-segment.ts";
export type {
  ArcPiece,
  CubicPiece,
  Curve,
  CurveFrame,
  CurvePiece,
  LinePiece,
  Path,
  PathElement,
  PathNode,
  PathStretch,
} from "./types.ts";
