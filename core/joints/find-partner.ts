import { addSpace, at, distanceSpace, dotSpace, type SpacePoint } from "../foundation/index.ts";
import { type EdgeSpot, type LyingSheet, type RegionEdge, spotOnEdge } from "../surfaces/index.ts";

/** Edges of one sheet that another edge may lie on. */
export interface Candidate {
  readonly sheet: LyingSheet;
  readonly edgeId: string;
  readonly edges: readonly RegionEdge[];
  /** The sheet's own image across the centre line is meant. */
  readonly isImage?: boolean;
}

/** The place of a candidate that is nearest to a point. */
export interface Partner {
  readonly candidate: Candidate;
  readonly spot: EdgeSpot;
  readonly missMm: number;
  /** The nearest place is an end of the candidate's edges, and the point lies beyond it. */
  readonly isBeyond: boolean;
}

/** Places along an edge where it is first looked at. */
const LOOKS = 8;
/** Steps from the nearest look; edges that are walked evenly and lie on each other need two. */
const STEPS = 24;

/** A candidate made ready: its edges with spots along them. */
export function readyPartner(candidate: Candidate): (point: SpacePoint) => Partner | undefined {
  const spotAt = (edge: RegionEdge, share: number) => {
    const spot = spotOnEdge(candidate.sheet, edge, share);
    return candidate.isImage ? imageOf(spot) : spot;
  };
  const looks = candidate.edges.flatMap((edge, index) =>
    Array.from({ length: LOOKS + 1 }, (_, i) => ({
      edge,
      index,
      share: i / LOOKS,
      point: spotAt(edge, i / LOOKS).point,
    })),
  );
  return (point) => {
    const byEdge = candidate.edges.flatMap((edge, index) => {
      const own = looks.filter((look) => look.index === index);
      const near = own.reduce((best, look) =>
        distanceSpace(look.point, point) < distanceSpace(best.point, point) ? look : best,
      );
      const lengthMm = own
        .slice(1)
        .reduce((sum, look, i) => sum + distanceSpace(look.point, at(own, i).point), 0);
      return lengthMm > 0 ? [nearestOn((share) => spotAt(edge, share), near.share, lengthMm, point)] : [];
    });
    const [best] = byEdge.sort((a, b) => a.missMm - b.missMm);
    return best && { candidate, ...best };
  };
}

function nearestOn(
  spotAt: (share: number) => EdgeSpot,
  start: number,
  lengthMm: number,
  point: SpacePoint,
): { readonly spot: EdgeSpot; readonly missMm: number; readonly isBeyond: boolean } {
  let share = start;
  let spot = spotAt(share);
  let alongMm = 0;
  // Beside a fan an edge is walked at twice its mean speed, or hardly. So Newton's step is kept between the places that
  // are known to lie before and behind; where it would leave them, or the last one did not help, what is between is halved.
  let [before, behind] = [Math.max(0, start - 1 / LOOKS), Math.min(1, start + 1 / LOOKS)];
  let lastMm = Number.POSITIVE_INFINITY;
  for (let i = 0; i < STEPS; i++) {
    alongMm = dotSpace(addSpace(point, spot.point, -1), spot.along);
    if (alongMm > 0) before = Math.max(before, share);
    else behind = Math.min(behind, share);
    const step = share + alongMm / lengthMm;
    const isOut = step <= before || step >= behind || Math.abs(alongMm) > lastMm / 2;
    lastMm = Math.abs(alongMm);
    const next = i === 0 || !isOut ? Math.min(behind, Math.max(before, step)) : (before + behind) / 2;
    if (Math.abs(next - share) * lengthMm < 1e-6) break;
    share = next;
    spot = spotAt(share);
  }
  const missMm = distanceSpace(point, spot.point);
  const isAtEnd = share === 0 || share === 1;
  return { spot, missMm, isBeyond: isAtEnd && Math.abs(alongMm) > Math.max(1e-3, missMm / 2) };
}

const imageOf = ({ point, along, normal }: EdgeSpot): EdgeSpot => ({
  point: mirrored(point),
  along: { x: -along.x, y: along.y, z: -along.z },
  normal: mirrored(normal),
});

const mirrored = ({ x, y, z }: SpacePoint): SpacePoint => ({ x, y: -y, z });

/**
 * The fold at an edge, rad: the turn from this sheet's outward direction to the neighbour's inward one, about the
 * edge; positive when the neighbour rises toward this sheet's inward normal (the core lies inside the fold).
 */
export function foldBetween(own: EdgeSpot, inwardOfOther: SpacePoint, inwardOfOwn: SpacePoint): number {
  return Math.atan2(dotSpace(inwardOfOther, own.normal), -dotSpace(inwardOfOther, inwardOfOwn));
}
