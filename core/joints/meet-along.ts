import { at, type SpacePoint } from "../foundation/index.ts";
import type { LyingSheet } from "../surfaces/index.ts";
import { type CutChoice, canCut, cutForFolds, cutOfFold, type FoldCut } from "./cut-of-fold.ts";
import { edgesInWalk, edgesWithId } from "./edge-places.ts";
import { type Candidate, readyPartner } from "./find-partner.ts";
import { jointOf, runsOf } from "./joint-of-run.ts";
import { type Look, lookerOf, type Miss, neighbourOf, refineLooks } from "./look-along.ts";
import type { GlueLine, SheetJoint } from "./sheet-joint.ts";
import type { EdgeSetBack, SetBack } from "./types.ts";

/** What the builder asks of a joint between a sheet and a candidate; undefined where the fold decides. */
export type ChoiceOf = (candidate: Candidate) => CutChoice | undefined;

export interface MeetSettings extends GlueLine {
  /** Farther apart than this two edges do not meet. */
  readonly toleranceMm: number;
  readonly choiceOf: ChoiceOf;
}

/** How a sheet meets its neighbours along one drawn edge. */
export interface Meeting {
  readonly setBack: SetBack;
  readonly joints: readonly Omit<SheetJoint, "kind">[];
  /** The widest miss between the edges, where they run beside each other and do not meet. */
  readonly gap?: { readonly candidate: Candidate; readonly gapMm: number; readonly at: SpacePoint };
  /** Another sheet that lies on the same edge besides the one it is joined to. */
  readonly third?: { readonly sheets: readonly [LyingSheet, LyingSheet]; readonly at: SpacePoint };
  /** A fold that no cut suits: the sheets would lie on each other. */
  readonly uncut?: { readonly candidate: Candidate; readonly foldRad: number; readonly at: SpacePoint };
  /** A cut that the builder chose and that the fold does not allow. */
  readonly refused?: { readonly choice: CutChoice; readonly foldRad: number };
}

/** Shares where every region edge is looked at first. */
const FIRST_SHARES = [0, 0.25, 0.5, 0.75, 1];
/**
 * A sheet and its neighbours along all region edges of one drawn edge: where each neighbour lies within tolerance, the
 * fold and its cut as they change along the edge, hence the set-backs. One cut serves a whole run along one neighbour.
 */
export function meetAlong(
  sheet: LyingSheet,
  edgeId: string,
  candidates: readonly Candidate[],
  settings: MeetSettings,
): Meeting {
  const ready = candidates.map(readyPartner);
  const edges = edgesWithId(sheet, edgeId);
  const lookers = edges.map((edge) => lookerOf(sheet, edge, ready, settings.toleranceMm));
  const first = lookers.map(({ look }) => FIRST_SHARES.map(look));
  const cuts = cutsByNeighbour(sheet, candidates, first.flat(), settings);
  const sharpest = first.flat().filter(({ partner, foldRad }) => partner && Math.abs(foldRad) > SHARPEST_RAD);
  const isUncut = new Set(sharpest.map(neighbourOf));
  const cutAt = (look: Look): FoldCut => {
    const { partner, foldRad } = look;
    if (!partner) return NO_CUT;
    const { sheet: other } = partner.candidate;
    if (isUncut.has(partner.candidate)) return NO_CUT;
    return cutOfFold(foldRad, sheet.depths, other.depths, settings, cuts.get(partner.candidate)?.choice);
  };
  const lines = first.map((looks, i) => refineLooks(looks, at(lookers, i).look, cutAt));
  const setBack = {
    sheetId: sheet.id,
    edgeId,
    edges: withApexes(
      edgesInWalk(sheet, edgeId),
      lines.map((looks) => setBackOf(looks, cutAt)),
    ),
  };
  const walks = edgesInWalk(sheet, edgeId).map((walk) => walk.flatMap(([, index]) => at(lines, index)));
  const refused = [...cuts.values()].find((cut) => cut.refused)?.refused;
  const gap = widestGap(lookers.flatMap(({ misses }) => misses));
  const [sharp] = sharpest;
  const third = lookers.flatMap(({ thirds }) => thirds)[0];
  return {
    setBack,
    joints: walks.flatMap((looks) => runsOf(looks).map((run) => jointOf(sheet, edgeId, run, cutAt, cuts))),
    ...(gap && { gap }),
    ...(third && { third }),
    ...(sharp?.partner && {
      uncut: { candidate: sharp.partner.candidate, foldRad: sharp.foldRad, at: sharp.point },
    }),
    ...(refused && { refused }),
  };
}

/** Sheets that fold by more than this lie nearly on each other: no knife gets between. */
const SHARPEST_RAD = (140 * Math.PI) / 180;

const NO_CUT: FoldCut = { cut: "square", bevelRad: [0, 0], setBackMm: [0, 0] };

const widestGap = (misses: readonly Miss[]): Miss | undefined =>
  misses.reduce<Miss | undefined>((most, miss) => (miss.gapMm > (most?.gapMm ?? 0) ? miss : most), undefined);

interface RunCut {
  readonly choice: CutChoice;
  readonly refused?: { readonly choice: CutChoice; readonly foldRad: number };
}

/** One cut for each neighbour: the builder's where every fold allows it, else the one that suits all folds. */
function cutsByNeighbour(
  sheet: LyingSheet,
  candidates: readonly Candidate[],
  looks: readonly Look[],
  settings: MeetSettings,
): ReadonlyMap<Candidate, RunCut> {
  return new Map(
    candidates.map((candidate) => {
      const foldsRad = looks.flatMap(({ partner, foldRad }) =>
        partner?.candidate === candidate ? [foldRad] : [],
      );
      const own = cutForFolds(foldsRad, sheet.depths, candidate.sheet.depths, settings);
      const wished = settings.choiceOf(candidate);
      if (!wished) return [candidate, { choice: own }];
      const foldRad = foldsRad.find((fold) => !canCut(wished, fold, sheet.depths, candidate.sheet.depths));
      return [
        candidate,
        foldRad === undefined ? { choice: wished } : { choice: own, refused: { choice: wished, foldRad } },
      ];
    }),
  );
}

const setBackOf = (looks: readonly Look[], cutAt: (look: Look) => FoldCut): EdgeSetBack => {
  const cuts = looks.map(cutAt);
  return {
    shares: looks.map(({ share }) => share),
    amountsMm: cuts.map(({ setBackMm }) => setBackMm[0]),
    bevelsRad: cuts.map(({ bevelRad }) => bevelRad[0]),
    isJoined: looks.some(({ partner }) => partner !== undefined),
  };
};

/** Where the drawn edge stands still, it is set back and bevelled as where it goes on. */
function withApexes(
  walks: ReturnType<typeof edgesInWalk>,
  setBacks: readonly EdgeSetBack[],
): readonly EdgeSetBack[] {
  const filled = [...setBacks];
  for (const walk of walks) {
    walk.forEach(([edge, index], i) => {
      if (!edge.isApex) return;
      const before = walk.slice(0, i).findLast(([other]) => !other.isApex);
      const after = walk.slice(i + 1).find(([other]) => !other.isApex);
      const [from, end] = before ? [at(setBacks, before[1]), -1] : [after && at(setBacks, after[1]), 0];
      if (!from) return;
      const [amount, bevel] = [at(from.amountsMm, end), at(from.bevelsRad, end)];
      filled[index] = {
        shares: [0, 1],
        amountsMm: [amount, amount],
        bevelsRad: [bevel, bevel],
        isJoined: from.isJoined,
      };
    });
  }
  return filled;
}
