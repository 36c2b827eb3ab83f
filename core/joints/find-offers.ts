import { at, dotSpace, type Problem, type SpacePoint } from "../foundation/index.ts";
import { nameOfItem } from "../project/index.ts";
import { type EdgeSpot, type LyingSheet, type RegionEdge, spotOnEdge } from "../surfaces/index.ts";
import { edgesOf } from "./edge-places.ts";
import { type Candidate, readyPartner } from "./find-partner.ts";
import type { JointGround } from "./joint-ground.ts";
import type { LinkedEdge } from "./linked-edges.ts";
import type { JointOffer } from "./types.ts";

/** Places at which a drawn edge is compared with another's. */
const LOOKS = 8;
/** Edges that cross at more than this do not run beside each other: their directions' cosine. */
const PARALLEL = 0.98;
/** A gap up to so many tolerances is a slip of the drawing; a wider one is meant. */
const SLIP = 10;
/** Shorter than this, lying on each other is a corner, mm. */
const LEAST_MM = 20;

/** A free drawn edge of a sheet that refers to no other, and no other to it. */
interface FreeEdge {
  readonly sheet: LyingSheet;
  readonly edgeId: string;
  readonly edges: readonly RegionEdge[];
  readonly spots: readonly EdgeSpot[];
  readonly least: SpacePoint;
  readonly most: SpacePoint;
}

/**
 * Edges of different items that lie on each other within the tolerance though neither refers to the other: offered as
 * joints, and a problem to look at; and edges that nearly do, as a gap with its size and place.
 */
export function findOffers(
  project: JointGround,
  sheets: readonly LyingSheet[],
  linked: readonly LinkedEdge[],
): { readonly offers: readonly JointOffer[]; readonly problems: readonly Problem[] } {
  const { toleranceMm } = project.joints;
  const isLinked = new Set(linked.map(({ sheet, edgeId }) => `${sheet.id}/${edgeId}`));
  const free = sheets.flatMap((sheet) => freeEdgesOf(sheet)).filter((edge) => !isLinked.has(keyOf(edge)));
  const offers: JointOffer[] = [];
  const problems: Problem[] = [];
  const nameOf = ({ sheet }: FreeEdge): string => {
    const item = project.items.find(({ id }) => id === sheet.itemId);
    return item ? nameOfItem(item) : sheet.name;
  };
  free.forEach((a, i) => {
    for (const b of free.slice(i + 1)) {
      if (a.sheet.itemId === b.sheet.itemId || !isNear(a, b, SLIP * toleranceMm)) continue;
      const found = compare(a, b, toleranceMm) ?? compare(b, a, toleranceMm);
      if (!found) continue;
      const named = {
        place: { itemId: a.sheet.itemId, nodeId: a.edgeId },
        name: nameOf(a),
        otherName: nameOf(b),
      };
      if (found.gapMm > toleranceMm) {
        problems.push({ kind: "edges-nearly-meet", ...named, gapMm: found.gapMm, at: found.at });
        continue;
      }
      const isKnown = offers.some(({ first, second }) => isEdge(first, a) && isEdge(second, b));
      if (isKnown) continue;
      offers.push({ first: edgeOf(a), second: edgeOf(b), lengthMm: found.lengthMm, gapMm: found.gapMm });
      problems.push({ kind: "edges-coincide", ...named, edgeIds: [a.edgeId, b.edgeId], at: found.at });
    }
  });
  return { offers, problems };
}

const keyOf = ({ sheet, edgeId }: FreeEdge): string => `${sheet.id}/${edgeId}`;
const edgeOf = ({ sheet, edgeId }: FreeEdge) => ({ itemId: sheet.itemId, edgeId });
const isEdge = (edge: JointOffer["first"], { sheet, edgeId }: FreeEdge): boolean =>
  edge.itemId === sheet.itemId && edge.edgeId === edgeId;

function freeEdgesOf(sheet: LyingSheet): readonly FreeEdge[] {
  const drawn = edgesOf(sheet).filter(
    ({ role, edgeId, trace, isApex }) =>
      role === "free" && trace !== undefined && !isApex && !edgeId.endsWith(".left"),
  );
  return [...new Set(drawn.map(({ edgeId }) => edgeId))].map((edgeId) => {
    const edges = drawn.filter((edge) => edge.edgeId === edgeId);
    const spots = edges.flatMap((edge) =>
      Array.from({ length: LOOKS + 1 }, (_, i) => spotOnEdge(sheet, edge, i / LOOKS)),
    );
    const points = spots.map(({ point }) => point);
    return {
      sheet,
      edgeId,
      edges,
      spots,
      least: cornerOf(points, Math.min),
      most: cornerOf(points, Math.max),
    };
  });
}

const cornerOf = (points: readonly SpacePoint[], pick: (...values: number[]) => number): SpacePoint => ({
  x: pick(...points.map(({ x }) => x)),
  y: pick(...points.map(({ y }) => y)),
  z: pick(...points.map(({ z }) => z)),
});

const isNear = (a: FreeEdge, b: FreeEdge, reachMm: number): boolean =>
  (["x", "y", "z"] as const).every(
    (axis) => a.least[axis] <= b.most[axis] + reachMm && b.least[axis] <= a.most[axis] + reachMm,
  );

/** How far the longest run of looks along an edge lies from another's, where it runs beside it; undefined where it does not. */
function compare(
  a: FreeEdge,
  b: FreeEdge,
  toleranceMm: number,
): { readonly gapMm: number; readonly lengthMm: number; readonly at: { x: number; y: number } } | undefined {
  const candidate: Candidate = { sheet: b.sheet, edgeId: b.edgeId, edges: b.edges };
  const find = readyPartner(candidate);
  let run: { readonly spot: EdgeSpot; readonly missMm: number }[] = [];
  let best: typeof run = [];
  for (const spot of a.spots) {
    const partner = find(spot.point);
    const isBeside =
      partner !== undefined &&
      !partner.isBeyond &&
      partner.missMm <= SLIP * toleranceMm &&
      Math.abs(dotSpace(partner.spot.along, spot.along)) > PARALLEL;
    run = isBeside ? [...run, { spot, missMm: partner.missMm }] : [];
    if (run.length > best.length) best = run;
  }
  if (best.length < 3) return undefined;
  const lengthMm = best.slice(1).reduce((sum, { spot }, i) => {
    const { point } = at(best, i).spot;
    return sum + Math.hypot(spot.point.x - point.x, spot.point.y - point.y, spot.point.z - point.z);
  }, 0);
  if (lengthMm < LEAST_MM) return undefined;
  const widest = best.reduce((most, one) => (one.missMm > most.missMm ? one : most));
  const { x, y } = widest.spot.point;
  return { gapMm: widest.missMm, lengthMm, at: { x, y } };
}
