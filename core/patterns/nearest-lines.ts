import { at, type FlatPoint } from "../foundation/index.ts";

/** The shortest straight between two lines. */
export interface Shortest {
  readonly lengthMm: number;
  readonly from: FlatPoint;
  readonly to: FlatPoint;
}

type Line = readonly FlatPoint[];

/** The shortest straight from one polyline to another; undefined where either has no segment. */
export function shortestBetween(a: Line, b: Line): Shortest | undefined {
  const pairs = runsOf(a).flatMap((runA) =>
    runsOf(b).map((runB) => ({ runA, runB, apartMm: boxDistanceMm(runA, runB) })),
  );
  let best: Shortest | undefined;
  for (const { runA, runB, apartMm } of pairs.sort((one, other) => one.apartMm - other.apartMm)) {
    if (best && apartMm >= best.lengthMm) break;
    for (let i = runA.first; i < runA.end; i++) {
      for (let k = runB.first; k < runB.end; k++) {
        const found = shortestOfSegments([at(a, i), at(a, i + 1)], [at(b, k), at(b, k + 1)]);
        if (!best || found.lengthMm < best.lengthMm) best = found;
      }
    }
  }
  return best;
}

/** Segments first to end − 1 of a line, and the box around them. */
interface Run {
  readonly first: number;
  readonly end: number;
  readonly least: FlatPoint;
  readonly most: FlatPoint;
}

const RUN_SEGMENTS = 16;

function runsOf(line: Line): readonly Run[] {
  const runs: Run[] = [];
  for (let first = 0; first + 1 < line.length; first += RUN_SEGMENTS) {
    const end = Math.min(first + RUN_SEGMENTS, line.length - 1);
    const points = line.slice(first, end + 1);
    const [us, vs] = [points.map(({ u }) => u), points.map(({ v }) => v)];
    runs.push({
      first,
      end,
      least: { u: Math.min(...us), v: Math.min(...vs) },
      most: { u: Math.max(...us), v: Math.max(...vs) },
    });
  }
  return runs;
}

function boxDistanceMm(a: Run, b: Run): number {
  const du = Math.max(0, a.least.u - b.most.u, b.least.u - a.most.u);
  const dv = Math.max(0, a.least.v - b.most.v, b.least.v - a.most.v);
  return Math.hypot(du, dv);
}

type Segment = readonly [FlatPoint, FlatPoint];

/** Two segments that do not cross are nearest at an end of one of them. */
function shortestOfSegments(a: Segment, b: Segment): Shortest {
  const candidates = [
    ...a.map((p): Shortest => shortestTo(p, b)),
    ...b.map((p): Shortest => {
      const { lengthMm, from, to } = shortestTo(p, a);
      return { lengthMm, from: to, to: from };
    }),
  ];
  return candidates.reduce((best, one) => (one.lengthMm < best.lengthMm ? one : best));
}

function shortestTo(p: FlatPoint, [a, b]: Segment): Shortest {
  const [du, dv] = [b.u - a.u, b.v - a.v];
  const size = du * du + dv * dv;
  const t = size === 0 ? 0 : Math.min(1, Math.max(0, ((p.u - a.u) * du + (p.v - a.v) * dv) / size));
  const to = { u: a.u + du * t, v: a.v + dv * t };
  return { lengthMm: Math.hypot(to.u - p.u, to.v - p.v), from: p, to };
}
