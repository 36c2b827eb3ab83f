import { at, type FlatPoint } from "../foundation/index.ts";
import type { Rib } from "./types.ts";

/** Outlines that differ by less are one template, mm: a tenth of what a saw keeps to. */
const SAME_MM = 0.05;

/**
 * Marks each rib with the first one before it that has the same outline: as it stands in the car, or (across)
 * mirrored about the centre line. Ribs that are bevelled are only the same as they stand.
 */
export function markSameOutlines(ribs: readonly Rib[]): Rib[] {
  return ribs.map((rib, i) => {
    const twin = ribs.slice(0, i).find((other) => other.sameAs === other.id && isSame(other, rib));
    return { ...rib, sameAs: twin?.sameAs ?? rib.id };
  });
}

function isSame(a: Rib, b: Rib): boolean {
  if (a.runs !== b.runs || a.thicknessMm !== b.thicknessMm || a.cut !== b.cut) return false;
  if (a.cut === "bevel" && a.stationFace !== b.stationFace) return false;
  const isAlike = (image: (loop: Loop) => Loop) =>
    isSameOutline(a.outlineMm, image(b.outlineMm)) && hasSameHoles(a, b.holesMm.map(image));
  if (isAlike((loop) => loop)) return areSplicedAlike(a, b);
  // A splice has a left and a right side: a mirrored one is another template.
  const isWhole = a.splices.length === 0 && b.splices.length === 0;
  return a.runs === "across" && a.cut === "square" && isWhole && isAlike(mirrored);
}

type Loop = readonly FlatPoint[];

const mirrored = (loop: Loop): Loop => loop.map(({ u, v }) => ({ u: -u, v })).reverse();

const hasSameHoles = ({ holesMm }: Rib, others: readonly Loop[]): boolean =>
  holesMm.length === others.length &&
  holesMm.every((hole) => others.some((other) => isSameOutline(hole, other)));

const areSplicedAlike = (a: Rib, b: Rib): boolean =>
  a.splices.length === b.splices.length &&
  a.splices.every(({ atMm }, i) => Math.abs(atMm - (b.splices[i]?.atMm ?? Number.NaN)) <= SAME_MM);

/** Each corner of either outline lies on the other one. */
const isSameOutline = (a: readonly FlatPoint[], b: readonly FlatPoint[]): boolean =>
  a.every((point) => isOn(point, b)) && b.every((point) => isOn(point, a));

const isOn = (point: FlatPoint, outline: readonly FlatPoint[]): boolean =>
  outline.some((to, i) => distanceMm(point, at(outline, i - 1), to) <= SAME_MM);

function distanceMm(point: FlatPoint, from: FlatPoint, to: FlatPoint): number {
  const [du, dv] = [to.u - from.u, to.v - from.v];
  const squared = du * du + dv * dv;
  const along = squared === 0 ? 0 : ((point.u - from.u) * du + (point.v - from.v) * dv) / squared;
  const share = Math.min(1, Math.max(0, along));
  return Math.hypot(point.u - from.u - share * du, point.v - from.v - share * dv);
}
