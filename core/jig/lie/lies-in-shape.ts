import type { PlanPoint } from "../../foundation/index.ts";
import type { Part } from "../../patterns/index.ts";
import { bendLine, fibreOf, type LyingSheet, xiOfPlan } from "../../surfaces/index.ts";

/** Just beyond the border of a zone its bend still begins, mm. */
const BESIDE_MM = 7;

/** Whether the foam over a plan point lies in its shape by itself: slotted, or glued up of planks. */
export function liesInShape(sheet: LyingSheet, part: Part): (spot: PlanPoint) => boolean {
  const shaped = part.zones.filter(({ verdict }) => verdict === "relief slots" || verdict === "planks");
  if (sheet.kind !== "section" || shaped.length === 0) return () => false;
  const { middleAt } = fibreOf(sheet, part.stretches);
  const { placeAt } = bendLine(sheet);
  const spans = shaped.map(
    ({ fromUMm, toUMm }) => [placeAt(middleAt(fromUMm)), placeAt(middleAt(toUMm))] as const,
  );
  return (spot) => {
    const xi = xiOfPlan(sheet.chart, spot);
    return spans.some(([from, to]) => xi >= from - BESIDE_MM && xi <= to + BESIDE_MM);
  };
}
