import type { Strip } from "../cutting/index.ts";
import type { Gluing, Project } from "../project/index.ts";
import { glueMassKg, slotFillingKg } from "./glue-mass.ts";
import { glueRounds } from "./glue-rounds.ts";
import { type GlueTimes, glueTimes } from "./glue-times.ts";
import { type GlueUnit, unitMassKg } from "./glue-units.ts";
import { roundWords } from "./glue-words.ts";
import { holdLine } from "./hold-line.ts";
import type { GlueLine, StepDraft } from "./step-draft.ts";
import { dryFitMinutes, layMinutes, readyMinutes, slotMinutes, turnMinutes } from "./step-minutes.ts";
import { stepWaits } from "./step-waits.ts";
import type { GlueStep, StepLine } from "./types.ts";

const FILL_SLOTS =
  "Glue the relief slots when the sheet is bent down, and wipe them flush: a slot left open carries no shear.";

const CAUTIONS = {
  isocyanate:
    "This glue gives off isocyanates: wear gloves, keep fresh air moving, and follow its safety data sheet.",
  epoxy:
    "Epoxy can make skin allergic for good: wear nitrile gloves and follow the safety data sheets of resin and hardener.",
  dust: "Scuffing and fairing foam makes dust: wear goggles and a dust mask.",
} as const;

/** The drafts as steps, each with its glue, pins, times, waits and cautions. A step without glue sets nothing. */
export function glueSteps(
  drafts: readonly StepDraft[],
  project: Project,
  gluing: Gluing,
): readonly GlueStep[] {
  const times = glueTimes(gluing.glue, gluing.shopCelsius);
  return drafts.map((draft, i) => ({
    ...glueStep(draft, i + 1, { project, gluing, times }),
    after: stepWaits(drafts, i, times),
  }));
}

interface Shop {
  readonly project: Project;
  readonly gluing: Gluing;
  readonly times: GlueTimes;
}

function glueStep(draft: StepDraft, step: number, shop: Shop): Omit<GlueStep, "after"> {
  const { project, gluing, times } = shop;
  const { kind, place, title, why, lines, come, cautions = [], how = [] } = draft;
  const fillingKg = slotFillingKg(bentStrips(draft), project);
  const inTurn = fromWhatStands(draft);
  const held = lines
    .map((line) => ({ ...line, ...holdLine(line, gluing), unitId: comesWith(line, inTurn) }))
    .toSorted((a, b) => turnOf(a.unitId, inTurn) - turnOf(b.unitId, inTurn));
  const hasGlue = lines.length > 0 || fillingKg > 0;
  const rounds = glueRounds(held, times.openMinutes, gluing.hands);
  const hazard = hasGlue && gluing.glue !== undefined ? [CAUTIONS[gluing.glue.hazard]] : [];
  return {
    step,
    kind,
    place,
    title,
    adds: place === "bench" ? come.flatMap(({ strips }) => strips.map(({ id }) => id)) : addsOf(come),
    joins: lines.map(({ id }) => id),
    standing: addsOf(draft.standing),
    why,
    how: [...how, ...roundWords(rounds, times.openMinutes)],
    lines: held.map(
      ({ id, lengthMm, bevelRad, pins, spacingMm }): StepLine => ({
        joinId: id,
        lengthMm,
        bevelRad,
        pins,
        pinSpacingMm: spacingMm,
      }),
    ),
    rounds,
    glueLengthMm: sum(lines.map(({ lengthMm }) => lengthMm)),
    glueMassKg:
      fillingKg +
      sum(lines.map(({ lengthMm, parts, scarfMm }) => glueMassKg(lengthMm, parts, project, scarfMm))),
    heldBy: gluing.heldBy,
    pins: sum(held.map(({ pins }) => pins)),
    pinSpacingMm: held.reduce((least, { spacingMm }) => Math.min(least, spacingMm), gluing.pinSpacingMm),
    workMinutes:
      ownMinutes(draft, shop) +
      readyMinutes(held, gluing.hands) +
      sum(rounds.map(({ wetMinutes }) => wetMinutes)),
    openMinutes: hasGlue ? times.openMinutes : 0,
    clampHours: hasGlue ? times.clampHours : 0,
    waitHours: hasGlue ? times.loadHours : 0,
    cautions: [
      ...cautions,
      ...(fillingKg > 0 ? [FILL_SLOTS] : []),
      ...hazard,
      ...(hasGlue ? [CAUTIONS.dust] : []),
    ],
  };
}

/** Strips whose relief slots close in a step: sheets are bent on the jig. */
const bentStrips = ({ place, come }: Pick<StepDraft, "place" | "come">): readonly Strip[] =>
  place === "jig" ? come.flatMap(({ strips }) => strips) : [];

/** What a step takes besides its joints, minutes. */
function ownMinutes(
  { kind, place, come, standing }: StepDraft,
  { project, gluing: { hands } }: Shop,
): number {
  if (kind === "turn") return turnMinutes;
  if (kind === "dry fit") return dryFitMinutes(standing, hands);
  const laying = layMinutes(
    come.map((unit) => unitMassKg(unit, project)),
    hands,
  );
  return laying + slotMinutes(slotLengthMm(bentStrips({ place, come })), hands);
}

const slotLengthMm = (strips: readonly Strip[]): number =>
  sum(strips.flatMap(({ slots = [] }) => slots.map(({ lengthMm }) => lengthMm)));

/** Pieces that come in one step, in the order of their gluing: it begins at what stands already. */
function fromWhatStands({ come, standing, lines }: StepDraft): readonly GlueUnit[] {
  const meets = (unit: GlueUnit | undefined) =>
    unit !== undefined &&
    lines.some(({ units }) => units.includes(unit) && units.some((other) => standing.includes(other)));
  return meets(come.at(-1)) && !meets(come[0]) ? come.toReversed() : come;
}

/** The piece that a line of glue comes with: the last of those that come and touch it. */
const comesWith = ({ units }: GlueLine, inTurn: readonly GlueUnit[]): string =>
  inTurn.findLast((unit) => units.includes(unit))?.id ?? "";

const turnOf = (unitId: string, inTurn: readonly GlueUnit[]): number =>
  inTurn.findIndex(({ id }) => id === unitId);

const addsOf = (units: readonly GlueUnit[]): readonly string[] => units.flatMap(({ adds }) => adds);

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
