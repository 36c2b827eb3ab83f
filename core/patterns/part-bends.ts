import { type BendVerdict, type BendZone, bendZones, type SheetBends } from "../bending/index.ts";
import type { Problem } from "../foundation/index.ts";
import {
  type BendChoice,
  foamOf,
  type Item,
  leastBendRatioOf,
  nameOfItem,
  type Project,
} from "../project/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import type { Part } from "./types.ts";

/** What of a project the bends of a sheet follow from, besides the sheet. */
export interface BendGroundOfPart extends Pick<Project, "materials" | "bending"> {
  readonly choices: readonly BendChoice[];
}

const NO_CHOICES: readonly BendChoice[] = [];

/** The methods chosen for single bends of an item. */
export const choicesOf = (item: Item | undefined): readonly BendChoice[] =>
  (item?.kind === "section" || item?.kind === "fence" ? item.bends : undefined) ?? NO_CHOICES;

/** How the foam of a sheet can be bent. */
export function bendsOf({ materials, bending, choices }: BendGroundOfPart, sheet: Sheet): SheetBends {
  const foam = foamOf({ materials }, sheet.foamId);
  return bendZones(sheet, {
    leastBendRatio: foam ? leastBendRatioOf(foam) : 0,
    ratioFrom: foam?.bendTest ? "test" : (foam?.origins.leastBendRatio ?? "typed"),
    thicknessMm: sheet.thicknessMm,
    bending,
    choices,
  });
}

/** The tightest bend that the foam does not take cold, unless the builder chose how it is made; and slots left open. */
export function bendProblems({ materials }: BendGroundOfPart, sheet: Sheet, part: Part): readonly Problem[] {
  const foam = foamOf({ materials }, sheet.foamId);
  const leastRadiusMm = (foam ? leastBendRatioOf(foam) : 0) * sheet.thicknessMm;
  const named = { place: { itemId: sheet.itemId, partId: part.id }, name: sheet.name };
  const radiusOf = ({ leastRadiusMm: radiusMm }: BendZone) => radiusMm ?? Number.POSITIVE_INFINITY;
  const [tightest] = part.zones
    .filter((zone) => radiusOf(zone) < leastRadiusMm * (1 - 1e-9) && !isChosen(zone))
    .toSorted((a, b) => radiusOf(a) - radiusOf(b));
  const isOpen = part.zones.some(({ bend }) => bend?.slots?.filling === "open");
  return [
    ...(tightest?.leastRadiusMm === undefined
      ? []
      : [
          {
            kind: "bend-too-tight" as const,
            ...named,
            radiusMm: tightest.leastRadiusMm,
            leastRadiusMm,
            ...laidAs(tightest.verdict),
          },
        ]),
    ...(isOpen ? [{ kind: "slots-left-open" as const, ...named }] : []),
  ];
}

/** Whether slots or planks were chosen for a bend, and can be laid. */
const isChosen = ({ verdict, bend }: BendZone): boolean =>
  bend?.chosen !== undefined && (verdict === "relief slots" || verdict === "planks");

const laidAs = (verdict: BendVerdict) =>
  verdict === "not with this foam" || verdict === "flat" ? {} : { laidAs: verdict };

/** Methods that were chosen where no bend is any more. */
export const choicesWithoutBend = ({ items }: Project, parts: readonly Part[]): readonly Problem[] =>
  items.flatMap((item) => {
    const own = parts.filter(({ itemId }) => itemId === item.id);
    // Of an item that is not made nothing can be said.
    if (own.length === 0) return [];
    const used = new Set(own.flatMap(({ zones }) => zones.flatMap(({ bend }) => bend?.chosenAtMm ?? [])));
    return choicesOf(item)
      .filter(({ atMm }) => !used.has(atMm))
      .map(
        ({ atMm }): Problem => ({
          kind: "bend-choice-without-bend",
          place: { itemId: item.id },
          name: nameOfItem(item),
          atMm,
        }),
      );
  });
