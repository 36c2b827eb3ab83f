export { compileEdge, reverseEdge } from "./compile-edge.ts";
export { developRuled } from "./develop-ruled.ts";
export { edgeOfFunction, straightEdge } from "./edges.ts";
export { judgeTwist, pressStrain, twistProfile } from "./judge-twist.ts";
export { areaOfRuled, lengthOnRuled } from "./measure-ruled.ts";
export { pairEdges, ruledSurface } from "./pair-edges.ts";
export { placeOnEdge } from "./place-on-edge.ts";
export { type FaceUnder, faceUnder, placeUnder } from "./place-under.ts";
export { pointOnRuled, rulingAt } from "./ruling-at.ts";
export type {
  Crease,
  Development,
  EdgePlace,
  FanApex,
  PairedEdges,
  PairingNode,
  PairingSettings,
  RuledPlace,
  RuledSurface,
  Ruling,
  SpaceEdge,
  SpacePiece,
  TwistJudgement,
  TwistSettings,
  TwistStation,
  TwistVerdict,
} from "./types.ts";
