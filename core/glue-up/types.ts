/** One step of the glue-up. */
export interface GlueStep {
  /** 1, 2, 3 … */
  readonly step: number;
  readonly place: "bench" | "jig";
  readonly title: string;
  /** Ids of the strips (or parts made of them) that come in this step. */
  readonly adds: readonly string[];
  /** Joints and seams that are glued now, by id. */
  readonly joins: readonly string[];
  /** What already stands when the step begins. */
  readonly standing: readonly string[];
  /** Why it comes here, in one sentence. */
  readonly why: string;
  readonly glueLengthMm: number;
  readonly glueMassKg: number;
  readonly pins: number;
  readonly pinSpacingMm: number;
  /** Before the next step may load it, hours at 20 °C. */
  readonly waitHours: number;
  readonly cautions: readonly string[];
}
