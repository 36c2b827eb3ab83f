import { distance2, dot2, subtract2, type Vec2 } from "../foundation/index.ts";
import { derivativeOnPiece, pointOnPiece, secondDerivativeOnPiece } from "./pieces.ts";
import type { ArcPiece, CubicPiece, CurvePiece } from "./types.ts";

/** A place on a piece and how far it lies from the point that was asked about. */
export interface NearestPlace {
  readonly t: number;
  readonly distanceMm: number;
}

/** The place on a piece nearest a point: lines and arcs in closed form, cubics by Newton's rule from samples. */
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
      return nearer(ends, placeAt(cubicFoot(piece, point)));
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

const SAMPLES = 16;

function cubicFoot(piece: CubicPiece, point: Vec2): number {
  let [t, leastMm] = [0, Number.POSITIVE_INFINITY];
  for (let i = 0; i <= SAMPLES; i++) {
    const distanceMm = distance2(pointOnPiece(piece, i / SAMPLES), point);
    if (distanceMm < leastMm) [t, leastMm] = [i / SAMPLES, distanceMm];
  }
  for (let i = 0; i < 20; i++) {
    const away = subtract2(pointOnPiece(piece, t), point);
    const slope = derivativeOnPiece(piece, t);
    const steep = dot2(slope, slope);
    const bent = steep + dot2(away, secondDerivativeOnPiece(piece, t));
    const next = Math.min(1, Math.max(0, t - dot2(away, slope) / (bent > 0 ? bent : steep || 1)));
    if (Math.abs(next - t) <= 1e-15) return next;
    t = next;
  }
  return t;
}
