import type { Strip } from "../cutting/index.ts";
import type { Part } from "../patterns/index.ts";
import { glueOf, type Project } from "../project/index.ts";
import { glueMassKg, slotFillingKg } from "./glue-mass.ts";
import type { GlueStep } from "./types.ts";

/** One line of glue in a step. */
export interface GlueLine {
  readonly id: string;
  readonly lengthMm: number;
  readonly parts: readonly Part[];
  readonly isCurved: boolean;
  /** How long the taper of a scarf is that is glued. */
  readonly scarfMm?: number | undefined;
}

/** What the plan decides about a step; the rest is arithmetic. */
export interface StepDraft {
  readonly place: GlueStep["place"];
  readonly title: string;
  readonly adds: readonly string[];
  readonly standing: readonly string[];
  readonly why: string;
  readonly lines: readonly GlueLine[];
  /** Strips that are bent in this step: their relief slots are glued. */
  readonly bends?: readonly Strip[];
  /** Cautions besides those of the glue. */
  readonly cautions?: readonly string[];
}

const FILL_SLOTS =
  "Glue the relief slots when the sheet is bent down, and wipe them flush: a slot left open carries no shear.";

const CAUTIONS = {
  isocyanate:
    "This glue gives off isocyanates: wear gloves, keep fresh air moving, and follow its safety data sheet.",
  epoxy:
    "Epoxy can make skin allergic for good: wear nitrile gloves and follow the safety data sheets of resin and hardener.",
  dust: "Scuffing and fairing foam makes dust: wear goggles and a dust mask.",
} as const;

/**
 * A step with its glue, pins, wait and cautions. Pins stand on both sides of a line of glue, one more than the
 * spacings in it; one spacing serves the whole step, the close one as soon as a line is curved. A step without
 * glue needs no wait.
 */
export function glueStep(draft: StepDraft, step: number, project: Project): GlueStep {
  const { lines, bends = [], cautions = [], ...rest } = draft;
  const fillingKg = slotFillingKg(bends, project);
  const glue = glueOf(project);
  const { pinSpacingMm, pinSpacingCurvedMm } = project.glue;
  const spacingMm = lines.some(({ isCurved }) => isCurved) ? pinSpacingCurvedMm : pinSpacingMm;
  const hasGlue = lines.length > 0 || fillingKg > 0;
  const hazard = hasGlue && glue !== undefined ? [CAUTIONS[glue.hazard]] : [];
  return {
    step,
    place: rest.place,
    title: rest.title,
    adds: rest.adds,
    joins: lines.map(({ id }) => id),
    standing: rest.standing,
    why: rest.why,
    glueLengthMm: lines.reduce((sum, { lengthMm }) => sum + lengthMm, 0),
    glueMassKg: lines.reduce(
      (sum, { lengthMm, parts, scarfMm }) => sum + glueMassKg(lengthMm, parts, project, scarfMm),
      fillingKg,
    ),
    pins: lines.reduce((sum, { lengthMm }) => sum + pinsAlong(lengthMm, spacingMm), 0),
    pinSpacingMm: spacingMm,
    waitHours: hasGlue ? (glue?.loadHours ?? 0) : 0,
    cautions: [
      ...cautions,
      ...(fillingKg > 0 ? [FILL_SLOTS] : []),
      ...hazard,
      ...(hasGlue ? [CAUTIONS.dust] : []),
    ],
  };
}

const pinsAlong = (lengthMm: number, spacingMm: number): number =>
  spacingMm > 0 ? 2 * (Math.ceil(lengthMm / spacingMm - 1e-9) + 1) : 0;
