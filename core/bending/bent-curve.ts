import { at, bracketedRoot, gaussShort, type Vec2 } from "../foundation/index.ts";

/**
 * A stretch of a sheet as it is bent, told along one fibre: how far its direction has turned at each length of it, in
 * the sense of the bend, so that it never falls. Lengths in mm, turn in rad.
 */
export interface BentCurve {
  readonly lengthMm: number;
  readonly turnAt: (alongMm: number) => number;
}

/** A curve of one radius. */
export const arcOf = (radiusMm: number, turnRad: number): BentCurve => ({
  lengthMm: radiusMm * turnRad,
  turnAt: (alongMm) => alongMm / radiusMm,
});

/** The whole angle that a stretch turns by. */
export const turnOf = ({ lengthMm, turnAt }: BentCurve): number => turnAt(lengthMm) - turnAt(0);

/** How far along the fibre has turned by an angle; both ends are exact. */
export function alongAtTurn({ lengthMm, turnAt }: BentCurve, turnRad: number): number {
  const start = turnAt(0);
  if (turnRad <= 0) return 0;
  if (turnRad >= turnAt(lengthMm) - start) return lengthMm;
  return bracketedRoot((alongMm) => turnAt(alongMm) - start - turnRad, 0, lengthMm);
}

/** The chord between two places of a bent fibre, and the most that the fibre stands off it. */
export interface Chord {
  readonly chordMm: number;
  readonly sagittaMm: number;
  /** From the fibre's direction at the first place to the chord, and from the chord to its direction at the second. */
  readonly startRad: number;
  readonly endRad: number;
}

/** Places between the ends at which a fibre's distance from its chord is looked at. */
const LOOKS = 16;

/** The chord from one place of a fibre to another: the fibre itself comes from its turn by quadrature. */
export function chordBetween({ turnAt }: BentCurve, fromMm: number, toMm: number): Chord {
  const start = turnAt(fromMm);
  const points: Vec2[] = [[0, 0]];
  for (let i = 0; i < LOOKS; i++) {
    const [a, b] = [i, i + 1].map((k) => fromMm + ((toMm - fromMm) * k) / LOOKS);
    const [x, y] = at(points, i);
    const along = (of: (rad: number) => number) => gaussShort((s) => of(turnAt(s) - start), a ?? 0, b ?? 0);
    points.push([x + along(Math.cos), y + along(Math.sin)]);
  }
  const [x, y] = at(points, -1);
  const chordMm = Math.hypot(x, y);
  const startRad = Math.atan2(y, x);
  return {
    chordMm,
    sagittaMm: chordMm === 0 ? 0 : mostOff(points, [x / chordMm, y / chordMm]),
    startRad,
    endRad: turnAt(toMm) - start - startRad,
  };
}

/** The most that points stand off a straight through the first of them; between the looks by a parabola. */
function mostOff(points: readonly Vec2[], [ux, uy]: Vec2): number {
  const offs = points.map(([px, py]) => Math.abs(px * uy - py * ux));
  const peak = offs.indexOf(Math.max(...offs));
  const [before, off, after] = [offs[peak - 1], at(offs, peak), offs[peak + 1]];
  if (before === undefined || after === undefined) return off;
  const bend = before - 2 * off + after;
  return bend < 0 ? off - (after - before) ** 2 / (8 * bend) : off;
}
