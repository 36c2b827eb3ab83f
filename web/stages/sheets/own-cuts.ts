import type { Seam } from "../../../core/cutting/index.ts";
import type { Part } from "../../../core/patterns/index.ts";
import type { Project } from "../../../core/project/index.ts";

type Cutting = Project["cutting"];
export type OwnCut = NonNullable<Cutting["ownCuts"]>[number];

/** One cut through a part, in that part's own flat: its seams, and whether the builder put it there. */
export interface PartCut {
  readonly axis: "u" | "v";
  readonly atMm: number;
  readonly seams: readonly Seam[];
  readonly isOwn: boolean;
}

const SAME_MM = 1e-6;

/** Left parts are cut as the images of right ones, whose cuts are kept. */
const asKept = (part: Part, axis: "u" | "v", atMm: number): number =>
  part.hand === "left" && axis === "v" ? -atMm : atMm;

const isHere =
  (part: Part, axis: "u" | "v", atMm: number) =>
  (cut: OwnCut): boolean =>
    cut.sheetId === part.sheetId &&
    cut.axis === axis &&
    Math.abs(cut.atMm - asKept(part, axis, atMm)) < SAME_MM;

/** The cuts that divide a part, from front to rear; seams in one line are one cut. */
export function cutsOfPart(part: Part, seams: readonly Seam[], cutting: Cutting): readonly PartCut[] {
  const cuts: PartCut[] = [];
  for (const seam of seams.filter(({ partId }) => partId === part.id)) {
    const axis = seam.runs === "along ruling" ? "u" : "v";
    const index = cuts.findIndex((cut) => cut.axis === axis && Math.abs(cut.atMm - seam.atMm) < SAME_MM);
    const known = cuts[index];
    if (known) cuts[index] = { ...known, seams: [...known.seams, seam] };
    else {
      const isOwn = (cutting.ownCuts ?? []).some(isHere(part, axis, seam.atMm));
      cuts.push({ axis, atMm: seam.atMm, seams: [seam], isOwn });
    }
  }
  return cuts;
}

/** The settings with a cut at another place, or one more; from then on it is the builder's. */
export function withCut(
  cutting: Cutting,
  part: Part,
  axis: "u" | "v",
  places: { readonly fromMm?: number; readonly toMm: number },
): Cutting {
  const { fromMm, toMm } = places;
  const others =
    fromMm === undefined ? (cutting.ownCuts ?? []) : withoutCut(cutting, part, axis, fromMm).ownCuts;
  const cut: OwnCut = { sheetId: part.sheetId, axis, atMm: asKept(part, axis, toMm) };
  return { ...cutting, ownCuts: [...(others ?? []), cut] };
}

/** The settings without a cut of the builder's: the stock decides again. */
export function withoutCut(cutting: Cutting, part: Part, axis: "u" | "v", atMm: number): Cutting {
  const isThis = isHere(part, axis, atMm);
  return { ...cutting, ownCuts: (cutting.ownCuts ?? []).filter((cut) => !isThis(cut)) };
}
