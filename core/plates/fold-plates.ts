import { type Memory, NO_MEMORY, type Problem, type SpacePoint } from "../foundation/index.ts";
import { metalOf, type Project, type ResolvedLines } from "../project/index.ts";
import { foldPlate } from "./fold-plate.ts";
import type { FoldedPlate } from "./types.ts";

/**
 * Every plate of the tray, in the order of the document, and what is wrong with them. A plate without a usable outline
 * has its problem already. With a memory, only plates that have changed are folded anew.
 */
export function foldPlates(
  project: Project,
  lines: ResolvedLines,
  memory: Memory = NO_MEMORY,
): { readonly plates: readonly FoldedPlate[]; readonly problems: readonly Problem[] } {
  const plates: FoldedPlate[] = [];
  const problems: Problem[] = [];
  for (const item of project.items) {
    const outline = lines.plan[item.id];
    if (item.kind !== "plate" || !outline?.closed) continue;
    const from = [item, outline, metalOf(project, item.metalId), project.symmetry];
    const made = memory.recall(`plate ${item.id}`, from, () => foldPlate(project, item, outline));
    if (made.plate) plates.push(made.plate);
    problems.push(...made.problems);
  }
  return { plates, problems };
}

/** The free edge of a wing on its air face, on the drawn half, from its start to its end; undefined where there is none. */
export function wingFreeEdge(
  plates: readonly FoldedPlate[],
  itemId: string,
  wingId: string,
): readonly SpacePoint[] | undefined {
  const plate = plates.find((candidate) => candidate.itemId === itemId);
  return plate?.wingEdges.find((edge) => edge.wingId === wingId)?.air;
}
