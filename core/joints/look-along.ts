import { at, type SpacePoint } from "../foundation/index.ts";
import { inwardAt, type LyingSheet, type RegionEdge, spotOnEdge } from "../surfaces/index.ts";
import type { FoldCut } from "./cut-of-fold.ts";
import { type Candidate, foldBetween, type Partner } from "./find-partner.ts";

/** One look at a region edge: the neighbour there, and the fold. */
export interface Look {
  readonly edge: RegionEdge;
  readonly share: number;
  readonly point: SpacePoint;
  readonly partner?: Partner;
  readonly foldRad: number;
}

/** The neighbour that a look found. */
export const neighbourOf = ({ partner }: Look): Candidate | undefined => partner?.candidate;

/** A place where a neighbour runs beside an edge and does not meet it. */
export interface Miss {
  readonly candidate: Candidate;
  readonly gapMm: number;
  readonly at: SpacePoint;
}

/** Looks along one region edge, and what they came by that does not meet, or meets besides. */
export interface Looker {
  readonly look: (share: number) => Look;
  readonly misses: Miss[];
  readonly thirds: { readonly sheets: readonly [LyingSheet, LyingSheet]; readonly at: SpacePoint }[];
}

/** Makes a region edge ready to be looked along, for neighbours that are ready to be found. */
export function lookerOf(
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

/** Straight between stations a set-back misses by less than this, and a bevel by less than a degree's twentieth. */
const SET_BACK_MISS_MM = 0.002;
const BEVEL_MISS_RAD = 0.0009;
const MOST_HALVINGS = 6;

/** Looks so close that set-back and bevel run straight between them; borders between neighbours are there twice. */
export function refineLooks(
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

function borderBetween(a: Look, b: Look, look: (share: number) => Look): readonly [Look, Look] {
  let [last, next] = [a, b];
  for (let i = 0; i < 40 && next.share - last.share > 1e-9; i++) {
    const middle = look((last.share + next.share) / 2);
    if (neighbourOf(middle) === neighbourOf(a)) last = middle;
    else next = middle;
  }
  return [last, next];
}
