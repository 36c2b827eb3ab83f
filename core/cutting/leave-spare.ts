import { type Memory, NO_MEMORY, type Problem } from "../foundation/index.ts";
import type { FlatEdge, Part } from "../patterns/index.ts";
import { CLOSER_SPARE_MM, type Project } from "../project/index.ts";
import { cutLinesOf } from "./cut-lines.ts";
import { CUTTING_GROUND, type CuttingGround } from "./divide-part.ts";
import { allowanceOf, atLeastZero } from "./kerf-outside.ts";
import type { Strip } from "./types.ts";
import { stockFor, usableStock } from "./usable-stock.ts";

/** What is left standing on the last joint of a closer, mm; 0 where none is wanted. */
export const closerSpareMm = ({ cutting }: Pick<Project, "cutting">): number =>
  cutting.closerSpareMm === undefined ? CLOSER_SPARE_MM : atLeastZero(cutting.closerSpareMm);

/** An edge that is fitted to a measured gap, and the strips that may have it. */
export interface SparedEdge {
  readonly stripIds: readonly string[];
  readonly edgeId: string;
}

/**
 * The strips with spare left on the edges that are fitted to a measured gap; their finished outlines stay as they are.
 * Problem: no-spare-for-closer for a strip that would then be larger than any stock; it is left at its size.
 */
export function leaveSpare(
  strips: readonly Strip[],
  fitted: readonly SparedEdge[],
  { parts, project, memory = NO_MEMORY }: SpareSources,
): { readonly strips: readonly Strip[]; readonly problems: readonly Problem[] } {
  const spareMm = closerSpareMm(project);
  if (spareMm === 0 || fitted.length === 0) return { strips, problems: [] };
  const made = strips.map((strip): Spared => {
    const edgeIds = fitted.flatMap(({ stripIds, edgeId }) => (stripIds.includes(strip.id) ? [edgeId] : []));
    const part = parts.find(({ id }) => id === strip.partId);
    const isFitted = strip.edges.some(({ edgeId }) => edgeIds.includes(edgeId));
    if (part === undefined || !isFitted) return { strip, problems: [] };
    const from = [strip, part, ...CUTTING_GROUND.map((field) => project[field]), edgeIds.join()];
    return memory.recall(`spare on ${strip.id}`, from, () =>
      spared(strip, edgeIds, { part, project, spareMm }),
    );
  });
  return { strips: made.map(({ strip }) => strip), problems: made.flatMap(({ problems }) => problems) };
}

interface SpareSources {
  readonly parts: readonly Part[];
  readonly project: CuttingGround;
  readonly memory?: Memory;
}

interface Spared {
  readonly strip: Strip;
  readonly problems: readonly Problem[];
}

function spared(
  strip: Strip,
  edgeIds: readonly string[],
  {
    part,
    project,
    spareMm,
  }: { readonly part: Part; readonly project: CuttingGround; readonly spareMm: number },
): Spared {
  const withSpare = (edge: FlatEdge): FlatEdge =>
    edgeIds.includes(edge.edgeId) ? { ...edge, spare: { lengthMm: spareMm, for: "gap" } } : edge;
  const loops = strip.loops.map(({ edges }) => ({ edges: edges.map(withSpare) }));
  const { linesMm } = cutLinesOf(loops, allowanceOf(project));
  const stockId = stockFor(linesMm, usableStock(part, project));
  if (stockId === undefined && strip.stockId !== undefined) {
    const place = { itemId: part.itemId, partId: part.id };
    return { strip, problems: [{ kind: "no-spare-for-closer", place, name: strip.id, spareMm }] };
  }
  return { strip: { ...strip, loops, cutLinesMm: linesMm, ...(stockId && { stockId }) }, problems: [] };
}
