import { at, distanceSpace, type SpacePoint } from "../foundation/index.ts";
import { inwardAt, type LyingSheet, type RegionEdge, spotOnEdge } from "../surfaces/index.ts";
import { type CutChoice, canCut, cutForFolds, cutOfFold, type FoldCut } from "./cut-of-fold.ts";
import { edgesInWalk, edgesWithId } from "./edge-places.ts";
import { type Candidate, foldBetween, type Partner, readyPartner } from "./find-partner.ts";
import type { GlueLine, SheetJoint } from "./sheet-joint.ts";
import type { EdgeSetBack, JointStation, SetBack } from "./types.ts";

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
/** Straight between stations a set-back misses by less than this, and a bevel by less than a degree's twentieth. */
const SET_BACK_MISS_MM = 0.002;
const BEVEL_MISS_RAD = 0.0009;
const MOST_HALVINGS = 6;

/** One look at a region edge: the neighbour there, and the fold. */
interface Look {
  readonly edge: RegionEdge;
  readonly share: number;
  readonly point: SpacePoint;
  readonly partner?: Partner;
  readonly foldRad: number;
}

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

interface Miss {
  readonly candidate: Candidate;
  readonly gapMm: number;
  readonly at: SpacePoint;
}

interface Looker {
  readonly look: (share: number) => Look;
  readonly misses: Miss[];
  readonly thirds: { readonly sheets: readonly [LyingSheet, LyingSheet]; readonly at: SpacePoint }[];
}

function lookerOf(
  sheet: LyingSheet,
  edge: RegionEdge,
  ready: readonly ((point: SpacePoint) => Partner | undefined)[],
  toleranceMm: number,
): Looker {
  const misses: Miss[] = [];
  const thirds: Looker["thirds"] = [];
  const look = (share: number): Look => {
    if (edge.isApex) return { edge, share, point: spotOnEdge(sheet, edge, 0.5).point, foldRad: 0 };
    const spot = spotOnEdge(sheet, edge, share);
    const { point } = spot;
    const found = ready.flatMap((find) => find(point) ?? []).sort((a, b) => a.missMm - b.missMm);
    const meeting = found.filter(({ missMm }) => missMm <= toleranceMm);
    const [partner] = meeting;
    const isInside = share > 0 && share < 1;
    if (!partner) {
      const [nearest] = found;
      if (nearest && !nearest.isBeyond)
        misses.push({ candidate: nearest.candidate, gapMm: nearest.missMm, at: point });
      return { edge, share, point, foldRad: 0 };
    }
    const third = isInside && meeting.find(({ candidate }) => candidate.sheet !== partner.candidate.sheet);
    if (third) thirds.push({ sheets: [partner.candidate.sheet, third.candidate.sheet], at: point });
    const foldRad = foldBetween(spot, inwardAt(partner.spot), inwardAt(spot));
    return { edge, share, point, partner, foldRad };
  };
  return { look, misses, thirds };
}

/** The length of an edge between two looks at it: chords and half chords, extrapolated (Richardson 1911). */
function lengthBetween(sheet: LyingSheet, a: Look, b: Look): number {
  const step = (b.share - a.share) / LENGTH_STEPS;
  let [fine, coarse] = [0, 0];
  let from = a.point;
  for (let i = 0; i < LENGTH_STEPS; i++) {
    const middle = spotOnEdge(sheet, a.edge, a.share + (i + 0.5) * step).point;
    const to = i === LENGTH_STEPS - 1 ? b.point : spotOnEdge(sheet, a.edge, a.share + (i + 1) * step).point;
    fine += distanceSpace(from, middle) + distanceSpace(middle, to);
    coarse += distanceSpace(from, to);
    from = to;
  }
  return fine + (fine - coarse) / 3;
}

const LENGTH_STEPS = 2;

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

