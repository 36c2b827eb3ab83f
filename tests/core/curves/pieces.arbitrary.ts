import fc from "fast-check";
import type { ArcPiece, CubicPiece, CurvePiece, LinePiece } from "../../../core/curves/index.ts";

/** Sixteenths of a millimetre, as no one types 1e-150. */
const coordinate = fc.integer({ min: -16_000, max: 16_000 }).map((n) => n / 16);
const coefficients = fc.tuple(coordinate, coordinate, coordinate, coordinate);
const ends = { edgeId: "e", startNodeId: "p", endNodeId: "q" };

/** Lines, arcs to nearly a full turn either way, and cubics of any kind, within a metre or so; nodes p and q at the ends. */
export const anyPiece: fc.Arbitrary<CurvePiece> = fc.oneof(
  fc
    .tuple(coordinate, coordinate, coordinate, coordinate)
    .map(([a, b, c, d]): LinePiece => ({ kind: "line", ...ends, from: [a, b], to: [c, d] })),
  fc
    .tuple(
      coordinate,
      coordinate,
      fc.double({ min: 0.1, max: 2000, noNaN: true }),
      fc.double({ min: -6, max: 6, noNaN: true }),
      fc.double({ min: 0.01, max: 6, noNaN: true }),
      fc.constantFrom(1, -1),
    )
    .map(
      ([a, b, radiusMm, startRad, sweep, turn]): ArcPiece => ({
        kind: "arc",
        ...ends,
        centre: [a, b],
        radiusMm,
        startRad,
        sweepRad: sweep * turn,
      }),
    ),
  fc
    .tuple(coefficients, coefficients)
    .map(([first, second]): CubicPiece => ({ kind: "cubic", ...ends, first, second })),
);
