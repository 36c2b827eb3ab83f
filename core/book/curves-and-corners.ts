import { at } from "../foundation/index.ts";
import { type LineMark, lineMark } from "./marks.ts";
import type { PaperPoint } from "./types.ts";

/** A run this long that strays from its chord by no more than so much is marked by a straightedge, mm. */
const LEAST_RUN_MM = 100;
const STRAIGHT_MM = 0.05;
/** So much of a straight run belongs to the corner at its end, mm. */
const CORNER_MM = 15;

/**
 * What must be had at true size of a line to cut by: all of it but its long straight runs, of which the ends stay with
 * their corners. Open pieces in the order of the line.
 */
export function curvesAndCorners(line: LineMark): readonly LineMark[] {
  const points = line.closed ? fromSharpest(line.points) : line.points;
  const pieces: PaperPoint[][] = [];
  let open: PaperPoint[] = [];
  for (const run of runsOf(points)) {
    const [first, last] = [at(run, 0), at(run, -1)];
    const lengthMm = distance(first, last);
    if (lengthMm < LEAST_RUN_MM) {
      open.push(...(open.length === 0 ? run : run.slice(1)));
      continue;
    }
    if (open.length === 0) open.push(first);
    open.push(along(first, last, CORNER_MM / lengthMm));
    pieces.push(open);
    open = [along(first, last, 1 - CORNER_MM / lengthMm), last];
  }
  if (open.length > 1) pieces.push(open);
  return pieces.map((piece) => lineMark(piece, line.style, line.layer));
}

/** A closed line from its sharpest corner round to it again. */
function fromSharpest(points: readonly PaperPoint[]): readonly PaperPoint[] {
  const turns = points.map((p, i) => {
    const [before, after] = [at(points, i - 1), at(points, (i + 1) % points.length)];
    const [ax, ay, bx, by] = [p.x - before.x, p.y - before.y, after.x - p.x, after.y - p.y];
    return Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by));
  });
  const sharpest = turns.indexOf(Math.max(...turns));
  return [...points.slice(sharpest), ...points.slice(0, sharpest + 1)];
}

/** The line in runs that share their ends, each as long as it stays straight. */
function runsOf(points: readonly PaperPoint[]): readonly (readonly PaperPoint[])[] {
  const runs: (readonly PaperPoint[])[] = [];
  let start = 0;
  while (start < points.length - 1) {
    let end = start + 1;
    while (end + 1 < points.length && isStraight(points, start, end + 1)) end++;
    runs.push(points.slice(start, end + 1));
    start = end;
  }
  return runs;
}

function isStraight(points: readonly PaperPoint[], start: number, end: number): boolean {
  const [a, b] = [at(points, start), at(points, end)];
  const length = distance(a, b) || 1;
  for (let i = start + 1; i < end; i++) {
    const p = at(points, i);
    const off = Math.abs((p.x - a.x) * (b.y - a.y) - (p.y - a.y) * (b.x - a.x)) / length;
    if (off > STRAIGHT_MM) return false;
  }
  return true;
}

const distance = (a: PaperPoint, b: PaperPoint): number => Math.hypot(b.x - a.x, b.y - a.y);

const along = (a: PaperPoint, b: PaperPoint, t: number): PaperPoint => ({
  x: a.x + (b.x - a.x) * t,
  y: a.y + (b.y - a.y) * t,
});
