import type { Vec2 } from "../foundation/index.ts";
import { extremeParameters } from "./crossings.ts";
import { pointOnPiece } from "./pieces.ts";
import type { CurvePiece } from "./types.ts";

/** The smallest box with sides along the axes that holds something, mm. */
export interface Box {
  readonly lowX: number;
  readonly highX: number;
  readonly lowY: number;
  readonly highY: number;
}

/** The box of a piece, exact: its ends and wherever it turns back along an axis. */
export function boxOfPiece(piece: CurvePiece): Box {
  const turns =
    piece.kind === "line" ? [] : [...extremeParameters(piece, [1, 0]), ...extremeParameters(piece, [0, 1])];
  return boxOfPoints([0, 1, ...turns].map((t) => pointOnPiece(piece, t)));
}

/** The box of points; of none, a box that meets nothing. */
export function boxOfPoints(points: readonly Vec2[]): Box {
  let [lowX, lowY] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  let [highX, highY] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const [x, y] of points) {
    lowX = Math.min(lowX, x);
    highX = Math.max(highX, x);
    lowY = Math.min(lowY, y);
    highY = Math.max(highY, y);
  }
  return { lowX, highX, lowY, highY };
}

/** Whether two boxes come within `gapMm` of each other. */
export const boxesMeet = (a: Box, b: Box, gapMm: number): boolean =>
  a.lowX <= b.highX + gapMm &&
  b.lowX <= a.highX + gapMm &&
  a.lowY <= b.highY + gapMm &&
  b.lowY <= a.highY + gapMm;

/**
 * Calls `meet(i, j)`, i < j, for every two boxes that come within `gapMm` of each other: a sweep along x that keeps
 * the boxes it stands in.
 */
export function visitNearBoxes(
  boxes: readonly Box[],
  gapMm: number,
  meet: (i: number, j: number) => void,
): void {
  const rising = boxes.map((box, index) => ({ box, index })).sort((a, b) => a.box.lowX - b.box.lowX);
  let open: typeof rising = [];
  for (const one of rising) {
    open = open.filter(({ box }) => box.highX + gapMm >= one.box.lowX);
    for (const other of open) {
      if (!boxesMeet(one.box, other.box, gapMm)) continue;
      meet(Math.min(one.index, other.index), Math.max(one.index, other.index));
    }
    open.push(one);
  }
}
