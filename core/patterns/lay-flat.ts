import type { SheetBends } from "../bending/index.ts";
import type { SetBack } from "../joints/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { type LaidLoop, layLoopsFlat, loopAreaMm2 } from "./flat-loops.ts";
import { letInEdges } from "./let-in-edges.ts";
import type { LetInEdges } from "./let-in-of-sheet.ts";
import { type BendGroundOfPart, bendsOf } from "./part-bends.ts";
import { setBackEdges } from "./set-back-edges.ts";
import type { FlatLoop } from "./types.ts";

/** A sheet laid flat: how it bends, its loops before and after they were set back or let in, and the edges that could not be. */
export interface LaidSheet {
  readonly bends: SheetBends;
  readonly laid: readonly LaidLoop[];
  readonly moved: readonly LaidLoop[];
  /** The outline with what is let in: set back for joints alone; absent where foam runs to all of it. */
  readonly finished?: readonly LaidLoop[];
  readonly failed: readonly string[];
}

/** What of a project the flat of a sheet follows from, besides the sheet and the set-backs of its joints. */
export interface FlatGround extends BendGroundOfPart {
  readonly letIn: LetInEdges;
}

/** A sheet laid flat at the fibre that keeps its length, each edge set back as its joint or its insert asks. */
export function layFlat(ground: FlatGround, sheet: Sheet, own: readonly SetBack[]): LaidSheet {
  const bends = bendsOf(ground, sheet);
  const laid = layLoopsFlat(sheet, own, bends.stretches);
  const moved = laid.map(setBackEdges);
  const short = moved.map(({ loop }) => letInEdges(loop, ground.letIn));
  return {
    bends,
    laid,
    moved: short.map(({ loop }) => loop),
    ...(short.some(hasLetIn) && { finished: moved.map(({ loop }) => loop) }),
    failed: [...moved, ...short].flatMap(({ failed }) => failed),
  };
}

const hasLetIn = ({ loop }: { readonly loop: LaidLoop }): boolean =>
  loop.edges.some(({ letIn }) => letIn !== undefined);

/** The loops as a part has them: the outline before its holes. */
export const plainLoops = (loops: readonly LaidLoop[]): readonly FlatLoop[] =>
  loops
    .map(plainLoop)
    .map((loop) => ({ loop, area: loopAreaMm2(loop) }))
    .sort((a, b) => b.area - a.area)
    .map(({ loop }) => loop);

const plainLoop = ({ edges }: LaidLoop): FlatLoop => ({
  edges: edges.map(({ edgeId, name, role, points, letIn }) => ({
    edgeId,
    name,
    role,
    points,
    ...(letIn && { letIn }),
  })),
});
