import { at } from "../foundation/index.ts";
import { distanceToSegment } from "./rings.ts";
import type { PackingLoop, PackingPoint } from "./types.ts";

/** A circle inside a piece. */
export interface Pole extends PackingPoint {
  readonly radius: number;
}

/** How many places inside a piece are tried as centres. */
const PLACES = 1500;
/** Poles end once they cover this much of the piece, or at their number. */
const COVERED = 0.9;
const LEAST_POLES = 4;
/** Of a compact piece, and of the longest: more say little more of how deep two pieces lie, and each takes time. */
const [COMPACT_POLES, MOST_POLES] = [8, 16];
const FIRST_STEPS = 4;

/**
 * Circles inside the loops that stand for the piece's body, the largest first, each as large as possible without
 * entering the ones before it further than their rims: their overlap with the circles of another piece says how deep
 * two pieces lie in each other. A compact piece has few, a long thin one many, spread along its middle.
 */
export function polesOf(rings: readonly PackingLoop[], areaMm2: number): readonly Pole[] {
  const box = boxOf(at(rings, 0));
  const step = Math.sqrt(((box.maxX - box.minX) * (box.maxY - box.minY)) / PLACES) || 1;
  const fine = Math.min(step, Math.sqrt(areaMm2 / PLACES));
  const places: { readonly x: number; readonly y: number; room: number }[] = [];
  for (let x = box.minX + fine / 2; x < box.maxX; x += fine)
    for (let y = box.minY + fine / 2; y < box.maxY; y += fine) {
      if (isInside(rings, x, y)) places.push({ x, y, room: distanceToRings(rings, { x, y }) });
    }
  const poles: Pole[] = [];
  let covered = 0;
  let most = COMPACT_POLES;
  while (poles.length < most && (poles.length < LEAST_POLES || covered < COVERED * areaMm2)) {
    const start = places.reduce((best, place) => (place.room > best.room ? place : best), {
      x: 0,
      y: 0,
      room: 0,
    });
    if (start.room <= 0) break;
    const pole = climb(rings, poles, start, fine);
    poles.push(pole);
    if (poles.length === 1) most = mostPoles(box, pole.radius);
    covered += Math.PI * pole.radius ** 2;
    for (const place of places) place.room = Math.min(place.room, distanceToRim(place, pole));
  }
  return poles;
}

/** One for each width of a piece along its length. */
const mostPoles = (box: Box, radius: number): number =>
  Math.min(
    MOST_POLES,
    Math.max(COMPACT_POLES, Math.ceil(Math.hypot(box.maxX - box.minX, box.maxY - box.minY) / (2 * radius))),
  );

/** The centre moved to where the circle is largest, in steps that halve. */
function climb(
  rings: readonly PackingLoop[],
  poles: readonly Pole[],
  start: PackingPoint & { readonly room: number },
  stepMm: number,
): Pole {
  const roomAt = (p: PackingPoint): number =>
    isInside(rings, p.x, p.y)
      ? Math.min(distanceToRings(rings, p), ...poles.map((pole) => distanceToRim(p, pole)))
      : 0;
  let best: Pole = { x: start.x, y: start.y, radius: start.room };
  for (let step = stepMm / 2, left = FIRST_STEPS; left > 0; step /= 2, left--) {
    for (const [dx, dy] of [
      [step, 0],
      [-step, 0],
      [0, step],
      [0, -step],
    ] as const) {
      const next = { x: best.x + dx, y: best.y + dy };
      const radius = roomAt(next);
      if (radius > best.radius) best = { ...next, radius };
    }
  }
  return best;
}

const distanceToRim = (p: PackingPoint, pole: Pole): number =>
  Math.hypot(p.x - pole.x, p.y - pole.y) - pole.radius;

function distanceToRings(rings: readonly PackingLoop[], p: PackingPoint): number {
  let least = Number.POSITIVE_INFINITY;
  for (const ring of rings)
    for (let i = 0; i < ring.length; i++)
      least = Math.min(least, distanceToSegment(p, at(ring, i - 1), at(ring, i)));
  return least;
}

/** Whether a point lies in the body: an odd number of edges crossed by a ray. */
function isInside(rings: readonly PackingLoop[], x: number, y: number): boolean {
  let inside = false;
  for (const ring of rings)
    for (let i = 0; i < ring.length; i++) {
      const [a, b] = [at(ring, i - 1), at(ring, i)];
      if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
    }
  return inside;
}

interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export function boxOf(loop: PackingLoop): Box {
  let [minX, minY] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  let [maxX, maxY] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { x, y } of loop) {
    [minX, maxX] = [Math.min(minX, x), Math.max(maxX, x)];
    [minY, maxY] = [Math.min(minY, y), Math.max(maxY, y)];
  }
  return { minX, minY, maxX, maxY };
}
