import {
  addSpace,
  at,
  crossSpace,
  dotSpace,
  lengthSpace,
  SMOOTH_FOLD_RAD,
  type SpacePoint,
} from "../foundation/index.ts";
import { placeOnEdge } from "./place-on-edge.ts";
import { spansOfPiece } from "./spans-of-piece.ts";
import type { EdgeSpan, SpaceEdge, SpacePiece } from "./types.ts";

/** Curvatures that differ by less, relative to the larger, are the same: splines meet with equal curvature. */
const SAME_CURVATURE_RELATIVE = 1e-4;
/** Curvature under this is none: 1 m of it rises 0.012 mm. */
const STRAIGHT_PER_MM = 1e-7;

/**
 * An edge by length, from at least one piece, each starting where the one before ends. Lengths are right to a relative
 * 1e-11; corners, jumps of curvature and borders are found here once. Pieces shorter than a millionth of a millimetre
 * are left out; an edge of no length (a point) is allowed.
 */
export function compileEdge(pieces: readonly SpacePiece[]): SpaceEdge {
  const spans: EdgeSpan[] = [];
  const bordersMm: number[] = [];
  let lengthMm = 0;
  for (const piece of pieces) {
    const own = spansOfPiece(piece, lengthMm);
    if (own.length === 0) continue;
    if (spans.length > 0) bordersMm.push(lengthMm);
    spans.push(...own);
    const last = at(own, -1);
    lengthMm = last.startMm + last.lengthMm;
  }
  const start = at(pieces, 0).pointAt(0);
  const bare: SpaceEdge = { pieces, spans, lengthMm, bordersMm, cornersMm: [], jumpsMm: [], start };
  const cornersMm = bordersMm.filter((atMm) => isCorner(bare, atMm));
  const jumpsMm = bordersMm.filter((atMm) => !isCorner(bare, atMm) && isJump(bare, atMm));
  return { ...bare, cornersMm, jumpsMm };
}

/** The same edge run the other way. */
export function reverseEdge(edge: SpaceEdge): SpaceEdge {
  return compileEdge([...edge.pieces].reverse().map(reversePiece));
}

const reversePiece = (piece: SpacePiece): SpacePiece => ({
  pointAt: (t) => piece.pointAt(1 - t),
  velocityAt: (t) => {
    const { x, y, z } = piece.velocityAt(1 - t);
    return { x: -x, y: -y, z: -z };
  },
});

function isCorner(edge: SpaceEdge, atMm: number): boolean {
  const [before, after] = [placeOnEdge(edge, atMm, "before"), placeOnEdge(edge, atMm, "after")];
  return angleBetween(before.tangent, after.tangent) > SMOOTH_FOLD_RAD;
}

function isJump(edge: SpaceEdge, atMm: number): boolean {
  const before = placeOnEdge(edge, atMm, "before").curvature;
  const after = placeOnEdge(edge, atMm, "after").curvature;
  const change = lengthSpace(addSpace(before, after, -1));
  const size = Math.max(lengthSpace(before), lengthSpace(after));
  return change > STRAIGHT_PER_MM && change > SAME_CURVATURE_RELATIVE * size;
}

const angleBetween = (a: SpacePoint, b: SpacePoint): number =>
  Math.atan2(lengthSpace(crossSpace(a, b)), dotSpace(a, b));
