import type { GlueStep } from "../../../core/glue-up/index.ts";

/** A step of the glue-up in which a piece is laid and nothing is glued, with whatever a test wants of it. */
export const bareStep = (changes: Partial<GlueStep>): GlueStep => ({
  step: 1,
  kind: "lay",
  place: "jig",
  title: "Lay a sheet on the jig",
  adds: [],
  joins: [],
  standing: [],
  why: "It rests on ribs.",
  how: [],
  lines: [],
  rounds: [],
  glueLengthMm: 0,
  glueMassKg: 0,
  heldBy: "pins",
  pins: 0,
  pinSpacingMm: 100,
  workMinutes: 5,
  openMinutes: 0,
  clampHours: 0,
  waitHours: 0,
  after: [],
  cautions: [],
  ...changes,
});
