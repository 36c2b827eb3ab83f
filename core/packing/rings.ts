import { EndType, FillRule, inflatePathsD, intersectD, JoinType } from "clipper2-ts";
import { at } from "../foundation/index.ts";
import type { PackingLoop, PackingPiece, PackingPoint } from "./types.ts";

/** More corners than this make the search slow; outlines with more are simplified, outward only. */
const MOST_CORNERS = 56;
/** The first tolerance of simplifying, mm; it doubles until the corners are few enough. */
const FIRST_TOLERANCE_MM = 0.05;
const MITRE_LIMIT = 2;
/** Corners are rounded to a grid of 0.001 mm twice. */
const GRID_SLACK_MM = 0.002;

/**
 * The loops that stand for a piece while it is laid, in its own frame, mm: grown by half the clearance, and
 * simplified so that the true piece lies wholly inside. Outline counter-clockwise, holes clockwise. Two pieces whose
 * loops do not overlap keep the clearance.
 */
export function grownRings(piece: PackingPiece, clearanceMm: number): readonly PackingLoop[] {
  const rings = [turned(piece.outline, 1), ...piece.holes.map((hole) => turned(hole, -1))];
  const corners = rings.reduce((sum, ring) => sum + ring.length, 0);
  if (corners <= MOST_CORNERS) return grow(rings, clearanceMm / 2);
  for (let toleranceMm = FIRST_TOLERANCE_MM; ; toleranceMm *= 2) {
    const simpler = rings.map((ring) => simplifyRing(ring, toleranceMm)).filter((ring) => ring.length > 2);
    const count = simpler.reduce((sum, ring) => sum + ring.length, 0);
    if (count <= MOST_CORNERS || simpler.every((ring) => ring.length === 3)) {
      const grown = grow(simpler, clearanceMm / 2 + toleranceMm);
      return withinBoxes(grown, at(rings, 0), clearanceMm / 2 + GRID_SLACK_MM);
    }
  }
}

function grow(rings: readonly PackingLoop[], byMm: number): readonly PackingLoop[] {
  if (byMm <= 0) return rings;
  return inflatePathsD(pathsOf(rings), byMm, JoinType.Miter, EndType.Polygon, MITRE_LIMIT, 3);
}

/**
 * What simplifying added beyond the boxes around the true outline, taken off again: the box along the axes and the one
 * along the longest side. A piece that is as long as its sheet then still fits.
 */
function withinBoxes(
  rings: readonly PackingLoop[],
  outline: PackingLoop,
  byMm: number,
): readonly PackingLoop[] {
  return [0, longestSideRad(outline)].reduce<readonly PackingLoop[]>((left, angleRad) => {
    const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
    const along = outline.map(({ x, y }) => x * cos + y * sin);
    const across = outline.map(({ x, y }) => y * cos - x * sin);
    const [from, to] = [Math.min(...along) - byMm, Math.max(...along) + byMm];
    const [low, high] = [Math.min(...across) - byMm, Math.max(...across) + byMm];
    const corner = (a: number, b: number) => ({ x: a * cos - b * sin, y: a * sin + b * cos });
    const box = [corner(from, low), corner(to, low), corner(to, high), corner(from, high)];
    return intersectD(pathsOf(left), [box], FillRule.NonZero, 4);
  }, rings);
}

const pathsOf = (rings: readonly PackingLoop[]) => rings.map((ring) => ring.map(({ x, y }) => ({ x, y })));

/** The direction of the longest side of a loop, rad. */
export function longestSideRad(loop: PackingLoop): number {
  let most = -1;
  let angleRad = 0;
  for (const [index, b] of loop.entries()) {
    const a = at(loop, index - 1);
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    if (length > most) [most, angleRad] = [length, Math.atan2(b.y - a.y, b.x - a.x)];
  }
  return angleRad;
}

/** The ring with the given sense: 1 counter-clockwise, -1 clockwise. */
const turned = (ring: PackingLoop, sense: 1 | -1): PackingLoop =>
  Math.sign(ringArea(ring)) === sense ? ring : [...ring].reverse();

/** Area of a ring, mm²; positive when it is counter-clockwise. */
export function ringArea(ring: PackingLoop): number {
  let twice = 0;
  for (let i = 0; i < ring.length; i++) {
    const [a, b] = [at(ring, i - 1), at(ring, i)];
    twice += a.x * b.y - b.x * a.y;
  }
  return twice / 2;
}

/** Fewer corners, none of the left out ones further than the tolerance from the new ring (Douglas & Peucker 1973). */
function simplifyRing(ring: PackingLoop, toleranceMm: number): PackingLoop {
  const start = extremeIndex(ring, 0);
  const loop = [...ring.slice(start), ...ring.slice(0, start + 1)];
  const middle = extremeIndex(loop, loop.length - 1);
  const first = simplifyRun(loop.slice(0, middle + 1), toleranceMm);
  const second = simplifyRun(loop.slice(middle), toleranceMm);
  return [...first.slice(0, -1), ...second.slice(0, -1)];
}

/** The corner furthest from the one at `from`. */
function extremeIndex(ring: PackingLoop, from: number): number {
  const start = at(ring, from);
  let best = 0;
  let most = -1;
  for (const [index, { x, y }] of ring.entries()) {
    const far = Math.hypot(x - start.x, y - start.y);
    if (far > most) [best, most] = [index, far];
  }
  return best;
}

function simplifyRun(run: PackingLoop, toleranceMm: number): PackingLoop {
  const [first, last] = [at(run, 0), at(run, -1)];
  let split = 0;
  let most = toleranceMm;
  for (let i = 1; i < run.length - 1; i++) {
    const off = distanceToSegment(at(run, i), first, last);
    if (off > most) [split, most] = [i, off];
  }
  if (split === 0) return run.length > 1 ? [first, last] : run;
  return [
    ...simplifyRun(run.slice(0, split + 1), toleranceMm).slice(0, -1),
    ...simplifyRun(run.slice(split), toleranceMm),
  ];
}

/** Distance from a point to a segment, mm. */
export function distanceToSegment(p: PackingPoint, a: PackingPoint, b: PackingPoint): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square > 0 ? Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square)) : 0;
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}
