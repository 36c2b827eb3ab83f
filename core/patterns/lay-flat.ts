import type { SheetBends } from "../bending/index.ts";
import type { SetBack } from "../joints/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { type LaidLoop, layLoopsFlat, loopAreaMm2 } from "./flat-loops.ts";
import { type BendGroundOfPart, bendsOf } from "./part-bends.ts";
import { setBackEdges } from "./set-back-edges.ts";
import type { FlatLoop } from "./types.ts";

/** A sheet laid flat: how it bends, its loops before and after they were set back, and the edges that could not be. */
export interface LaidSheet {
  readonly bends: SheetBends;
  readonly laid: readonly LaidLoop[];
  readonly moved: readonly LaidLoop[];
  readonly failed: readonly string[];
}

/** A sheet laid flat at the fibre that keeps its length, each edge set back as its joint asks. */
export function layFlat(ground: BendGroundOfPart, sheet: Sheet, own: readonly SetBack[]): LaidSheet {
  const bends = bendsOf(ground, sheet);
  const laid = layLoopsFlat(sheet, own, bends.stretches);
  const moved = laid.map(setBackEdges);
  return {
    bends,
    laid,
    moved: moved.map(({ loop }) => loop),
    failed: moved.flatMap(({ failed }) => failed),
  };
}

/** The loops as a part has them: the outline before its holes. */
export const plainLoops = (loops: readonly LaidLoop[]): readonly FlatLoop[] =>
  loops
    .map(plainLoop)
    .map((loop) => ({ loop, area: loopAreaMm2(loop) }))
    .sort((a, b) => b.area - a.area)
    .map(({ loop }) => loop);

const plainLoop = ({ edges }: LaidLoop): FlatLoop => ({
  edges: edges.map(({ edgeId, name, role, points }) => ({ edgeId, name, role, points })),
});
