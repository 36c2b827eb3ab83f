/** What a step is about. */
export type StepKind = "bench" | "dry fit" | "lay" | "close" | "fence" | "turn" | "fence on skin";

/** One step of the glue-up. Times are those of the shop's temperature and hands. */
export interface GlueStep {
  /** 1, 2, 3 … */
  readonly step: number;
  readonly kind: StepKind;
  readonly place: "bench" | "jig";
  readonly title: string;
  /** Ids of the strips (or parts made of them) that come in this step. */
  readonly adds: readonly string[];
  /** Joints and seams that are glued now, by id. */
  readonly joins: readonly string[];
  /** What already stands when the step begins; in a dry fit what is laid without glue. */
  readonly standing: readonly string[];
  /** Why it comes here, in one sentence. */
  readonly why: string;
  /** What is done in which order, where there is more to it than the title says. */
  readonly how: readonly string[];
  readonly lines: readonly StepLine[];
  /** In how many goes it is glued, each with fresh glue; none where nothing is glued. */
  readonly rounds: readonly GlueRound[];
  readonly glueLengthMm: number;
  readonly glueMassKg: number;
  /** What holds the joints, how many over all lines, and the closest that they stand. */
  readonly heldBy: "pins" | "weights";
  readonly pins: number;
  readonly pinSpacingMm: number;
  /** From fetching the first piece to the last pin, minutes. */
  readonly workMinutes: number;
  /** How long the glue can be worked, minutes; 0 where nothing is glued. */
  readonly openMinutes: number;
  /** Before pins and weights come off, hours. */
  readonly clampHours: number;
  /** Before a later step may load it, hours. */
  readonly waitHours: number;
  /** What has to be done before, and how long it has to have set by then. */
  readonly after: readonly StepWait[];
  readonly cautions: readonly string[];
}

/** A joint or seam that is glued in a step. */
export interface StepLine {
  readonly joinId: string;
  readonly lengthMm: number;
  /** Bevel of both edges off square at its start, rad. */
  readonly bevelRad: readonly [number, number];
  readonly pins: number;
  readonly pinSpacingMm: number;
}

/** What is spread, closed and pinned while one spread of glue is open. */
export interface GlueRound {
  readonly joins: readonly string[];
  /** From the first glue to the last pin. */
  readonly wetMinutes: number;
}

export interface StepWait {
  readonly step: number;
  readonly waitHours: number;
}
