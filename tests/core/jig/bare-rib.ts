import type { Rib } from "../../../core/jig/index.ts";

type Bare =
  | "stand"
  | "attitude"
  | "holesMm"
  | "laps"
  | "notches"
  | "reliefs"
  | "standsOn"
  | "tabs"
  | "pieces"
  | "splices";

/** A rib of an upright jig without laps, notches, holes or splices, sawn in one piece. */
export const bareRib = (rib: Omit<Rib, Bare> & Partial<Rib>): Rib => ({
  stand: "jig",
  attitude: "upright",
  holesMm: [],
  laps: [],
  notches: [],
  reliefs: [],
  standsOn: [],
  tabs: [],
  pieces: [{ id: rib.id, outlineMm: rib.outlineMm, holesMm: [] }],
  splices: [],
  ...rib,
});
