import { type Curve, derivativeOnPiece, pointOnPiece } from "../curves/index.ts";
import { at, type Problem } from "../foundation/index.ts";
import { depthAlong, type Fence } from "../project/index.ts";
import { parameterOf } from "./cylinder-chart.ts";
import { END_GRACE_MM } from "./fence-stretches.ts";
import type { Above, Walk } from "./look-above.ts";

/** Where a fence's lower edge is looked for, and the skin that wraps it. */
export interface LowerGround {
  readonly line: Curve;
  readonly walk: Walk;
  readonly above: Above;
  readonly wrapMm: number;
}

/** Height of the lower edge as it is cut, along the fence: the finished edge raised by the skin that wraps it. */
export function lowerHeights(
  fence: Fence,
  { line, walk, above, wrapMm }: LowerGround,
  lowerEdge: Curve | undefined,
):
  | { readonly heightAt: (alongMm: number) => number | undefined }
  | { readonly problems: readonly Problem[] } {
  if (fence.lowerEdge.kind === "depths") {
    const nodes = fence.lowerEdge.nodes.toSorted((a, b) => a.alongMm - b.alongMm);
    return {
      heightAt: (s) => {
        const airZMm = above.airAt(s);
        return airZMm === undefined ? undefined : airZMm - depthAlong(nodes, s) + wrapMm;
      },
    };
  }
  // What keeps the lower edge from being a curve has been told where it was compiled.
  if (!lowerEdge) return { problems: [] };
  const xs = line.pieces.flatMap((piece) => [0, 0.25, 0.5, 0.75, 1].map((t) => pointOnPiece(piece, t)[0]));
  const missingFrontMm = at(pointOnPiece(at(lowerEdge.pieces, 0), 0), 0) - Math.min(...xs);
  const missingRearMm = Math.max(...xs) - at(pointOnPiece(at(lowerEdge.pieces, -1), 1), 0);
  if (missingFrontMm > END_GRACE_MM || missingRearMm > END_GRACE_MM) {
    const problem: Problem = {
      kind: "fence-edge-too-short",
      place: { itemId: fence.id, line: "lower-edge" },
      name: fence.name,
      missingFrontMm: Math.max(0, missingFrontMm),
      missingRearMm: Math.max(0, missingRearMm),
    };
    return { problems: [problem] };
  }
  return { heightAt: (s) => heightOnCurve(lowerEdge, at(walk(s).at, 0)) + wrapMm };
}

/** z of a side-view curve whose x rises, at x; its end heights beyond its ends. */
export function heightOnCurve(curve: Curve, x: number): number {
  const piece = curve.pieces.find((candidate) => pointOnPiece(candidate, 1)[0] >= x) ?? at(curve.pieces, -1);
  const [start, end] = [pointOnPiece(piece, 0), pointOnPiece(piece, 1)];
  if (x <= start[0]) return start[1];
  if (x >= end[0]) return end[1];
  const t =
    piece.kind === "line"
      ? (x - start[0]) / (end[0] - start[0])
      : parameterOf((s) => [pointOnPiece(piece, s)[0], derivativeOnPiece(piece, s)[0]], x);
  return pointOnPiece(piece, t)[1];
}
