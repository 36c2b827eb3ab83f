import type { BendMethod } from "../project/index.ts";
import type { BendLine, FibreStretch } from "../surfaces/index.ts";
import type { SlotSide } from "./relief-slots.ts";
import { type Span, turnTable } from "./stretch-curve.ts";
import type { BendFace, BendVerdict, ZoneBend, ZonePlank, ZoneSlots } from "./types.ts";
import { type BendGround, type PlanksTried, type SlotsTried, tryPlanks, trySlots } from "./ways-to-bend.ts";

/** A stretch of a sheet that bends one way, along the middle of its foam. */
export interface BentSpan extends Span {
  readonly leastRadiusMm: number;
  readonly isTight: boolean;
  readonly inside: BendFace;
  readonly outside: BendFace;
}

/** How a stretch is made: its verdict, its figures, and where its flat is not that of the middle of the foam. */
export interface JudgedSpan {
  readonly verdict: BendVerdict;
  readonly bend: ZoneBend;
  readonly stretches: readonly FibreStretch[];
  /** Where its slots and planks count from, along the middle of the foam. */
  readonly startMm: number;
}

/**
 * The verdict on a bent stretch: as the builder chose, else cold where the foam takes it, slots where their web and the
 * foam between them stand, planks where they are wide enough, and else not with this foam. Slots and planks are laid in the
 * share of the stretch that the sheet's outline covers; their places in flat u count from its start.
 */
export function judgeSpan(line: BendLine, span: BentSpan, covered: Span, ground: BendGround): JudgedSpan {
  const choice = choiceFor(line, span, ground);
  const chosen = choice?.method;
  const within = {
    ...span,
    fromMm: Math.max(span.fromMm, covered.fromMm),
    toMm: Math.min(span.toMm, covered.toMm),
  };
  const asksMore = span.isTight || (chosen !== undefined && chosen !== "bend cold");
  const isCovered = within.toMm - within.fromMm > 1e-6;
  const table = asksMore && isCovered ? turnTable(line, within) : undefined;
  const slots = table && trySlots(table, span.leastRadiusMm, sideOf(chosen, ground), ground);
  const planks = table && tryPlanks(table, ground);
  const startMm = within.fromMm;
  const way = wayOf(span, chosen, slots, planks);
  const bend: ZoneBend = {
    turnRad: Math.abs(line.turnAt(span.toMm) - line.turnAt(span.fromMm)),
    atMm: line.placeAt((span.fromMm + span.toMm) / 2),
    ...(choice && { chosen: choice.method, chosenAtMm: choice.atMm }),
    limits: {
      coldRadiusMm: ground.leastBendRatio * ground.thicknessMm,
      coldFrom: ground.ratioFrom,
      ...(slots && { slots: slots.limits }),
      ...(planks && { planks: planks.limits }),
    },
  };
  if (way === "relief slots" && slots)
    return {
      verdict: way,
      bend: { ...bend, slots: slotsOf(slots, span, ground) },
      stretches: [{ fromMm: span.fromMm, toMm: span.toMm, offsetMm: slots.offsetMm, scale: 1 }],
      startMm,
    };
  if (way === "planks" && planks) {
    const stretches = planks.planks.map(
      ({ fromMm, toMm, widthMm }): FibreStretch => ({
        fromMm: startMm + fromMm,
        toMm: startMm + toMm,
        offsetMm: 0,
        scale: widthMm / (toMm - fromMm),
      }),
    );
    return { verdict: way, bend: { ...bend, planks: planksOf(planks) }, stretches, startMm };
  }
  return { verdict: way, bend, stretches: [], startMm };
}

const choiceFor = (
  line: BendLine,
  { fromMm, toMm }: Span,
  { choices }: BendGround,
): BendGround["choices"][number] | undefined =>
  choices.find(({ atMm }) => {
    const middleMm = line.middleAt(atMm);
    return middleMm >= fromMm && middleMm <= toMm;
  });

const sideOf = (chosen: BendMethod | undefined, { bending }: BendGround): SlotSide =>
  chosen === "closing slots" ? "closing" : chosen === "opening slots" ? "opening" : bending.slotSide;

function wayOf(
  { isTight }: BentSpan,
  chosen: BendMethod | undefined,
  slots: SlotsTried | undefined,
  planks: PlanksTried | undefined,
): BendVerdict {
  switch (chosen) {
    case "bend cold":
      return "bend cold";
    case "closing slots":
    case "opening slots":
      return slots ? "relief slots" : "not with this foam";
    case "planks":
      return planks ? "planks" : "not with this foam";
    case undefined:
      if (!isTight) return "bend cold";
      if (slots?.isSound) return "relief slots";
      return planks?.isSound ? "planks" : "not with this foam";
  }
}

function slotsOf(
  { pattern, webMm }: SlotsTried,
  { inside, outside }: BentSpan,
  { bending }: BendGround,
): ZoneSlots {
  const { placesMm, ...figures } = pattern;
  return {
    ...figures,
    face: pattern.side === "closing" ? inside : outside,
    webMm,
    placesUMm: placesMm,
    filling: bending.slotFilling,
  };
}

function planksOf({ planks }: PlanksTried): readonly ZonePlank[] {
  let fromUMm = 0;
  return planks.map(({ widthMm, bevelsRad, sagittaMm }) => {
    const start = fromUMm;
    fromUMm += widthMm;
    return { fromUMm: start, toUMm: fromUMm, bevelsRad, sagittaMm };
  });
}
