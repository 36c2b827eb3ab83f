import type { PlanPoint } from "../foundation/index.ts";
import { edgeLengthsInSpace, type RegionEdge, type SectionSheet } from "../surfaces/index.ts";
import { cutOfFold, type FoldCut } from "./cut-of-fold.ts";
import { type EdgePlace, edgesWithId, foldBetween, placeOnEdge, type SurfacePlace } from "./edge-places.ts";
import type { GlueLine, SheetJoint } from "./sheet-joint.ts";
import type { SetBack } from "./types.ts";

/** What lies beside an edge. */
export interface Neighbour {
  readonly sheet: SectionSheet;
  /** Whether the neighbour lies along a region edge, judged by the middle of that edge. */
  readonly isBeside: (middle: EdgePlace) => boolean;
  /** Its surface at a place of the edge. */
  readonly at: (place: EdgePlace) => SurfacePlace;
}

/** How a sheet meets its neighbour along one drawn edge. */
export interface Meeting {
  readonly setBack: SetBack;
  readonly joint?: Omit<SheetJoint, "kind">;
  /** The widest miss in height between the two drawn surfaces, and where. */
  readonly gapMm: number;
  readonly gapAt: PlanPoint;
}

/**
 * A sheet and its neighbour along all the region edges of one drawn edge: at both ends of each the fold and its
 * cut, hence the set-backs; and how far the two miss each other in height.
 */
export function meetAlong(
  sheet: SectionSheet,
  edgeId: string,
  neighbour: Neighbour,
  glue: GlueLine,
): Meeting {
  const seams = edgesWithId(sheet, edgeId).map((edge) => seamOf(sheet, edge, neighbour, glue));
  const traced = seams.filter(({ ends }) => ends !== undefined);
  const { gapMm, gapAt } = seams.reduce((most, seam) => (seam.gapMm > most.gapMm ? seam : most), {
    gapMm: 0,
    gapAt: { x: 0, y: 0 },
  });
  const setBack: SetBack = {
    sheetId: sheet.id,
    edgeId,
    amountsMm: seams.map(({ cuts }) => [cuts[0].setBackMm[0], cuts[1].setBackMm[0]]),
    bevelRad: [seams[0]?.cuts[0].bevelRad[0] ?? 0, seams.at(-1)?.cuts[1].bevelRad[0] ?? 0],
  };
  const [first, last] = [traced[0], traced.at(-1)];
  if (!first?.ends || !last?.ends) return { setBack, gapMm, gapAt };
  return {
    setBack,
    joint: {
      sheets: [sheet, neighbour.sheet],
      edgeIds: [edgeId, edgeId],
      lengthMm: seams.reduce((sum, { lengthMm }) => sum + lengthMm, 0),
      foldRad: [first.folds[0], last.folds[1]],
      cut: first.cuts[0],
      from: first.ends[0],
      to: last.ends[1],
    },
    gapMm,
    gapAt,
  };
}

/** One region edge against its neighbour. */
interface SeamOfEdge {
  readonly folds: readonly [number, number];
  readonly cuts: readonly [FoldCut, FoldCut];
  readonly lengthMm: number;
  readonly ends?: readonly [PlanPoint, PlanPoint];
  readonly gapMm: number;
  readonly gapAt: PlanPoint;
}

function seamOf(sheet: SectionSheet, edge: RegionEdge, neighbour: Neighbour, glue: GlueLine): SeamOfEdge {
  const [start, middle, end] = [0, 0.5, 1].map((share) => placeOnEdge(sheet, edge, share));
  const isBeside = middle !== undefined && neighbour.isBeside(middle);
  let gapMm = 0;
  let gapAt: PlanPoint = middle?.p ?? { x: 0, y: 0 };
  for (const place of isBeside ? [start, middle, end] : []) {
    if (!place) continue;
    const missMm = Math.abs(neighbour.at(place).z - place.z);
    if (missMm <= gapMm) continue;
    gapMm = missMm;
    gapAt = place.p;
  }
  const foldAt = (place: EdgePlace | undefined) =>
    place && isBeside ? foldBetween(place, neighbour.at(place).normal) : 0;
  const folds = [foldAt(start), foldAt(end)] as const;
  const cut = (fold: number) => cutOfFold(fold, sheet.depths, neighbour.sheet.depths, glue);
  return {
    folds,
    cuts: [cut(folds[0]), cut(folds[1])],
    lengthMm: edgeLengthsInSpace(sheet.chart, edge, 0).drawnMm,
    ...(start && end && { ends: [start.p, end.p] as const }),
    gapMm,
    gapAt,
  };
}
