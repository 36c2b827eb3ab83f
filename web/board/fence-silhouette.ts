import { parameterAtLength, pointOnPiece } from "../../core/curves/index.ts";
import type { Vec2 } from "../../core/foundation/index.ts";
import type { FenceSheet } from "../../core/surfaces/index.ts";

/** Points of one edge that the side view draws; the sheet itself has many more. */
const MOST_POINTS = 40;

/** The foam of a fence as the side view sees it: its outline in (x, z), mm. */
export function fenceSilhouette(fence: FenceSheet): readonly Vec2[] {
  return fence.loops.flatMap((loop) =>
    loop.edges.flatMap(({ points }) =>
      thinned(points).flatMap(({ u, v }): readonly Vec2[] => {
        const x = xAlong(fence, u);
        return x === undefined ? [] : [[x, v]];
      }),
    ),
  );
}

function xAlong(fence: FenceSheet, uMm: number): number | undefined {
  const { pieces } = fence.chart;
  const holding = pieces.find(({ startUMm, lengthUMm }) => uMm <= startUMm + lengthUMm) ?? pieces.at(-1);
  return holding && pointOnPiece(holding.piece, parameterAtLength(holding.piece, uMm - holding.startUMm))[0];
}

function thinned<T>(points: readonly T[]): readonly T[] {
  const step = Math.max(1, Math.ceil(points.length / MOST_POINTS));
  return points.filter((_, index) => index % step === 0 || index === points.length - 1);
}