/** Looks so close that set-back and bevel run straight between them; borders between neighbours are there twice. */
function refineLooks(
  first: readonly Look[],
  look: (share: number) => Look,
  cutAt: (look: Look) => FoldCut,
): readonly Look[] {
  const done: Look[] = [at(first, 0)];
  const refine = (a: Look, b: Look, left: number): void => {
    if (neighbourOf(a) !== neighbourOf(b)) {
      const [last, next] = borderBetween(a, b, look);
      done.push(last, next, b);
      return;
    }
    const middle = look((a.share + b.share) / 2);
    const [ca, cm, cb] = [cutAt(a), cutAt(middle), cutAt(b)];
    const isStraight =
      neighbourOf(middle) === neighbourOf(a) &&
      Math.abs(cm.setBackMm[0] - (ca.setBackMm[0] + cb.setBackMm[0]) / 2) <= SET_BACK_MISS_MM &&
      Math.abs(cm.bevelRad[0] - (ca.bevelRad[0] + cb.bevelRad[0]) / 2) <= BEVEL_MISS_RAD;
    if (isStraight || left === 0) {
      done.push(b);
      return;
    }
    refine(a, middle, left - 1);
    refine(middle, b, left - 1);
  };
  first.slice(1).forEach((next, i) => {
    refine(at(first, i), next, MOST_HALVINGS);
  });
  return done;
}

const neighbourOf = ({ partner }: Look): Candidate | undefined => partner?.candidate;

function borderBetween(a: Look, b: Look, look: (share: number) => Look): readonly [Look, Look] {
  let [last, next] = [a, b];
  for (let i = 0; i < 40 && next.share - last.share > 1e-9; i++) {
    const middle = look((last.share + next.share) / 2);
    if (neighbourOf(middle) === neighbourOf(a)) last = middle;
    else next = middle;
  }
  return [last, next];
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

/** Runs of looks along one neighbour; a single look is no run. */
function runsOf(looks: readonly Look[]): readonly (readonly Look[])[] {
  const runs: Look[][] = [];
  for (const look of looks) {
    if (!look.partner) continue;
    const last = runs.at(-1)?.at(-1);
    if (last && neighbourOf(last) === neighbourOf(look) && isNext(looks, last, look)) runs.at(-1)?.push(look);
    else runs.push([look]);
  }
  return runs.filter((run) => run.length > 1);
}

const isNext = (looks: readonly Look[], a: Look, b: Look): boolean =>
  looks.indexOf(b) === looks.indexOf(a) + 1;

function jointOf(
  sheet: LyingSheet,
  edgeId: string,
  run: readonly Look[],
  cutAt: (look: Look) => FoldCut,
  cuts: ReadonlyMap<Candidate, RunCut>,
): Omit<SheetJoint, "kind"> {
  const candidate = neighbourOf(at(run, 0));
  const stations: JointStation[] = [];
  let alongMm = 0;
  run.forEach((look, i) => {
    const before = run[i - 1];
    const stepMm = before?.edge === look.edge ? lengthBetween(sheet, before, look) : 0;
    alongMm += stepMm;
    const { bevelRad, setBackMm } = cutAt(look);
    if (before && stepMm < 1e-6 && Math.abs(before.foldRad - look.foldRad) < 1e-6) return;
    stations.push({ alongMm, at: look.point, foldRad: look.foldRad, bevelRad, setBackMm });
  });
  const [from, to] = [at(run, 0).point, at(run, -1).point];
  const kinds = run.map((look) => cutAt(look).cut);
  const through = run.map((look) => cutAt(look).through).find((side) => side !== undefined);
  const chosen = candidate && cuts.get(candidate)?.choice.cut;
  return {
    sheets: [sheet, candidate?.sheet ?? sheet],
    edgeIds: [edgeId, candidate?.edgeId ?? edgeId],
    ...(candidate?.isImage && { isWithImage: true }),
    lengthMm: alongMm,
    cut: kinds.includes("butt") ? "butt" : (chosen ?? at(kinds, 0)),
    ...(through !== undefined && { through }),
    stations,
    from: { x: from.x, y: from.y },
    to: { x: to.x, y: to.y },
  };
}
