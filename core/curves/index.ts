export type { NodeField, PathProblem } from "./check-path.ts";
export { type CompiledPath, compilePath } from "./compile-path.ts";
export {
  bisected,
  largestCornerRadius,
  middleOfCorner,
  radiusThrough,
  type StraightCorner,
} from "./corner-radius.ts";
export { crossingParameters, extremeParameters } from "./crossings.ts";
export { cubicSpline, type SplineEnd, type SplineEnds, type SplineInterval } from "./cubic-spline.ts";
export { type CombTooth, curvatureComb, type TightestPlace, tightestPlace } from "./curvature-comb.ts";
export { enclosedAreaMm2, type WalkedPiece } from "./enclosed-area.ts";
export { type FlattenLimits, flattenPiece } from "./flatten.ts";
export { type Kink, kinksOf } from "./kinks.ts";
export { type CurvePlace, frameAtLength, locateLength, nodePlace, subCurve, toCurve } from "./lookup.ts";
export { middleOfPieces } from "./middle-of-pieces.ts";
export { type NearestPlace, nearestOnPiece } from "./nearest-on-piece.ts";
export { mirrorPiece, reversePiece, trimPiece } from "./piece-changes.ts";
export { parameterAtLength, pieceLengthMm } from "./piece-length.ts";
export {
  derivativeOnPiece,
  endOfPiece,
  frameOnPiece,
  pointOnPiece,
  secondDerivativeOnPiece,
  startOfPiece,
} from "./pieces.ts";
export { findSelfCrossings, type SelfCrossing } from "./self-crossings.ts";
export {
  type CompiledSpacePath,
  compileSpacePath,
  pointOnSpaceCubic,
  type SpaceCubic,
  type SpaceNode,
  velocityOnSpaceCubic,
} from "./space-path.ts";
export { splitSegment } from "./split-segment.ts";
export { type Island, subtractLoops } from "./subtract-loops.ts";
export { footParameters, tangentParameters } from "./touching-lines.ts";
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
export { walkCurve } from "./walk-curve.ts";
export { wherePiecesMeet } from "./where-pieces-meet.ts";
