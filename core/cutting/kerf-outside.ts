import type { FlatEdge } from "../patterns/index.ts";
import type { Project } from "../project/index.ts";

/** How far the line to cut by lies outside the finished line for the blade's sake, mm (see `Strip.cutLinesMm`). */
export function kerfOutsideMm({ kerfMm, bladeSide }: Project["cutting"]): number {
  const share = { waste: 0, middle: 0.5, part: 1 }[bladeSide];
  return atLeastZero(kerfMm) * share;
}

/** A setting that may have been typed as anything; what is not a length counts as none. */
export const atLeastZero = (valueMm: number): number => (valueMm > 0 && valueMm < 1000 ? valueMm : 0);

/** How far the line to cut by lies outside an edge: by kerf and blade side, with trim on free edges that foam runs out to, and its own spare. */
export function allowanceOf({ cutting }: Pick<Project, "cutting">): (edge: FlatEdge) => number {
  const kerfMm = kerfOutsideMm(cutting);
  const trimMm = atLeastZero(cutting.trimMm);
  return (edge) => kerfMm + (isTrimmed(edge) ? trimMm : 0) + (edge.spare?.lengthMm ?? 0);
}

const isTrimmed = ({ role, trim, letIn }: FlatEdge): boolean =>
  role === "free" && trim === undefined && letIn === undefined;
