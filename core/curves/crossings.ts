import { cubicRootsWithin, dot2, quadraticRoots, ROUNDING_RELATIVE, type Vec2 } from "../foundation/index.ts";
import { arcParametersAt } from "./arc-parameters.ts";
import { pointOnPiece } from "./pieces.ts";
import type { ArcPiece, CubicPiece, CurvePiece } from "./types.ts";

/**
 * Every t in [0, 1], ascending, where a piece meets the straight line normal · P = offset (mm times the length
 * of the normal). An end that lies on the line within rounding counts, as exactly 0 or 1. A piece that lies in
 * the line altogether gives none.
 */
export function crossingParameters(piece: CurvePiece, normal: Vec2, offset: number): number[] {
  const missAt = (t: number) => dot2(normal, pointOnPiece(piece, t)) - offset;
  const zero = ROUNDING_RELATIVE * sizeAlong(piece, normal, offset);
  const isOn = (t: number) => Math.abs(missAt(t)) <= zero;
  const [startsOn, endsOn] = [isOn(0), isOn(1)];
  if (startsOn && endsOn && [0.25, 0.5, 0.75].every(isOn)) return [];
  const from = startsOn ? END_PARAMETER : 0;
  const to = endsOn ? 1 - END_PARAMETER : 1;
  const inside = crossingsWithin(piece, normal, offset).filter((t) => t > 0 && t < 1 && t >= from && t <= to);
  return startsOn || endsOn ? [...(startsOn ? [0] : []), ...inside, ...(endsOn ? [1] : [])] : inside;
}

/** Every t strictly inside (0, 1), ascending, where normal · P′(t) = 0: the piece is farthest along the normal there. */
export function extremeParameters(piece: CurvePiece, normal: Vec2): number[] {
  return turningsWithin(piece, normal).filter((t) => t > 0 && t < 1);
}

/** A crossing this near to an end that is itself on the line is that end. */
const END_PARAMETER = 1e-9;

/** The size of the numbers whose difference decides: their rounding is the rounding of the answer. */
function sizeAlong(piece: CurvePiece, normal: Vec2, offset: number): number {
  const reach = Math.abs(normal[0]) + Math.abs(normal[1]);
  const [start, end] = [pointOnPiece(piece, 0), pointOnPiece(piece, 1)];
  const far = Math.max(Math.abs(start[0]) + Math.abs(start[1]), Math.abs(end[0]) + Math.abs(end[1]));
  return Math.abs(offset) + reach * (far + (piece.kind === "arc" ? piece.radiusMm : 0));
}

function crossingsWithin(piece: CurvePiece, normal: Vec2, offset: number): number[] {
  switch (piece.kind) {
    case "line": {
      const start = dot2(normal, piece.from) - offset;
      const end = dot2(normal, piece.to) - offset;
      return start === end ? [] : [start / (start - end)];
    }
    case "arc":
      return arcCrossings(piece, normal, offset);
    case "cubic": {
      const [c0, c1, c2, c3] = alongNormal(piece, normal);
      return cubicRootsWithin([c0 - offset, c1, c2, c3], 0, 1);
    }
  }
}

/** normal · centre + r |normal| cos(a − α) = offset, with α the direction of the normal. */
function arcCrossings(piece: ArcPiece, normal: Vec2, offset: number): number[] {
  const size = Math.hypot(normal[0], normal[1]) * piece.radiusMm;
  const cosine = (offset - dot2(normal, piece.centre)) / size;
  const touches = Math.abs(Math.abs(cosine) - 1) <= ROUNDING_RELATIVE;
  if (Math.abs(cosine) > 1 && !touches) return [];
  const alphaRad = Math.atan2(normal[1], normal[0]);
  const openRad = touches ? (cosine > 0 ? 0 : Math.PI) : Math.acos(cosine);
  const angles =
    openRad === 0 || openRad === Math.PI ? [alphaRad + openRad] : [alphaRad - openRad, alphaRad + openRad];
  return arcParametersAt(piece, angles);
}

function turningsWithin(piece: CurvePiece, normal: Vec2): number[] {
  switch (piece.kind) {
    case "line":
      return [];
    case "arc": {
      const alphaRad = Math.atan2(normal[1], normal[0]);
      return arcParametersAt(piece, [alphaRad, alphaRad + Math.PI]);
    }
    case "cubic": {
      const [, c1, c2, c3] = alongNormal(piece, normal);
      return quadraticRoots(c1, 2 * c2, 3 * c3);
    }
  }
}

function alongNormal(piece: CubicPiece, normal: Vec2): readonly [number, number, number, number] {
  const { first, second } = piece;
  return [
    normal[0] * first[0] + normal[1] * second[0],
    normal[0] * first[1] + normal[1] * second[1],
    normal[0] * first[2] + normal[1] * second[2],
    normal[0] * first[3] + normal[1] * second[3],
  ];
}
