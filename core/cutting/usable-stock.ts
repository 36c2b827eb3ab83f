import type { FlatPoint } from "../foundation/index.ts";
import type { FlatEdge, Part } from "../patterns/index.ts";
import type { Project, Stock } from "../project/index.ts";
import type { Island } from "./group-islands.ts";
import { atLeastZero } from "./kerf-outside.ts";
import { boundsOfPoints } from "./loop-measures.ts";
import { offsetLoops } from "./offset-loops.ts";

/** A stock sheet with what can be used of it. */
export interface UsableStock {
  readonly stockId: string;
  readonly lengthMm: number;
  readonly widthMm: number;
}

/** The stock sheets of a part's foam and thickness, less what is lost on every side. */
export function usableStock(part: Part, project: Pick<Project, "cutting" | "stock">): readonly UsableStock[] {
  const lostMm = 2 * atLeastZero(project.cutting.stockEdgeMm);
  const isRight = ({ foamId, thicknessMm }: Stock) =>
    foamId === part.foamId && Math.abs(thicknessMm - foamMmOf(part)) < 1e-6;
  return project.stock
    .filter(isRight)
    .map(({ id, lengthMm, widthMm }) => ({
      stockId: id,
      lengthMm: lengthMm - lostMm,
      widthMm: widthMm - lostMm,
    }))
    .filter(({ lengthMm, widthMm }) => lengthMm > 0 && widthMm > 0);
}

/** How thick the foam of a part is: the whole part, or the core of the panel that it is cut from, mm. */
export const foamMmOf = ({ panel, thicknessMm }: Pick<Part, "panel" | "thicknessMm">): number =>
  panel?.foamMm ?? thicknessMm;

/** Whether the lines to cut an island by fit on some sheet. */
export const fitsStock = (
  island: Island,
  stock: readonly UsableStock[],
  outwardMm: (edge: FlatEdge) => number,
): boolean => stockFor(offsetLoops(island, outwardMm), stock) !== undefined;

/** The smallest stock sheet that the cut lines fit on, in either position. */
export function stockFor(
  cutLinesMm: readonly (readonly FlatPoint[])[],
  stock: readonly UsableStock[],
): string | undefined {
  const { leastUMm, mostUMm, leastVMm, mostVMm } = boundsOfPoints(cutLinesMm);
  const longMm = Math.max(mostUMm - leastUMm, mostVMm - leastVMm) - 1e-6;
  const shortMm = Math.min(mostUMm - leastUMm, mostVMm - leastVMm) - 1e-6;
  const fitting = stock.filter(
    ({ lengthMm, widthMm }) =>
      Math.max(lengthMm, widthMm) >= longMm && Math.min(lengthMm, widthMm) >= shortMm,
  );
  const [smallest] = fitting.sort((a, b) => a.lengthMm * a.widthMm - b.lengthMm * b.widthMm);
  return smallest?.stockId;
}
