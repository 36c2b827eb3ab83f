import { at, type FlatPoint } from "../foundation/index.ts";
import { type FlatEdge, type FlatLoop, polygonOfLoop } from "../patterns/index.ts";

/** A corner sharper than this is cut off square, so that its point does not run away: 4 offsets from the corner. */
const MITRE_LIMIT = 4;
/** Two directions that differ by less are one straight line. */
const STRAIGHT_RAD = 1e-9;

/**
 * Loops moved away from the foam (outlines grow, holes shrink), each edge by its own distance, with mitred
 * corners; one polygon for each loop, in its own direction. Meant for allowances that are small beside the part:
 * stretches that vanish in an inner corner are taken out, crossings between far-off edges are not looked for.
 */
export function offsetLoops(
  loops: readonly FlatLoop[],
  outwardMm: (edge: FlatEdge) => number,
): (readonly FlatPoint[])[] {
  return loops.map((loop) => offsetLoop(loop, outwardMm));
}

/** One straight stretch, moved: a point on it, its direction, and how far it has been moved. */
interface Stretch {
  readonly from: FlatPoint;
  readonly to: FlatPoint;
  readonly along: FlatPoint;
  readonly movedMm: number;
}

/** Where one stretch ends and the next one starts; the same point unless a step or a blunt end lies between. */
interface Join {
  readonly arrive: FlatPoint;
  readonly leave: FlatPoint;
}

function offsetLoop(loop: FlatLoop, outwardMm: (edge: FlatEdge) => number): readonly FlatPoint[] {
  if (loop.edges.every((edge) => outwardMm(edge) === 0)) return polygonOfLoop(loop);
  let stretches = loop.edges.flatMap((edge) => stretchesOf(edge, outwardMm(edge)));
  for (;;) {
    const current = stretches;
    const joins = current.map((stretch, i) => joinOf(at(current, i - 1), stretch));
    const kept = current.filter((stretch, i) => {
      const from = at(joins, i).leave;
      const to = at(joins, (i + 1) % joins.length).arrive;
      return (to.u - from.u) * stretch.along.u + (to.v - from.v) * stretch.along.v >= 0;
    });
    if (kept.length === current.length || kept.length < 3) return joins.flatMap(pointsOfJoin);
    stretches = kept;
  }
}

function stretchesOf(edge: FlatEdge, movedMm: number): Stretch[] {
  const stretches: Stretch[] = [];
  for (let i = 1; i < edge.points.length; i++) {
    const from = at(edge.points, i - 1);
    const to = at(edge.points, i);
    const lengthMm = Math.hypot(to.u - from.u, to.v - from.v);
    if (lengthMm === 0) continue;
    const along = { u: (to.u - from.u) / lengthMm, v: (to.v - from.v) / lengthMm };
    stretches.push({ from: moved(from, along, movedMm), to: moved(to, along, movedMm), along, movedMm });
  }
  return stretches;
}

/** The foam lies on the left of every loop, so away from it is to the right. */
const moved = (point: FlatPoint, along: FlatPoint, byMm: number): FlatPoint => ({
  u: point.u + along.v * byMm,
  v: point.v - along.u * byMm,
});

function joinOf(before: Stretch, after: Stretch): Join {
  const turn = before.along.u * after.along.v - before.along.v * after.along.u;
  const facing = before.along.u * after.along.u + before.along.v * after.along.v;
  const isStraight = Math.abs(turn) < STRAIGHT_RAD && facing > 0;
  const reach = Math.max(Math.abs(before.movedMm), Math.abs(after.movedMm));
  if (isStraight || Math.sqrt((1 + facing) / 2) * MITRE_LIMIT < 1) {
    const overrun = isStraight ? 0 : reach;
    return {
      arrive: ahead(before.to, before.along, overrun),
      leave: ahead(after.from, after.along, -overrun),
    };
  }
  const du = after.from.u - before.from.u;
  const dv = after.from.v - before.from.v;
  const corner = ahead(before.from, before.along, (du * after.along.v - dv * after.along.u) / turn);
  return { arrive: corner, leave: corner };
}

const ahead = (point: FlatPoint, along: FlatPoint, byMm: number): FlatPoint => ({
  u: point.u + along.u * byMm,
  v: point.v + along.v * byMm,
});

function pointsOfJoin({ arrive, leave }: Join): FlatPoint[] {
  const isOne = Math.hypot(arrive.u - leave.u, arrive.v - leave.v) < 1e-9;
  return isOne ? [leave] : [arrive, leave];
}
