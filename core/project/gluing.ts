import type { Problem } from "../foundation/index.ts";
import { laminateOf } from "./laminate-settings.ts";
import { isWithin, type Label, RANGES, type Range } from "./limits.ts";
import { glueOf } from "./lookups.ts";
import type { Glue, Project } from "./schema.ts";

/** How joints are glued, with nothing left open but the glue, which may be missing. */
export interface Gluing {
  readonly glue: Glue | undefined;
  readonly leastCelsius: number;
  /** The shop and its hands are those of the laminate. */
  readonly shopCelsius: number;
  readonly hands: number;
  readonly heldBy: "pins" | "weights";
  readonly mostCarriedMm: number;
  readonly pinSpacingMm: number;
  readonly pinSpacingCurvedMm: number;
}

/** 15 °C is published for marine epoxies; 10 °C for one-part PU is from memory. The data sheet comes first. */
const LEAST_CELSIUS = { epoxy: 15, isocyanate: 10 } as const;
/** Longer than this two hands do not carry a glued foam sheet, mm (common practice). */
const MOST_CARRIED_MM = 2500;

/** How the joints of a project are glued: what is typed, and for the rest its default. */
export function gluingOf(project: Pick<Project, "glue" | "materials" | "laminate">): Gluing {
  const { heldBy = "pins", mostCarriedMm = MOST_CARRIED_MM, pinSpacingMm, pinSpacingCurvedMm } = project.glue;
  const glue = glueOf(project);
  const { shopCelsius, hands } = laminateOf(project);
  return {
    glue,
    leastCelsius: glue?.leastCelsius ?? LEAST_CELSIUS[glue?.hazard ?? "epoxy"],
    shopCelsius,
    hands: Math.max(1, Math.round(hands)),
    heldBy,
    mostCarriedMm,
    pinSpacingMm,
    pinSpacingCurvedMm,
  };
}

type CheckNumber = (value: number, label: Label, range: Range, fallback: number) => number;

/** What of the gluing may be absent, with a typed length that is out of its range replaced by its default. */
export function soundGluing({ heldBy, mostCarriedMm, order }: Project["glue"], number: CheckNumber) {
  const label: Label = ["glue.mostCarriedMm", "Length", "what can be carried"];
  return {
    ...(heldBy !== undefined && { heldBy }),
    ...(order !== undefined && { order }),
    ...(mostCarriedMm !== undefined && {
      mostCarriedMm: number(mostCarriedMm, label, RANGES.carriedMm, MOST_CARRIED_MM),
    }),
  };
}

/** A glue whose least temperature is out of its range goes by that of its kind. */
export function withSoundCold(glue: Glue, problems: Problem[]): Glue {
  const { leastCelsius, ...rest } = glue;
  if (leastCelsius === undefined || isWithin(leastCelsius, RANGES.shopCelsius)) return glue;
  problems.push({
    kind: "number-out-of-range",
    place: { setting: `materials.glues.${glue.id}.leastCelsius` },
    name: glue.name,
    field: "Least temperature",
    value: leastCelsius,
    ...RANGES.shopCelsius,
    used: LEAST_CELSIUS[glue.hazard],
  });
  return rest;
}
