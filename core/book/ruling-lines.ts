import { at, distanceFlat, toDegrees } from "../foundation/index.ts";
import type { FlatRuling, Part } from "../patterns/index.ts";
import { isInsideLoops } from "./chords.ts";
import { type LineMark, lineMark, toPaper } from "./marks.ts";
import type { PaperPoint } from "./types.ts";

/** A ruling of a transition that is drawn, and its twist, rad. */
export interface RulingLine {
  readonly line: LineMark;
  readonly twistRad: number;
}

/** Rulings drawn lie at least this far apart at their farther ends, mm on the flat. */
const APART_MM = 50;

/**
 * Every few of a transition's rulings inside the loops of one of its strips, from its one end to the other: the sheet
 * bends around these lines and is straight along them.
 */
export function rulingLines(part: Part, loops: readonly (readonly PaperPoint[])[]): readonly RulingLine[] {
  const isOwn = ({ from, to }: FlatRuling) =>
    isInsideLoops(toPaper({ u: (from.u + to.u) / 2, v: (from.v + to.v) / 2 }), loops);
  const kept: FlatRuling[] = [];
  for (const ruling of part.rulings) {
    const last = kept.at(-1);
    if ((last === undefined || apartMm(last, ruling) >= APART_MM) && isOwn(ruling)) kept.push(ruling);
  }
  return kept.flatMap(({ from, to, twistRad }) =>
    insideOf(toPaper(from), toPaper(to), loops).map((ends) => ({
      line: lineMark(ends, "fold", "rulings"),
      twistRad,
    })),
  );
}

const apartMm = (a: FlatRuling, b: FlatRuling): number =>
  Math.max(distanceFlat(a.from, b.from), distanceFlat(a.to, b.to));

/** The stretch of a straight line that lies inside the loops: its longest one, if any. */
function insideOf(
  a: PaperPoint,
  b: PaperPoint,
  loops: readonly (readonly PaperPoint[])[],
): readonly (readonly PaperPoint[])[] {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const shares: number[] = [];
  const sideOf = ({ x, y }: PaperPoint) => dx * (y - a.y) - dy * (x - a.x);
  for (const loop of loops) {
    let t = loop[0] ? sideOf(loop[0]) : 0;
    for (let i = 0; i < loop.length; i++) {
      const q = at(loop, (i + 1) % loop.length);
      const s = t;
      t = sideOf(q);
      if (s > 0 === t > 0) continue;
      const p = at(loop, i);
      const part = s / (s - t);
      const [x, y] = [p.x + (q.x - p.x) * part, p.y + (q.y - p.y) * part];
      shares.push(((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy));
    }
  }
  shares.sort((p, q) => p - q);
  const runs: (readonly PaperPoint[])[] = [];
  const on = (share: number): PaperPoint => ({ x: a.x + dx * share, y: a.y + dy * share });
  for (let i = 0; i + 1 < shares.length; i += 2) {
    const [from, to] = [Math.max(0, at(shares, i)), Math.min(1, at(shares, i + 1))];
    if ((to - from) * Math.hypot(dx, dy) > 2) runs.push([on(from), on(to)]);
  }
  return runs;
}

/** A twist worth printing: `1.2°`; nothing under a tenth of a degree, which is developable. */
export const twistFigure = (twistRad: number): string =>
  Math.abs(toDegrees(twistRad)) < 0.1 ? "" : `twist ${Math.abs(toDegrees(twistRad)).toFixed(1)}°`;
