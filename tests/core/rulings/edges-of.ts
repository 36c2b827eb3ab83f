import {
  compileEdge,
  type PairedEdges,
  type RuledSurface,
  ruledSurface,
  type SpaceEdge,
  type SpacePiece,
} from "../../../core/rulings/index.ts";

export type Triple = readonly [x: number, y: number, z: number];

/** A smooth piece along a function, its velocity by the six-point difference (error h⁶). */
export function pieceOf(f: (t: number) => Triple): SpacePiece {
  const h = 1e-3;
  const point = ([x, y, z]: Triple) => ({ x, y, z });
  const slope = (t: number, axis: 0 | 1 | 2) => {
    const d = (k: number) => f(t + k * h)[axis] - f(t - k * h)[axis];
    return (45 * d(1) - 9 * d(2) + d(3)) / (60 * h);
  };
  return {
    pointAt: (t) => point(f(t)),
    velocityAt: (t) => point([slope(t, 0), slope(t, 1), slope(t, 2)]),
  };
}

export const edgeOf = (...functions: readonly ((t: number) => Triple)[]): SpaceEdge =>
  compileEdge(functions.map(pieceOf));

/** A function over [0, 1] as several pieces. */
export const splitAt = (f: (t: number) => Triple, stops: readonly number[]): SpaceEdge => {
  const all = [0, ...stops, 1];
  return edgeOf(...all.slice(1).map((to, k) => (t: number) => f((all[k] ?? 0) + t * (to - (all[k] ?? 0)))));
};

/** The sheet that pairs equal fractions of both lengths: the plainest pairing, and of straight edges the bilinear one. */
export function pairEqualFractions(first: SpaceEdge, second: SpaceEdge, nodes = 60): RuledSurface {
  const slope = (2 * first.lengthMm) / (first.lengthMm + second.lengthMm);
  const paired: PairedEdges = {
    first,
    second,
    isSecondReversed: false,
    lengthSMm: (first.lengthMm + second.lengthMm) / 2,
    side: 1,
    rulings: Array.from({ length: nodes + 1 }, (_, k) => {
      const [firstMm, secondMm] = [(k / nodes) * first.lengthMm, (k / nodes) * second.lengthMm];
      const sMm = (firstMm + secondMm) / 2;
      return { sMm, firstMm, secondMm, slopeBefore: slope, slopeAfter: slope, fanAfter: "none" };
    }),
  };
  return ruledSurface(paired);
}
