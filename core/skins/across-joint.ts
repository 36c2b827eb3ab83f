import { at, type FlatPoint } from "../foundation/index.ts";

/** Where a place lies beside a line: so far along it (before its start less than nothing), so far to the left of its course, mm. */
export interface BesideLine {
  readonly alongMm: number;
  readonly leftMm: number;
  readonly awayMm: number;
}

/** A place beside the stretch of a line that is nearest to it; before its start and beyond its end the line goes straight on. */
export function besideLine(line: readonly FlatPoint[], place: FlatPoint): BesideLine {
  let best: BesideLine = { alongMm: 0, leftMm: 0, awayMm: Number.POSITIVE_INFINITY };
  let before = 0;
  for (let i = 0; i + 1 < line.length; i++) {
    const [a, b] = [at(line, i), at(line, i + 1)];
    const lengthMm = Math.hypot(b.u - a.u, b.v - a.v);
    if (lengthMm === 0) continue;
    const [du, dv] = [(b.u - a.u) / lengthMm, (b.v - a.v) / lengthMm];
    const along = (place.u - a.u) * du + (place.v - a.v) * dv;
    const inside = Math.min(lengthMm, Math.max(0, along));
    const awayMm = Math.hypot(place.u - a.u - inside * du, place.v - a.v - inside * dv);
    if (awayMm < best.awayMm) {
      const isEnd = (i === 0 && along < 0) || (i + 2 === line.length && along > lengthMm);
      const side = (place.v - a.v) * du - (place.u - a.u) * dv;
      best = {
        alongMm: before + (isEnd ? along : inside),
        leftMm: isEnd ? side : side < 0 ? -awayMm : awayMm,
        awayMm,
      };
    }
    before += lengthMm;
  }
  return best;
}

/** The place that lies so beside a line, by the share of its length. */
export function placeBeside(line: readonly FlatPoint[], share: number, leftMm: number): FlatPoint {
  const lengths = line.slice(1).map((b, i) => Math.hypot(b.u - at(line, i).u, b.v - at(line, i).v));
  let left = share * lengths.reduce((sum, mm) => sum + mm, 0);
  const last = lengths.findLastIndex((mm) => mm > 0);
  for (const [i, mm] of lengths.entries()) {
    if (mm === 0) continue;
    if (left > mm && i < last) {
      left -= mm;
      continue;
    }
    const [a, b] = [at(line, i), at(line, i + 1)];
    const [du, dv] = [(b.u - a.u) / mm, (b.v - a.v) / mm];
    return { u: a.u + left * du - leftMm * dv, v: a.v + left * dv + leftMm * du };
  }
  return at(line, 0);
}
