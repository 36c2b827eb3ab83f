import type { BendZone, ZoneBend, ZoneLimits, ZoneSlots } from "../bending/index.ts";
import { formatAngle, formatMm, formatNumber, THIN_SPACE } from "../foundation/index.ts";
import type { Project } from "../project/index.ts";
import { wordPast } from "./lie/word-past.ts";
import type { BendCare, BendHold, HoldDown, Springback } from "./types.ts";

/** Where a bend lies on its strip, as a length along its datum. */
type AlongMm = (uMm: number) => number;

/**
 * What a builder must know of one bend, in sentences: why its verdict is what it is, how it is made, how it is held, what
 * it gives back, and what wants care. Places are told along `alongMm`. Nothing where it stays flat.
 */
export function wordBend(
  zone: BendZone,
  hold: BendHold | undefined,
  { jig }: Pick<Project, "jig">,
  alongMm: AlongMm,
): readonly string[] {
  const { bend } = zone;
  if (!bend) return [];
  return [
    wordVerdict(zone, bend),
    ...(bend.slots ? wordSlots(bend.slots, jig.attitude, alongMm) : []),
    ...(bend.planks ? [wordPlanks(zone, bend)] : []),
    ...(hold?.holdDown ? [wordHold(hold.holdDown)] : []),
    ...(hold?.springback ? [wordSpringback(hold.springback)] : []),
    ...(hold?.cares ?? []).map((care) => wordCare(care, alongMm)),
  ];
}

const percent = (share: number, decimals = 1): string =>
  `${formatNumber(share * 100, decimals)}${THIN_SPACE}%`;

/** `57.5`, or `52.0 to 54.1` where the ends are told apart. */
function span(values: readonly number[], format: (value: number) => string): string {
  const [least, most] = [format(Math.min(...values)), format(Math.max(...values))];
  return least === most ? least : `${least} to ${most}`;
}

function wordVerdict(zone: BendZone, { turnRad, limits, chosen }: ZoneBend): string {
  const { verdict, leastRadiusMm = 0, strain } = zone;
  const cold = `this foam bends cold to R ${formatNumber(limits.coldRadiusMm, 0)} (${FROM[limits.coldFrom]})`;
  const bend = `It turns ${formatAngle(turnRad)}, at its tightest R ${formatNumber(leastRadiusMm, 0)}`;
  const why = `${bend}, which strains the foam by ${percent(strain, 2)} if it is bent whole; ${cold}.`;
  const choice = chosen === undefined ? "" : ` You chose: ${chosen}.`;
  return `${why}${verdict === "bend cold" ? "" : ` ${wordLimits(limits)}`}${choice}`;
}

const FROM = {
  published: "a published figure",
  "published-weak": "a published figure on thin grounds",
  "common-practice": "common practice",
  memory: "a usual figure without a source",
  typed: "typed by you",
  test: "your test on scrap",
} as const satisfies Record<ZoneLimits["coldFrom"], string>;

function wordLimits({ slots, planks }: ZoneLimits): string {
  const words = [
    slots &&
      `Slots: their web bends to R ${formatNumber(slots.webRadiusMm, 0)} and takes R ${formatNumber(slots.leastWebRadiusMm, 0)}${
        slots.toothMm === undefined
          ? ""
          : `; ${formatMm(slots.toothMm)} mm of foam stand between two, ${formatMm(slots.leastToothMm)} are needed`
      }.`,
    planks &&
      `Planks: the narrowest would be ${formatMm(planks.widthMm)} mm wide, ${formatMm(planks.leastWidthMm)} are needed.`,
  ];
  return words.filter((word) => word !== undefined).join(" ");
}

function wordSlots(
  slots: ZoneSlots,
  attitude: Project["jig"]["attitude"],
  alongMm: AlongMm,
): readonly string[] {
  const { side, face, kerfMm, depthMm, webMm, placesUMm, turnRad, closingRad, mouthMm, polygonMm } = slots;
  const places = placesUMm.map(alongMm);
  const [first, last] = [Math.min(...places), Math.max(...places)];
  const pitch = slots.pitchMm ? `, ${span(slots.pitchMm, formatMm)} apart at the web` : "";
  const each = places.length === 1 ? "it" : "each";
  const closes =
    side === "closing"
      ? `${each} closes by ${formatAngle(turnRad)} of the ${formatAngle(closingRad)} until it is shut, so that ${wordMouth(mouthMm)}`
      : `${each} opens by ${formatAngle(turnRad)}, to ${formatMm(mouthMm)} mm at its mouth, and is filled after`;
  const count = `${places.length} ${side} ${places.length === 1 ? "slot" : "slots"}`;
  const where =
    places.length === 1
      ? `at ${formatMm(first)}`
      : `the first at ${formatMm(first)}, the last at ${formatMm(last)}`;
  const filled =
    slots.filling === "glued"
      ? "Glue them when the sheet is bent, and wipe them flush."
      : "They are to be left open: the sheet has no shear strength there.";
  return [
    `${count} into the ${face}, ${formatMm(depthMm)} mm deep with a ${formatMm(kerfMm)} mm blade, leaving ${formatMm(webMm)} mm of web; ${where}${pitch}; ${closes}. Between slots the sheet stays straight, ${formatNumber(polygonMm, 2)} mm off the curve at most.`,
    `${wordFaceUp(face, attitude)} ${filled}`,
  ];
}

