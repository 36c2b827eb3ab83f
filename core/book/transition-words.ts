import type { Strip } from "../cutting/index.ts";
import { formatAngle, formatMm, formatNumber } from "../foundation/index.ts";
import type { Part } from "../patterns/index.ts";
import { foamOf, leastBendRatioOf } from "../project/index.ts";
import { rulingAt, type TwistJudgement } from "../rulings/index.ts";
import type { Design } from "./design.ts";

/** What a builder must know of a transition before it is bent: verdict, largest twist and where, strain, radius. */
export function transitionWords(design: Design, part: Part): readonly string[] {
  const { twist } = part;
  if (twist === undefined) return [];
  return [
    `${verdictWords(twist)} ${twistWords(design, part, twist)}`,
    `It bends around the rulings, the chain lines. ${bendWords(design, part, twist)}`,
  ];
}

function verdictWords({ verdict, strips }: TwistJudgement): string {
  switch (verdict) {
    case "developable":
      return "Developable: it bends into place without twist.";
    case "press down":
      return "Press down: bend it along the rulings, then press the rest of the twist down by hand.";
    case "divide":
      return `Divided into ${strips} strips because of its twist; each is pressed down for itself, the seams between them are glued in place.`;
    case "not with this foam":
      return "Not with this foam: it would crack.";
  }
}

function twistWords(design: Design, part: Part, twist: TwistJudgement): string {
  const where = placeWords(design, part, twist);
  return `Its plane turns by ${formatAngle(twist.maxTwistRad)} along a ruling at most${where}.`;
}

function placeWords(design: Design, part: Part, { atSMm, maxTwistRad }: TwistJudgement): string {
  const sheet = design.sheets.find(({ id }) => id === part.sheetId);
  if (sheet?.kind !== "transition" || formatAngle(maxTwistRad) === formatAngle(0)) return "";
  const { from } = rulingAt(sheet.chart.surface, atSMm);
  return `, near x\u2009${formatNumber(from.x, 0)}`;
}

function bendWords({ project }: Design, part: Part, twist: TwistJudgement): string {
  const foam = foamOf(project, part.foamId);
  const ratio = foam ? leastBendRatioOf(foam) : 0;
  const percent = (strain: number) => `${formatNumber(strain * 100, 2)}\u2009%`;
  const limit = ratio > 0 ? ` of the ${percent(1 / (2 * ratio))} that the foam takes` : "";
  const radius =
    part.minRadiusMm === undefined ? "It stays flat" : `Least radius ${formatNumber(part.minRadiusMm, 0)} mm`;
  return `${radius}; bend and twist together strain the foam by ${percent(twist.pressStrain)}${limit}.`;
}

/** What the openings of a strip leave beside them. */
export const webWords = (strip: Strip, part: Part): readonly string[] =>
  (part.webs ?? [])
    .filter(({ name }) => strip.edges.some((edge) => edge.opening !== undefined && edge.name === name))
    .map(({ name, otherName, webMm }) => `${name} leaves ${formatMm(webMm)} mm of foam to the ${otherName}.`);
