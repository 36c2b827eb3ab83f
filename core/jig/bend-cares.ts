import type { BendZone } from "../bending/index.ts";
import { HELD_BY_THICKNESSES, isReached, type Seam } from "../cutting/index.ts";
import { at, type FlatPoint } from "../foundation/index.ts";
import type { FlatEdge, Part } from "../patterns/index.ts";
import type { LiePast } from "./lie/types.ts";
import type { BendCare } from "./types.ts";

/** Bends of opposite sense with less flat between them than so many thicknesses work against each other (common practice). */
const APART_THICKNESSES = 5;

/** A slot keeps so many pitches away from a joint or an edge. */
const CLEAR_PITCHES = 3;

/** What wants care in making one bend of a part. */
export function caresOf(
  part: Part,
  zone: BendZone,
  seams: readonly Seam[],
  pasts: readonly LiePast[],
): readonly BendCare[] {
  const own = pasts.filter((past) => past.partIds.includes(part.id) && isOfBend(past, part, zone));
  return [
    ...wrongWayFirst(part, zone),
    ...own.map(
      ({ edgeName, lengthMm, ribId, withMm, withoutMm }): BendCare => ({
        kind: "runs past",
        edgeName,
        lengthMm,
        withMm,
        withoutMm,
        ...(ribId !== undefined && { ribId }),
      }),
    ),
    ...nearEdge(
      part,
      zone,
      own.map(({ toward }) => toward),
    ),
    ...acrossSeams(part, zone, seams),
    ...slotsNearEdges(part, zone),
  ];
}

/** A neighbour that bends the other way, so near that holding one bends the other the wrong way first. */
function wrongWayFirst({ zones, thicknessMm }: Part, zone: BendZone): readonly BendCare[] {
  if (zone.verdict !== "bend cold") return [];
  const other = zones.find(
    ({ fromUMm, inside, leastRadiusMm }) =>
      leastRadiusMm !== undefined && fromUMm >= zone.toUMm - 1e-6 && inside !== undefined,
  );
  if (!other || other.inside === zone.inside || other.verdict !== "bend cold") return [];
  const gapMm = Math.max(0, other.fromUMm - zone.toUMm);
  const leastMm = APART_THICKNESSES * thicknessMm;
  return gapMm < leastMm ? [{ kind: "wrong way first", gapMm, leastMm }] : [];
}

/** Whether foam runs past an edge for the sake of this bend. */
function isOfBend({ edgeIds, toward }: LiePast, { loops, thicknessMm }: Part, zone: BendZone): boolean {
  const edge = loops.flatMap(({ edges }) => edges).find((one) => edgeIds.includes(one.edgeId));
  return (
    edge !== undefined &&
    zone.verdict === "bend cold" &&
    isReached({ edge, toward }, zone, HELD_BY_THICKNESSES * thicknessMm)
  );
}

/** A cold bend that ends too near to a free edge to be held there, and where no foam runs past it. */
function nearEdge(part: Part, zone: BendZone, heldAt: readonly LiePast["toward"][]): readonly BendCare[] {
  if (zone.verdict !== "bend cold") return [];
  const leastMm = HELD_BY_THICKNESSES * part.thicknessMm;
  const us = part.loops.flatMap(({ edges }) => edges.flatMap(({ points }) => points.map(({ u }) => u)));
  const [leastU, mostU] = us.reduce(([low, high], u) => [Math.min(low, u), Math.max(high, u)] as const, [
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ] as const);
  const ends = [
    { leftMm: zone.fromUMm - leastU, isFree: !heldAt.includes("first") && isFreeEnd(part, leastU) },
    { leftMm: mostU - zone.toUMm, isFree: !heldAt.includes("last") && isFreeEnd(part, mostU) },
  ];
  const [worst] = ends
    .filter(({ leftMm, isFree }) => isFree && leftMm < leastMm)
    .toSorted((a, b) => a.leftMm - b.leftMm);
  return worst ? [{ kind: "near the edge", leftMm: worst.leftMm, leastMm }] : [];
}

/** Whether a part ends at a u with an edge that is joined to nothing. */
const isFreeEnd = ({ loops }: Part, uMm: number): boolean =>
  loops
    .flatMap(({ edges }) => edges)
    .some(({ role, points }) => role === "free" && points.some(({ u }) => Math.abs(u - uMm) < 1e-6));

/** Seams that run through a bend: the splice bends less evenly than the foam beside it. */
const acrossSeams = ({ id }: Part, zone: BendZone, seams: readonly Seam[]): readonly BendCare[] =>
  zone.verdict === "planks"
    ? []
    : seams
        .filter(
          ({ partId, runs, atMm }) =>
            partId === id &&
            (runs === "across rulings" || (atMm > zone.fromUMm + 1e-6 && atMm < zone.toUMm - 1e-6)),
        )
        .map((seam): BendCare => ({ kind: "across a seam", seamId: seam.id }));

/** The slot of a bend that comes nearest to an edge that runs across the bend. */
function slotsNearEdges({ loops }: Part, { bend }: BendZone): readonly BendCare[] {
  const { placesUMm = [], pitchMm } = bend?.slots ?? {};
  if (!pitchMm) return [];
  const clearMm = CLEAR_PITCHES * pitchMm[1];
  const across = loops.flatMap(({ edges }) => edges).filter(runsAcross);
  const near = placesUMm.flatMap((slotUMm) =>
    across.flatMap((edge) => {
      const distanceMm = Math.min(...edge.points.map(({ u }) => Math.abs(u - slotUMm)));
      return distanceMm < clearMm
        ? [{ kind: "slot near an edge" as const, slotUMm, distanceMm, clearMm, edgeName: edge.name }]
        : [];
    }),
  );
  return near.toSorted((a, b) => a.distanceMm - b.distanceMm).slice(0, 1);
}

/** Whether an edge runs along the rulings more than across them. */
function runsAcross({ points }: FlatEdge): boolean {
  const [a, b]: readonly FlatPoint[] = [at(points, 0), at(points, -1)];
  return a !== undefined && b !== undefined && Math.abs(b.v - a.v) > Math.abs(b.u - a.u);
}
