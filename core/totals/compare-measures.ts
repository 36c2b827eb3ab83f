import { formatMass, formatMm, formatNumber, THIN_SPACE } from "../foundation/index.ts";
import type { ComparisonRow } from "../project/index.ts";
import type { PartMeasure, TrayMeasures } from "./measure-tray.ts";

/**
 * In what two trays differ as they are made, in words: the sums, and every part that came, went, or is another size or
 * mass. What reads the same on both sides is left out.
 */
export function compareMeasures(before: TrayMeasures, after: TrayMeasures): readonly ComparisonRow[] {
  const ids = [...new Set([...before.parts, ...after.parts].map(({ id }) => id))];
  return [
    ...sumRows(before, after),
    ...ids.flatMap((id) => {
      const is = (part: PartMeasure) => part.id === id;
      return partRows(id, before.parts.find(is), after.parts.find(is));
    }),
  ];
}

/** How a figure is told. */
interface Figure {
  readonly what: string;
  readonly say: (value: number) => string;
}

const LENGTH = (what: string): Figure => ({ what, say: (value) => `${formatMm(value)}${THIN_SPACE}mm` });
const MASS = (what: string): Figure => ({ what, say: formatMass });
const COUNT = (what: string): Figure => ({ what, say: (value) => formatNumber(value, 0) });
const HOURS = (what: string): Figure => ({ what, say: (value) => `${formatNumber(value, 1)}${THIN_SPACE}h` });
const AREA = (what: string): Figure => ({
  what,
  say: (value) => `${formatNumber(value / 1e6, 3)}${THIN_SPACE}m²`,
});

function sumRows(
  { totals: before }: TrayMeasures,
  { totals: after }: TrayMeasures,
): readonly ComparisonRow[] {
  const figures = [
    [COUNT("Parts"), before.partCount, after.partCount],
    [COUNT("Strips"), before.stripCount, after.stripCount],
    [AREA("Foam, area"), before.foamAreaMm2, after.foamAreaMm2],
    [MASS("Foam, mass"), before.foamMassKg, after.foamMassKg],
    [MASS("Metal, mass"), before.metalMassKg, after.metalMassKg],
    [LENGTH("Joints and seams, length"), before.jointLengthMm, after.jointLengthMm],
    [HOURS("Work, hands on"), before.handsOnHours, after.handsOnHours],
  ] as const;
  return figures.flatMap(([figure, from, to]) => figureRow(figure, from, to));
}

function partRows(
  id: string,
  before: PartMeasure | undefined,
  after: PartMeasure | undefined,
): readonly ComparisonRow[] {
  const name = `${id} ${after?.name ?? before?.name ?? ""}`.trim();
  if (!before || !after) {
    const say = (part: PartMeasure | undefined) =>
      part
        ? `${formatMm(part.lengthMm)} × ${formatMm(part.widthMm)}${THIN_SPACE}mm, ${formatMass(part.massKg)}`
        : "–";
    return [{ key: id, what: name, from: say(before), to: say(after), by: before ? "gone" : "added" }];
  }
  return [
    ...figureRow(LENGTH(`${name}: developed length`), before.lengthMm, after.lengthMm),
    ...figureRow(LENGTH(`${name}: width`), before.widthMm, after.widthMm),
    ...figureRow(MASS(`${name}: mass`), before.massKg, after.massKg),
  ];
}

/** No row where both read the same. */
function figureRow({ what, say }: Figure, from: number, to: number): readonly ComparisonRow[] {
  if (say(from) === say(to)) return [];
  const difference = say(to - from);
  return [{ key: what, what, from: say(from), to: say(to), by: to > from ? `+${difference}` : difference }];
}
