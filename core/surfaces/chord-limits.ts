import { type CurvePiece, pieceLengthMm } from "../curves/index.ts";
import { CHORD_ERROR_MM, type FlatPoint, OUTLINE_SHORTFALL } from "../foundation/index.ts";
import type { DrawnPiece } from "./drawn-loops.ts";

/** How far a chord of a flat outline may leave its curve, and how far it may turn. */
export interface ChordLimits {
  readonly sagMm: number;
  readonly turnRad: number;
}

/** The shortfall of an edge shorter than this is judged against this: nobody measures a shorter edge to a nanometre. */
const LEAST_EDGE_MM = 20;

/** A chord this short is fine whatever it leaves out: a knife point is as wide. */
const SHORTEST_CHORD_MM = 0.1;

/** How fine outlines are drawn: to be cut by, or only to be looked at. */
export type Fineness = "for cutting" | "for a screen";

/** On a screen nobody sees a fortieth of a mm, nor so small a turn. */
const ON_SCREEN: ChordLimits = { sagMm: 0.025, turnRad: 0.15 };

/** Turn beyond which a chord is not taken for one, however short its edge. */
const MOST_TURN_RAD = 0.05;

/**
 * The limits for each piece of a sheet's outline, so that edges and area as written fall short by no more than
 * OUTLINE_SHORTFALL: a chord of turn θ is short by θ²/24 of its length, and leaves out ⅔ of its length times its
 * sag. Curves and straight pieces (which bend a little in the flat where they cross a bend) have a budget each. For a
 * screen they are as coarse as it bears.
 */
export function chordLimits(
  loops: readonly (readonly DrawnPiece[])[],
  areaMm2: number,
  fineness: Fineness,
): (drawn: DrawnPiece) => ChordLimits {
  if (fineness === "for a screen") return () => ON_SCREEN;
  const edges = new Map<string, number>();
  const kinds = new Map<string, number>();
  const add = (sums: Map<string, number>, key: string, lengthMm: number) =>
    sums.set(key, (sums.get(key) ?? 0) + lengthMm);
  for (const { piece, edgeId } of loops.flat()) {
    const lengthMm = pieceLengthMm(piece);
    add(edges, edgeId, lengthMm);
    add(kinds, `${edgeId}/${kindOf(piece)}`, lengthMm);
    add(kinds, kindOf(piece), lengthMm);
  }
  return ({ piece, edgeId }) => {
    const share =
      Math.max(edges.get(edgeId) ?? 1, LEAST_EDGE_MM) / (kinds.get(`${edgeId}/${kindOf(piece)}`) ?? 1);
    return {
      sagMm: Math.min(CHORD_ERROR_MM, (1.5 * OUTLINE_SHORTFALL * areaMm2) / (kinds.get(kindOf(piece)) ?? 1)),
      turnRad: Math.min(MOST_TURN_RAD, Math.sqrt(24 * OUTLINE_SHORTFALL * share)),
    };
  };
}

const kindOf = (piece: CurvePiece): "straight" | "curved" => (piece.kind === "line" ? "straight" : "curved");

/** Whether the chord from a to b keeps its limits, judged by the curve's point m halfway. */
export function chordKeeps(a: FlatPoint, m: FlatPoint, b: FlatPoint, limits: ChordLimits): boolean {
  if (Math.abs(b.u - a.u) + Math.abs(b.v - a.v) <= SHORTEST_CHORD_MM) return true;
  if (sagOf(a, m, b) > limits.sagMm) return false;
  const [au, av, bu, bv] = [m.u - a.u, m.v - a.v, b.u - m.u, b.v - m.v];
  // The halves of a chord of turn θ meet at θ/2.
  return Math.atan2(Math.abs(au * bv - av * bu), au * bu + av * bv) <= limits.turnRad / 2;
}

/** How far a point lies beside the straight through a and b, mm; 0 where these are one point. */
export function sagOf(a: FlatPoint, p: FlatPoint, b: FlatPoint): number {
  const [u, v] = [b.u - a.u, b.v - a.v];
  const chord = Math.sqrt(u * u + v * v);
  return chord === 0 ? 0 : Math.abs((p.u - a.u) * v - (p.v - a.v) * u) / chord;
}

/** Whether m lies on the straight from a to b to rounding. */
export function isOnStraight(a: FlatPoint, m: FlatPoint, b: FlatPoint): boolean {
  const [u, v] = [b.u - a.u, b.v - a.v];
  return Math.abs((m.u - a.u) * v - (m.v - a.v) * u) <= 1e-10 * (u * u + v * v);
}
