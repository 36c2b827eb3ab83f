import type { Problem } from "../foundation/index.ts";
import type { Part } from "../patterns/index.ts";
import type { Project } from "../project/index.ts";
import { divideLoops } from "./divide-loops.ts";
import type { Island } from "./group-islands.ts";

export type OwnCut = NonNullable<Project["cutting"]["ownCuts"]>[number];

/** The builder's cuts of a sheet whose places are numbers. */
export const ownCutsOf = (sheetId: string, { cutting }: Pick<Project, "cutting">): readonly OwnCut[] =>
  (cutting.ownCuts ?? []).filter((cut) => cut.sheetId === sheetId && Number.isFinite(cut.atMm));

/** Islands divided wherever the builder wants it; a cut that divides none of them is a problem. */
export function divideByOwnCuts(
  islands: readonly Island[],
  part: Part,
  cuts: readonly OwnCut[],
): { readonly pieces: readonly Island[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  let pieces = islands;
  for (const { axis, atMm } of cuts) {
    const divided = pieces.flatMap((island): readonly Island[] => {
      const { below, above } = divideLoops(island, axis, atMm);
      return below.length > 0 && above.length > 0 ? [...below, ...above] : [island];
    });
    if (divided.length === pieces.length) {
      const place = { itemId: part.itemId, partId: part.id };
      problems.push({ kind: "own-cut-cuts-nothing", place, name: part.name, axis, atMm });
    }
    pieces = divided;
  }
  return { pieces, problems };
}
