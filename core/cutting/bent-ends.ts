import type { BendZone } from "../bending/index.ts";
import { at } from "../foundation/index.ts";
import type { FlatEdge, Part } from "../patterns/index.ts";
import { signedAreaMm2 } from "./loop-measures.ts";

/** Beyond a cold bend a sheet needs so many thicknesses of flat to be held by (common practice). */
export const HELD_BY_THICKNESSES = 5;

/** A free edge across a sheet that a cold bend reaches, and which end of its bend line it lies at. */
export interface BentEnd {
  readonly edge: FlatEdge;
  readonly toward: "first" | "last";
}

/** The free edges of a part across which its foam is still bent cold, or so near before them that nothing holds it there. */
export function bentEnds({ loops, zones, thicknessMm, edges }: Part): readonly BentEnd[] {
  const leastMm = HELD_BY_THICKNESSES * thicknessMm;
  const cold = zones.filter(({ verdict }) => verdict === "bend cold");
  if (cold.length === 0) return [];
  const isOfOpening = ({ edgeId }: FlatEdge) =>
    edges.some((one) => one.edgeId === edgeId && one.opening !== undefined);
  return loops
    .filter((loop) => signedAreaMm2(loop.edges.flatMap(({ points }) => points.slice(0, -1))) > 0)
    .flatMap((loop) => loop.edges)
    .flatMap((edge): readonly BentEnd[] => {
      const [from, to] = [at(edge.points, 0), at(edge.points, -1)];
      const isAcross = Math.abs(to.v - from.v) > Math.abs(to.u - from.u);
      // A strip along the end is held down on the rib under it, and the foam with it.
      if (edge.role !== "free" || edge.letIn !== undefined || !isAcross || isOfOpening(edge)) return [];
      // Outlines run counter-clockwise: up on the side where u is greatest.
      const toward = to.v > from.v ? "last" : "first";
      return cold.some((zone) => isReached({ edge, toward }, zone, leastMm)) ? [{ edge, toward }] : [];
    });
}

/** Whether a bend ends less than this before an edge, or goes on across it. */
export function isReached({ edge, toward }: BentEnd, { fromUMm, toUMm }: BendZone, leastMm: number): boolean {
  const us = edge.points.map(({ u }) => u);
  const [leastU, mostU] = [Math.min(...us), Math.max(...us)];
  return toward === "last"
    ? toUMm > leastU - leastMm && fromUMm < mostU
    : fromUMm < mostU + leastMm && toUMm > leastU;
}
