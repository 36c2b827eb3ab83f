import { allowanceOf, kerfOutsideMm, offsetEdges, type Strip } from "../cutting/index.ts";
import { at, type FlatPoint } from "../foundation/index.ts";
import { polygonOfLoop } from "../patterns/index.ts";
import type { Project } from "../project/index.ts";
import { type BevelledEdge, type BevelledLoop, bevelledLoops, hasBevels } from "./bevelled-edges.ts";

/** A strip as it is drawn on the face that the builder sees. */
export interface ShownFace {
  /** Its edges on that face, finished. */
  readonly loops: readonly BevelledLoop[];
  /** The lines to cut by on that face, with kerf and trim in them as in `Strip.cutLinesMm`. */
  readonly cutLinesMm: readonly (readonly FlatPoint[])[];
}

/**
 * The lines of a strip on the face shown. A strip's outline is that of mid-thickness; from there to the face shown a
 * bevel β moves the edge by (t/2) tan β, inward where that face is the shorter one. A tilted blade takes its kerf over
 * the cosine of the bevel. Without bevels these are the strip's own lines.
 */
export const shownFace = (strip: Strip, thicknessMm: number, project: Pick<Project, "cutting">): ShownFace =>
  faceAt(strip, thicknessMm / 2, project);

/** The same on the face behind it, still seen from the face shown. */
export const backFace = (strip: Strip, thicknessMm: number, project: Pick<Project, "cutting">): ShownFace =>
  faceAt(strip, -thicknessMm / 2, project);

/** The lines of a strip so far above mid-thickness, toward the face shown. */
function faceAt(strip: Strip, aboveMm: number, project: Pick<Project, "cutting">): ShownFace {
  const loops = bevelledLoops(strip);
  if (!hasBevels(strip)) return { loops, cutLinesMm: strip.cutLinesMm };
  const kerfMm = kerfOutsideMm(project.cutting);
  const allowanceMm = allowanceOf(project);
  const faceMm = ({ bevelsRad }: BevelledEdge, i: number) => -aboveMm * Math.tan(at(bevelsRad, i));
  const cutMm = (edge: BevelledEdge, i: number) =>
    faceMm(edge, i) + allowanceMm(edge) + kerfMm * (1 / Math.cos(at(edge.bevelsRad, i)) - 1);
  return {
    loops: loops.map((loop) => movedLoop(loop, faceMm)),
    cutLinesMm: loops.map((loop) => polygonOfLoop(movedLoop(loop, cutMm))),
  };
}

const movedLoop = (
  { edges }: BevelledLoop,
  outwardMm: (edge: BevelledEdge, point: number) => number,
): BevelledLoop => ({
  edges: offsetEdges(edges, outwardMm).map(({ edge, points, sources }) => ({
    ...edge,
    points,
    bevelsRad: sources.map((source) => at(edge.bevelsRad, source)),
  })),
});

/** How far inside the outline of mid-thickness an edge's line on the face shown lies (negative: outside), mm. */
export const faceShiftMm = (thicknessMm: number, bevelRad: number): number =>
  (thicknessMm / 2) * Math.tan(bevelRad);
