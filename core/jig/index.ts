export { allRibs, boardPieces } from "./all-ribs.ts";
export type {
  BoardSheet,
  BoardShim,
  BoardSlot,
  FenceStand,
  Post,
  Release,
  ReleaseLock,
  SquareCheck,
} from "./board-types.ts";
export { bodyOfRib } from "./body-of-rib.ts";
export { buildJig } from "./build-jig.ts";
export { wordInPlace } from "./fence-stands.ts";
export { holdBends } from "./hold-bends.ts";
export { drawnPlaceMm } from "./laid/drawn-place.ts";
export { findOverBend, isOverBent, type NoOverBend, overBendProblem } from "./laid/find-over-bend.ts";
export { AS_DRAWN, laidFoam } from "./laid/laid-face.ts";
export { wordOverBend } from "./laid/word-over-bend.ts";
export { wordPlanked } from "./laid/word-planked.ts";
export { lyingFoam } from "./lie/lanes-of.ts";
export { layFoam } from "./lie/lay-foam.ts";
export { obstaclesOf } from "./lie/obstacles.ts";
export { placeRibs } from "./lie/place-ribs.ts";
export type {
  AsBuilt,
  CheckPlace,
  Lie,
  LieLimit,
  LieLine,
  LiePast,
  LieStation,
  LieWorst,
  LieWorstPush,
  RibForce,
  RibLimit,
} from "./lie/types.ts";
export { wordOpenings } from "./lie/word-openings.ts";
export { wordPast } from "./lie/word-past.ts";
export type {
  AssemblyStep,
  Baseboard,
  BendCare,
  BendHold,
  HoldDown,
  Jig,
  OverBending,
  Rib,
  RibHeight,
  RibLap,
  RibNotch,
  RibPiece,
  RibRelief,
  RibSet,
  RibSplice,
  Springback,
} from "./types.ts";
export { wordAttitude } from "./word-attitude.ts";
export { wordBend } from "./word-bend.ts";
export { wordRelease } from "./word-release.ts";
