import { at } from "../foundation/index.ts";
import type { Box } from "./boxes.ts";
import type { LineMark } from "./marks.ts";
import type { PaperPoint } from "./types.ts";

/**
 * The parts of a line that lie in a box, cut exactly at its border (Liang and Barsky 1984: a segment enters and
 * leaves each border at a parameter of its own; what remains between the last entry and the first exit is
 * inside). A closed line that lies inside whole stays closed; else open pieces come back.
 */
export function clipLine(line: LineMark, box: Box): readonly LineMark[] {
  const { points } = line;
  if (points.every((p) => isInside(p, box))) return [line];
  const { fill: _fill, ...open } = line;
  const pieces = clipPoints(line.closed ? [...points, at(points, 0)] : points, box);
  return pieces.map((piece) => ({ ...open, closed: false, points: piece }));
}

const isInside = (p: PaperPoint, box: Box): boolean =>
  p.x >= box.left && p.x <= box.right && p.y >= box.bottom && p.y <= box.top;

function clipPoints(points: readonly PaperPoint[], box: Box): PaperPoint[][] {
  const pieces: PaperPoint[][] = [];
  let current: PaperPoint[] = [];
  for (let i = 1; i < points.length; i++) {
    const [from, to] = [at(points, i - 1), at(points, i)];
    const range = isBeside(from, to, box) ? undefined : insideRange(from, to, box);
    if (range === undefined) {
      current = [];
      continue;
    }
    const [start, end] = range;
    if (start > 0 || current.length === 0) {
      current = [along(from, to, start)];
      pieces.push(current);
    }
    current.push(along(from, to, end));
    if (end < 1) current = [];
  }
  return joinEnds(pieces);
}

/** A closed line that starts inside comes back in two pieces that belong together. */
function joinEnds(pieces: PaperPoint[][]): PaperPoint[][] {
  const [first, last] = [pieces[0], pieces.at(-1)];
  if (first === undefined || last === undefined || first === last) return pieces;
  const [start, end] = [at(first, 0), at(last, -1)];
  if (start.x !== end.x || start.y !== end.y) return pieces;
  return [[...last, ...first.slice(1)], ...pieces.slice(1, -1)];
}

function along(from: PaperPoint, to: PaperPoint, t: number): PaperPoint {
  if (t === 0) return from;
  if (t === 1) return to;
  return { x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t };
}

/** Both ends beyond one border: nothing of the segment is inside. Most segments of a long line end here. */
const isBeside = (a: PaperPoint, b: PaperPoint, box: Box): boolean =>
  (a.x < box.left && b.x < box.left) ||
  (a.x > box.right && b.x > box.right) ||
  (a.y < box.bottom && b.y < box.bottom) ||
  (a.y > box.top && b.y > box.top);

/** The stretch of a segment inside the box as parameters 0 to 1; undefined where it has no length. */
function insideRange(from: PaperPoint, to: PaperPoint, box: Box): readonly [number, number] | undefined {
  if (isInside(from, box) && isInside(to, box)) return [0, 1];
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  let [start, end] = [0, 1];
  const borders: readonly (readonly [number, number])[] = [
    [-dx, from.x - box.left],
    [dx, box.right - from.x],
    [-dy, from.y - box.bottom],
    [dy, box.top - from.y],
  ];
  for (const [outward, room] of borders) {
    if (outward === 0) {
      if (room < 0) return undefined;
      continue;
    }
    const t = room / outward;
    if (outward < 0) start = Math.max(start, t);
    else end = Math.min(end, t);
  }
  return start < end ? [start, end] : undefined;
}
