import { formatAngle, formatMm, formatNumber } from "../foundation/index.ts";
import type { Gluing } from "../project/index.ts";
import { glueTimes } from "./glue-times.ts";
import { list } from "./say-why.ts";
import type { GlueRound, GlueStep, StepLine } from "./types.ts";

/**
 * How every joint is glued with the chosen glue, said once before the steps. Scuffing, misting, glue kept back and slivers
 * in wide gaps are published (weakly); coating both faces and not starving a joint of epoxy are published.
 */
export function glueHow({ glue, shopCelsius, heldBy, pinSpacingCurvedMm }: Gluing): readonly string[] {
  if (glue === undefined) return [];
  const { openMinutes, clampHours, loadHours } = glueTimes(glue, shopCelsius);
  const hours = (value: number) => formatNumber(value, value < 9.95 ? 1 : 0);
  return [
    `${glue.name} at ${formatNumber(shopCelsius, 0)} °C: every joint is shut and held within ${formatNumber(Math.floor(openMinutes), 0)} min of the first spread, held for ${hours(clampHours)} h, and loaded after ${hours(loadHours)} h. The glue's data sheet comes before these figures.`,
    `Fit each joint dry first: the gap under ${formatMm(glue.gapLimitMm)} mm by feeler. Fill a wider place with a sliver of the same foam. Scuff both edges, vacuum them; no solvent.`,
    glue.hazard === "isocyanate"
      ? "Mist one edge with water, spread the glue on the other. Keep it 3 mm back from faces that will be sanded: what foams out there sets harder than the foam and stands proud."
      : "Thicken the epoxy until it does not run. Coat both edges, shut the joint until a bead shows all along, and press no harder: a joint that is squeezed dry is starved. Wipe the bead off.",
    heldBy === "pins"
      ? `Pins go in on both sides of the joint, crossed, the first at its very ends; there and where it bends they stand ${formatNumber(pinSpacingCurvedMm, 0)} mm apart.`
      : "Weights lie over the joint on a strip of film and board, the first at its very ends.",
  ];
}

/** A joint with its length, how far both its edges are off square, and what holds it. */
export function lineWords(line: StepLine, heldBy: GlueStep["heldBy"]): string {
  const { joinId, lengthMm, bevelRad, pins, pinSpacingMm } = line;
  const [one, other] = bevelRad.map((angleRad) => formatAngle(Math.abs(angleRad)));
  const isSquare = bevelRad.every((angleRad) => Math.abs(angleRad) < SQUARE_RAD);
  const bevels = isSquare ? "square" : one === other ? `both edges ${one}` : `edges ${one} and ${other}`;
  return `${joinId}: ${formatMm(lengthMm)} mm, ${bevels}, ${pins} ${heldBy} every ${formatNumber(pinSpacingMm, 0)} mm`;
}

/** A bevel under a twentieth of a degree is told as square. */
const SQUARE_RAD = 0.0009;

/** Which steps have to have set before this one begins; empty where none has. */
export function waitWords({ after }: GlueStep): string {
  const set = after.filter(({ waitHours }) => waitHours > 0);
  if (set.length === 0) return "";
  const hours = [...new Set(set.map(({ waitHours }) => waitHours))].sort((a, b) => a - b);
  const groups = hours.map((waitHours) => {
    const steps = set.filter((wait) => wait.waitHours === waitHours).map(({ step }) => `${step}`);
    return `${formatNumber(waitHours, 1)} h after ${steps.length > 1 ? "steps" : "step"} ${list(steps)}`;
  });
  return `Begin no earlier than ${list(groups)}.`;
}

/** How a step that outlasts one spread of glue is divided. Empty where one go is enough. */
export function roundWords(rounds: readonly GlueRound[], openMinutes: number): readonly string[] {
  if (rounds.length < 2) return [];
  const goes = rounds.map(
    ({ joins, wetMinutes }, i) =>
      `${i === 0 ? "first" : "then"} ${list(joins)} (${formatNumber(Math.ceil(wetMinutes), 0)} min)`,
  );
  return [
    `Glue it in ${rounds.length} goes, each with fresh glue inside the ${formatNumber(Math.floor(openMinutes), 0)} min that it stays open: ${goes.join(", ")}. A joint whose turn comes later is kept dry and shut with tape, so that the piece lies true; open it when its turn comes.`,
  ];
}

/** The longest spread of a step against the time that the glue stays open; empty where nothing is glued. */
export function openTimeWords({ rounds, openMinutes }: GlueStep): string {
  if (rounds.length === 0) return "";
  const longest = Math.max(...rounds.map(({ wetMinutes }) => wetMinutes));
  const goes = rounds.length > 1 ? `${rounds.length} goes, the longest ` : "";
  return `${goes}${formatNumber(Math.ceil(longest), 0)} of ${formatNumber(Math.floor(openMinutes), 0)} min that the glue stays open`;
}
