export { buildJig } from "./build-jig.ts";
export { holdBends } from "./hold-bends.ts";
export type {
  Baseboard,
  BendCare,
  BendHold,
  HoldDown,
  Jig,
  Rib,
  RibHeight,
  Springback,
} from "./types.ts";
export { wordBend } from "./word-bend.ts";
