import type { Part } from "../patterns/index.ts";
import type { GlueUnit } from "./glue-units.ts";
import type { GlueStep, StepKind } from "./types.ts";

/** One line of glue in a step. */
export interface GlueLine {
  readonly id: string;
  readonly lengthMm: number;
  readonly parts: readonly Part[];
  /** The units on both sides of it. */
  readonly units: readonly GlueUnit[];
  readonly curvedMm: number;
  readonly bevelRad: readonly [number, number];
  /** How long the taper of a scarf is that is glued. */
  readonly scarfMm?: number | undefined;
}

/** What the plan decides about a step; the rest is arithmetic. */
export interface StepDraft {
  readonly kind: StepKind;
  readonly place: GlueStep["place"];
  readonly title: string;
  readonly come: readonly GlueUnit[];
  readonly standing: readonly GlueUnit[];
  readonly why: string;
  readonly how?: readonly string[];
  readonly lines: readonly GlueLine[];
  /** Cautions besides those of the glue. */
  readonly cautions?: readonly string[];
}
