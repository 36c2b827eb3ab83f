import { at, bracketedRoot, distance2, dot2, subtract2, type Vec2 } from "../foundation/index.ts";
import { type FlattenLimits, flattenPiece } from "./flatten.ts";
import { derivativeOnPiece, pointOnPiece } from "./pieces.ts";
import type { ArcPiece, CubicPiece, CurvePiece } from "./types.ts";

/** A place on a piece and how far it lies from the point that was asked about. */
export interface NearestPlace {
  readonly t: number;
  readonly distanceMm: number;
}

/** The place on a piece nearest a point: lines and arcs in closed form, cubics by
 * bracketed roots. */
export function nearestOnPiece(piece: CurvePiece, point: Vec2): NearestPlace {
  const placeAt = (t: number): NearestPlace => ({ t, distanceMm: distance2(pointOnPiece(piece, t), point) });
  const ends = nearer(placeAt(0), placeAt(1));
  switch (piece.kind) {
    case "line": {
      const along = subtract2(piece.to, piece.from);
      const t = dot2(subtract2(point, piece.from), along) / (dot2(along, along) || 1);
      return t > 0 && t < 1 ? nearer(ends, placeAt(t)) : ends;
    }
    case "arc": {
      const t = parameterToward(piece, point);
      return t === undefined ? ends : nearer(ends, placeAt(t));
    }
    case "cubic":
      return cubicFeet(piece, point).map(placeAt).reduce(nearer, ends);
  }
}

const nearer = (a: NearestPlace, b: NearestPlace): NearestPlace => (b.distanceMm < a.distanceMm ? b : a);

/** Where an arc passes the direction from its centre to a point; undefined where it does not. */
function parameterToward({ centre, startRad, sweepRad }: ArcPiece, point: Vec2): number | undefined {
  const [x, y] = subtract2(point, centre);
  const onward = (Math.atan2(y, x) - startRad) * Math.sign(sweepRad);
  const turnRad = 2 * Math.PI;
  const t = (onward - turnRad * Math.floor(onward / turnRad)) / Math.abs(sweepRad);
  return t <= 1 ? t : undefined;
}

/** A cubic is looked at in parts that turn by no more than this: near such a part the distance has one minimum. */
const PART_LIMITS: FlattenLimits = { chordErrorMm: Number.MAX_VALUE, turnRad: 0.3 };

/** Where (P − point) · P′ = 0 and turns from falling to rising, in each part that has such a place. */
function cubicFeet(piece: CubicPiece, point: Vec2): readonly number[] {
  const rising = (t: number): number =>
    dot2(subtract2(pointOnPiece(piece, t), point), derivativeOnPiece(piece, t));
  const stops = flattenPiece(piece, PART_LIMITS).flatMap((t, i, all) =>
    i === 0 ? [t] : [(at(all, i - 1) + t) / 2, t],
  );
  return stops.slice(1).flatMap((to, i) => {
    const from = at(stops, i);
    return rising(from) < 0 && rising(to) > 0 ? [bracketedRoot(rising, from, to)] : [to];
  });
}
