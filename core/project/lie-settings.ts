import { LARGEST_COORDINATE_MM, type Problem } from "../foundation/index.ts";
import { isWithin, type Label, RANGES, type Range } from "./limits.ts";
import type { Project } from "./schema.ts";

/** What is asked of foam that lies on the ribs, with nothing left open. */
export interface LieSettings {
  readonly toleranceMm: number;
  readonly pushN: number;
  readonly wetKgPerM2: number;
  /** Past a free edge that a bend reaches. */
  readonly runPastMm: number;
}

/** Form tolerance and push are common practice; so is the wet skin where none is drawn. */
const TOLERANCE_MM = 1;
const PUSH_N = 30;
const WET_KG_PER_M2 = 1.2;
/** Foam runs past a bent edge by this share of a span, and no less than this (both common practice). */
const RUN_PAST_SPANS = 1 / 3;
const LEAST_RUN_PAST_MM = 60;
/** Before ribs are placed they are taken to stand so far apart, mm. */
const USUAL_SPAN_MM = 300;

/** Glass and epoxy laid by hand, a third of it glass by volume: 1640 kg/m³ (a figure from memory). */
const LAMINATE_KG_PER_M3 = 1640;

/**
 * What is asked of the foam on its ribs. The skin that is wet on it is the one that is laid on the jig: the upper one on an
 * upright jig, the lower one on an inverted one.
 */
export function lieSettingsOf({ jig, skins }: Pick<Project, "jig" | "skins">): LieSettings {
  const { toleranceMm = TOLERANCE_MM, pushN = PUSH_N, wetKgPerM2, runPastMm } = jig.lie ?? {};
  const skinMm = jig.attitude === "upright" ? skins.upperMm : skins.lowerMm;
  const drawn = skinMm > 0 ? (skinMm / 1000) * LAMINATE_KG_PER_M3 : WET_KG_PER_M2;
  return {
    toleranceMm,
    pushN,
    wetKgPerM2: wetKgPerM2 ?? drawn,
    runPastMm: runPastMm ?? Math.round(Math.max(LEAST_RUN_PAST_MM, RUN_PAST_SPANS * spanMm(jig.across))),
  };
}

/** The widest span between ribs across, before it is known where they stand. */
function spanMm(across: Project["jig"]["across"]): number {
  if (across.kind === "spacing") return across.spacingMm;
  if (across.kind !== "typed" || across.atMm.length < 2) return USUAL_SPAN_MM;
  const placesMm = across.atMm.toSorted((a, b) => a - b);
  return Math.max(...placesMm.slice(1).map((mm, i) => mm - (placesMm[i] ?? mm)));
}

type Lie = NonNullable<Project["jig"]["lie"]>;
type CheckNumber = (value: number, label: Label, range: Range, fallback: number) => number;

const NUMBERS = [
  ["toleranceMm", "Form tolerance", "the foam on the ribs", RANGES.formToleranceMm, TOLERANCE_MM],
  ["pushN", "Push", "a hand on the foam", RANGES.pushN, PUSH_N],
  ["wetKgPerM2", "Mass", "the wet skin", RANGES.wetKgPerM2, WET_KG_PER_M2],
  ["runPastMm", "Length", "the foam that runs past a bent edge", RANGES.runPastMm, LEAST_RUN_PAST_MM],
] as const;

const COORDINATE: Range = { least: -LARGEST_COORDINATE_MM, most: LARGEST_COORDINATE_MM };

/** The settings with every typed number that is out of its range replaced by its default. */
export function soundLie(lie: Lie, number: CheckNumber): Lie {
  const sound = NUMBERS.flatMap(([key, field, of, range, fallback]) => {
    const value = lie[key];
    return value === undefined ? [] : [[key, number(value, [`jig.lie.${key}`, field, of], range, fallback)]];
  });
  const { overBend } = lie;
  const { keepXMm } = overBend ?? {};
  const place: Label = ["jig.lie.overBend.keepXMm", "Place that stays", "the ribs"];
  const kept = keepXMm === undefined ? {} : { overBend: { keepXMm: number(keepXMm, place, COORDINATE, 0) } };
  return { ...lie, ...Object.fromEntries(sound), ...kept };
}

/** Measured heights without those that cannot be one; each of these is a problem. */
export function soundAsBuilt(
  measured: NonNullable<Project["asBuilt"]>,
  problems: Problem[],
): NonNullable<Project["asBuilt"]> {
  const range = RANGES.measuredMm;
  return measured.filter(({ x, y, heightMm }, i) => {
    if (isWithin(heightMm, range) && Number.isFinite(x) && Number.isFinite(y)) return true;
    problems.push({
      kind: "number-out-of-range",
      place: { setting: "asBuilt" },
      name: "the laid foam",
      field: `Height ${i + 1}`,
      value: heightMm,
      ...range,
    });
    return false;
  });
}
