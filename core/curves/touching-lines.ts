import { distance2, polynomialRootsWithin, type Vec2 } from "../foundation/index.ts";
import { arcParametersAt } from "./arc-parameters.ts";
import type { ArcPiece, CubicPiece, CurvePiece } from "./types.ts";

/**
 * Every t in [0, 1], ascending, where a straight line from a point touches a piece: (P − q) × P′ = 0. A straight
 * piece has none, nor has an arc whose circle holds the point.
 */
export function tangentParameters(piece: CurvePiece, from: Vec2): readonly number[] {
  switch (piece.kind) {
    case "line":
      return [];
    case "arc":
      return arcParametersAt(piece, touchedAngles(piece, from));
    case "cubic": {
      const [a, b] = offsetFrom(piece, from);
      return polynomialRootsWithin(minus(times(a, slope(b)), times(b, slope(a))), 0, 1);
    }
  }
}

/** Every t in [0, 1], ascending, where the straight line from a point meets a piece squarely: (P − q) · P′ = 0. */
export function footParameters(piece: CurvePiece, from: Vec2): readonly number[] {
  switch (piece.kind) {
    case "line": {
      const [dx, dy] = [piece.to[0] - piece.from[0], piece.to[1] - piece.from[1]];
      const squared = dx * dx + dy * dy;
      if (squared === 0) return [];
      const t = ((from[0] - piece.from[0]) * dx + (from[1] - piece.from[1]) * dy) / squared;
      return t >= 0 && t <= 1 ? [t] : [];
    }
    case "arc": {
      if (distance2(piece.centre, from) === 0) return [];
      const towardRad = towardPoint(piece, from);
      return arcParametersAt(piece, [towardRad, towardRad + Math.PI]);
    }
    case "cubic": {
      const [a, b] = offsetFrom(piece, from);
      return polynomialRootsWithin(plus(times(a, slope(a)), times(b, slope(b))), 0, 1);
    }
  }
}

const towardPoint = ({ centre }: ArcPiece, point: Vec2): number =>
  Math.atan2(point[1] - centre[1], point[0] - centre[0]);

/** The radius to where it touches is square to the line: cos = r / d. */
function touchedAngles(piece: ArcPiece, from: Vec2): readonly number[] {
  const awayMm = distance2(piece.centre, from);
  if (awayMm < piece.radiusMm) return [];
  const openRad = Math.acos(piece.radiusMm / awayMm);
  const towardRad = towardPoint(piece, from);
  return openRad === 0 ? [towardRad] : [towardRad - openRad, towardRad + openRad];
}

type Polynomial = readonly number[];

/** The cubic's coordinates as polynomials, counted from a point. */
function offsetFrom({ first, second }: CubicPiece, [x, y]: Vec2): readonly [Polynomial, Polynomial] {
  return [
    [first[0] - x, first[1], first[2], first[3]],
    [second[0] - y, second[1], second[2], second[3]],
  ];
}

const slope = (c: Polynomial): Polynomial => c.slice(1).map((one, index) => one * (index + 1));
const plus = (a: Polynomial, b: Polynomial): Polynomial => a.map((one, index) => one + (b[index] ?? 0));
const minus = (a: Polynomial, b: Polynomial): Polynomial => a.map((one, index) => one - (b[index] ?? 0));

function times(a: Polynomial, b: Polynomial): Polynomial {
  const product = Array.from({ length: a.length + b.length - 1 }, () => 0);
  a.forEach((one, i) => {
    b.forEach((other, j) => {
      product[i + j] = (product[i + j] ?? 0) + one * other;
    });
  });
  return product;
}
