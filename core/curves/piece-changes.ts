import { assertNever } from "../foundation/index.ts";
import { pointOnPiece } from "./pieces.ts";
import type { CubicPiece, CurvePiece } from "./types.ts";

/** The same piece with its second axis negated (the other hand of the tray), run in the same direction. */
export function mirrorPiece(piece: CurvePiece): CurvePiece {
  switch (piece.kind) {
    case "line":
      return {
        ...piece,
        from: [piece.from[0], 0 - piece.from[1]],
        to: [piece.to[0], 0 - piece.to[1]],
      };
    case "arc":
      return {
        ...piece,
        centre: [piece.centre[0], 0 - piece.centre[1]],
        startRad: 0 - piece.startRad,
        sweepRad: 0 - piece.sweepRad,
      };
    case "cubic": {
      const [c0, c1, c2, c3] = piece.second;
      return { ...piece, second: [0 - c0, 0 - c1, 0 - c2, 0 - c3] };
    }
    default:
      return assertNever(piece);
  }
}

/** The same piece run from its end to its start; node ids change places, the drawn edge stays. */
export function reversePiece(piece: CurvePiece): CurvePiece {
  return withEnds(shapeBetween(piece, 1, 0), piece.endNodeId, piece.startNodeId);
}

/**
 * The part of a piece from t0 to t1 as a piece of its own, exact. It keeps the drawn edge, and the node at
 * an end that is still there.
 */
export function trimPiece(piece: CurvePiece, t0: number, t1: number): CurvePiece {
  return withEnds(
    shapeBetween(piece, t0, t1),
    t0 === 0 ? piece.startNodeId : undefined,
    t1 === 1 ? piece.endNodeId : undefined,
  );
}

function withEnds(
  piece: CurvePiece,
  startNodeId: string | undefined,
  endNodeId: string | undefined,
): CurvePiece {
  const { startNodeId: _start, endNodeId: _end, ...rest } = piece;
  return {
    ...rest,
    ...(startNodeId === undefined ? {} : { startNodeId }),
    ...(endNodeId === undefined ? {} : { endNodeId }),
  };
}

function shapeBetween(piece: CurvePiece, t0: number, t1: number): CurvePiece {
  switch (piece.kind) {
    case "line":
      return { ...piece, from: pointOnPiece(piece, t0), to: pointOnPiece(piece, t1) };
    case "arc":
      return {
        ...piece,
        startRad: piece.startRad + piece.sweepRad * t0,
        sweepRad: piece.sweepRad * (t1 - t0),
      };
    case "cubic":
      return { ...piece, first: between(piece.first, t0, t1), second: between(piece.second, t0, t1) };
    default:
      return assertNever(piece);
  }
}

type Coefficients = CubicPiece["first"];

/** Taylor's expansion at t0 with the step t1 - t0 as the new unit. */
function between(c: Coefficients, t0: number, t1: number): Coefficients {
  const h = t1 - t0;
  return [
    c[0] + t0 * (c[1] + t0 * (c[2] + t0 * c[3])),
    h * (c[1] + t0 * (2 * c[2] + t0 * 3 * c[3])),
    h * h * (c[2] + 3 * c[3] * t0),
    h * h * h * c[3],
  ];
}
