export { assert, assertNever, at } from "./assert.ts";
export {
  formatAngle,
  formatMass,
  formatMm,
  formatNumber,
  MINUS,
  roundTo,
  THIN_SPACE,
  toDegrees,
  toRadians,
} from "./format.ts";
export { keepEqual } from "./keep-equal.ts";
export { type Memory, NO_MEMORY, newMemory } from "./memory.ts";
export { polynomialRootsWithin } from "./polynomial-roots.ts";
export type { PanelBar, Problem, ProblemKind, ProblemLevel, ProblemPlace } from "./problems.ts";
export { cumulate, gauss, gaussShort, integrate, integrateWithOpenEnds } from "./quadrature.ts";
export { fail, type Outcome, type Result, succeed } from "./results.ts";
export { bracketedRoot, cubicRootsWithin, quadraticRoots } from "./roots.ts";
export { nodeLabel, sayEdge, sayNode } from "./say-node.ts";
export { type LabelBox, stepClear } from "./step-clear.ts";
export {
  CHORD_ERROR_MM,
  COINCIDENT_POINTS_MM,
  FLAT_RADIUS_MM,
  LARGEST_COORDINATE_MM,
  MOST_NODES,
  ON_CENTRE_LINE_MM,
  OUTLINE_SHORTFALL,
  PROFILE_FALLBACK_MM,
  QUADRATURE_RELATIVE,
  ROUNDING_RELATIVE,
  SMOOTH_FOLD_RAD,
} from "./tolerances.ts";
export {
  add2,
  addSpace,
  cross2,
  crossSpace,
  distance2,
  distanceFlat,
  distanceSpace,
  dot2,
  dotSpace,
  type FlatPoint,
  interpolate2,
  leftOf2,
  length2,
  lengthSpace,
  type PlanPoint,
  type SidePoint,
  type SpacePoint,
  scale2,
  subtract2,
  toPlan,
  toSide,
  unit2,
  type Vec2,
} from "./vectors.ts";
export { wordPanelBar } from "./word-panel.ts";
export { levelOf, wordProblem } from "./wording.ts";