const wordMouth = (mouthMm: number): string =>
  mouthMm < 0
    ? `${formatMm(-mouthMm)} mm of foam is crushed at its mouth`
    : `${formatMm(mouthMm)} mm of its mouth stays open`;

/** Which way the slots look on the jig: upright it carries the lower face, inverted the upper one. */
function wordFaceUp(face: ZoneSlots["face"], attitude: Project["jig"]["attitude"]): string {
  if (face === "inboard face" || face === "outboard face")
    return `On the jig the slots look ${face.split(" ")[0]}.`;
  const isUp = (face === "upper face") === (attitude === "upright");
  return `On the ${attitude} jig the slots look ${isUp ? "up" : "down"}: the ${face} is ${isUp ? "up" : "on the ribs"}.`;
}

function wordPlanks({ inside }: BendZone, { planks = [] }: ZoneBend): string {
  const widths = planks.map(({ fromUMm, toUMm }) => toUMm - fromUMm);
  const bevels = planks.flatMap(({ bevelsRad }) => bevelsRad);
  const sagittas = planks.map(({ sagittaMm }) => sagittaMm);
  return `${planks.length} ${planks.length === 1 ? "plank" : "planks"}, ${span(widths, formatMm)} mm wide, each flat and a strip of its own; bevels of ${span(bevels, formatAngle)}, the ${inside ?? "inner face"} the shorter one; ${formatNumber(Math.max(...sagittas), 2)} mm off the curve at most. Sand the corners off when they are glued.`;
}

/** Less than this is told as nothing. */
const LEAST_LIFT_N = 0.05;

function wordHold({ momentPerMm, widthMm, leverMm, ribId, forceN, by, eachN, count }: HoldDown): string {
  if (ribId !== undefined && forceN < LEAST_LIFT_N)
    return `Bending ${formatNumber(widthMm, 0)} mm of its width takes ${formatNumber(momentPerMm, 2)} N mm a mm; on these ribs its own weight and the wet skin's hold it down.`;
  const each = { sandbags: "sandbag", straps: "strap", screws: "screw with its washer" }[by];
  const need =
    count === null
      ? `nothing holds it: type what a ${each} holds`
      : `${count} ${count === 1 ? each : by} of ${formatNumber(eachN, 0)} N`;
  return `Bending ${formatNumber(widthMm, 0)} mm of its width takes ${formatNumber(momentPerMm, 2)} N mm a mm; ${ribId === undefined ? `a rib ${formatNumber(leverMm, 0)} mm away is` : `the foam would lift off rib ${ribId}, which is`} held down with ${formatNumber(forceN, 1)} N: ${need}. Pins only locate until you type what one holds.`;
}

const wordSpringback = (s: Springback): string =>
  `Let go after one skin it would give back ${percent(s.oneSkin)} of the bend (R ${formatNumber(s.radiusAfterOneMm, 0)}), with both ${percent(s.bothSkins)} (R ${formatNumber(s.radiusAfterBothMm, 0)}). To be left with the drawn radius, bend to R ${formatNumber(s.overBentOneMm, 0)} for one skin, R ${formatNumber(s.overBentBothMm, 0)} for both. Leave it on the jig until the second skin has cured.`;

function wordCare(care: BendCare, alongMm: AlongMm): string {
  switch (care.kind) {
    case "wrong way first":
      return `Care: the next bend turns the other way after ${formatMm(care.gapMm)} mm, less than ${formatMm(care.leastMm)}: holding this one bends that one the wrong way first. Bend both at once over the ribs.`;
    case "runs past":
      return wordPast(care);
    case "near the edge":
      return `Care: only ${formatMm(care.leftMm)} mm of flat to the free edge, and ${formatMm(care.leastMm)} are needed to hold it. Let the foam run past the trim line over a further rib, and trim it after the first skin.`;
    case "across a seam":
      return `Care: seam ${care.seamId} runs through the bend. Let its glue cure fully, and lay the seam on a rib.`;
    case "slot near an edge":
      return `Care: the slot at ${formatMm(alongMm(care.slotUMm))} is ${formatMm(care.distanceMm)} mm from ${care.edgeName}, less than three pitches (${formatMm(care.clearMm)} mm): foam breaks out there when it is bent.`;
  }
}
