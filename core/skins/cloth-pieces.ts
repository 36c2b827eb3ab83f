import type { PackingPiece } from "../packing/index.ts";
import type { SkinField, SkinPatch } from "./types.ts";

/** May be turned end for end: the warp runs along the roll either way. */
const HALF_TURNS = [0, Math.PI];

/**
 * A patch as it is cut: outer side up, its warp along x. On faces that the pattern shows from behind (lower, outboard) that
 * is the mirror image of the patch as it lies in the flat.
 */
export function clothPiece(
  { id, outlineMm, holesMm, warpRad }: SkinPatch,
  side: SkinField["side"],
): PackingPiece {
  const isBehind = side === "lower face" || side === "outboard face";
  const [cos, sin] = [Math.cos(warpRad), Math.sin(warpRad)];
  const turn = (loop: SkinPatch["outlineMm"]) => {
    const turned = loop.map(({ u, v }) => ({
      x: u * cos + v * sin,
      y: (v * cos - u * sin) * (isBehind ? -1 : 1),
    }));
    return isBehind ? turned.toReversed() : turned;
  };
  return { id, outline: turn(outlineMm), holes: holesMm.map(turn), anglesRad: HALF_TURNS };
}
