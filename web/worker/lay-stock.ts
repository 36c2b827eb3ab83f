import { designTray } from "../../core/design.ts";
import { runPacking } from "../../core/packing/index.ts";
import type { AcceptedLayout, Project } from "../../core/project/index.ts";
import {
  gatherGroups,
  judgeLayout,
  type LaidGroup,
  layoutRank,
  lockedProblem,
  toAccepted,
} from "../../core/stock/index.ts";

/** A layout as it is found, and how much of the time is gone, from 0 to 1. */
export interface FoundLayout {
  readonly laid: LaidGroup;
  /** The form in which it is accepted into the document. */
  readonly accepted: AcceptedLayout;
  /** By which it is compared with what other searches found. */
  readonly rank: readonly number[];
  readonly progress: number;
}

/** A better layout is told at most this often, ms. */
const TELL_EVERY_MS = 250;

/**
 * Lays the pieces of one group for so long and tells of every better layout, the last one for certain. What the builder
 * locked stays where it is.
 */
export function layStock(
  project: Project,
  groupId: string,
  settings: { readonly seed: number; readonly milliseconds: number },
  onFound: (found: FoundLayout) => void,
): void {
  const group = gatherGroups(designTray(project), project).find(({ id }) => id === groupId);
  if (group === undefined) return;
  const limit = {
    kind: "time",
    milliseconds: settings.milliseconds,
    nowMs: () => performance.now(),
  } as const;
  let toldMs = Number.NEGATIVE_INFINITY;
  let told: unknown;
  for (const { packing, progress, layout } of runPacking(
    lockedProblem(group, project),
    settings.seed,
    limit,
  )) {
    const best = packing.kind === "outlines" ? packing.search.incumbent : packing.search.best;
    const isLast = progress >= 1;
    if (layout === undefined || (!isLast && (best === told || performance.now() - toldMs < TELL_EVERY_MS)))
      continue;
    const accepted = toAccepted(group, layout, project);
    const locked = new Set(accepted.pieces.flatMap((piece) => (piece.locked ? [piece.pieceId] : [])));
    const { laid } = judgeLayout(group, layout, "laid here", locked);
    onFound({ laid, accepted, rank: layoutRank(laid), progress });
    toldMs = performance.now();
    told = best;
  }
}
