import { at } from "../foundation/index.ts";
import type { PackingPoint } from "../packing/index.ts";
import type { StockCut } from "./types.ts";

/** A piece on its sheet, as the cut order sees it. */
export interface PieceToCut {
  readonly pieceId: string;
  readonly linesMm: readonly (readonly PackingPoint[])[];
}

interface Box {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

interface Boxed extends Box {
  readonly piece: PieceToCut;
}

/**
 * The order in which a sheet is cut: straight cuts from side to side that touch no piece come first, the longest of
 * those that are possible each time, so that what is left is smaller and lighter; then around each piece, from the
 * beginning of the sheet. Sheet of `lengthMm` × `widthMm`, its corner at 0, 0.
 */
export function cutOrder(
  pieces: readonly PieceToCut[],
  lengthMm: number,
  widthMm: number,
): readonly StockCut[] {
  const boxed = pieces.map((piece): Boxed => ({ piece, ...boxOf(piece.linesMm.flat()) }));
  const region = { left: 0, bottom: 0, right: lengthMm, top: widthMm };
  const straight = straightCuts(boxed, region);
  const outlines = boxed
    .toSorted((a, b) => a.left - b.left || a.bottom - b.bottom)
    .map(
      ({ piece }): StockCut => ({
        kind: "outline",
        pieceId: piece.pieceId,
        lengthMm: piece.linesMm.reduce((sum, loop) => sum + loopLength(loop), 0),
      }),
    );
  return [...straight, ...outlines];
}

function straightCuts(pieces: readonly Boxed[], region: Box): readonly StockCut[] {
  const cut = bestCut(pieces, region);
  if (cut === undefined) return [];
  const { across, at: place } = cut;
  const [from, to] = across
    ? [
        { x: place, y: region.bottom },
        { x: place, y: region.top },
      ]
    : [
        { x: region.left, y: place },
        { x: region.right, y: place },
      ];
  const isBefore = (box: Boxed) => (across ? box.right <= place : box.top <= place);
  const before = across ? { ...region, right: place } : { ...region, top: place };
  const after = across ? { ...region, left: place } : { ...region, bottom: place };
  return [
    { kind: "straight", from, to, lengthMm: Math.hypot(to.x - from.x, to.y - from.y) },
    ...straightCuts(pieces.filter(isBefore), before),
    ...straightCuts(
      pieces.filter((box) => !isBefore(box)),
      after,
    ),
  ];
}

/** The longest straight cut that has a piece on one side of it at least, and parts off another piece or an offcut. */
function bestCut(
  pieces: readonly Boxed[],
  region: Box,
): { readonly across: boolean; readonly at: number } | undefined {
  const { left, right, bottom, top } = region;
  if (pieces.length === 0) return undefined;
  const acrossAt = gapOf(
    pieces.map((box) => [box.left, box.right]),
    right,
  );
  const alongAt = gapOf(
    pieces.map((box) => [box.bottom, box.top]),
    top,
  );
  const isAcrossLonger = top - bottom >= right - left;
  if (acrossAt !== undefined && (isAcrossLonger || alongAt === undefined))
    return { across: true, at: acrossAt };
  return alongAt === undefined ? undefined : { across: false, at: alongAt };
}

/** An offcut narrower than this is not parted off by a cut of its own, mm (common practice). */
const LEAST_OFFCUT_MM = 100;

/** The middle of the first gap between stretches; else where the last ends, if what lies beyond is worth keeping. */
function gapOf(stretches: readonly (readonly [number, number])[], end: number): number | undefined {
  const sorted = stretches.toSorted(([a], [b]) => a - b);
  let reach = at(sorted, 0)[1];
  for (const [from, to] of sorted) {
    if (from > reach) return (from + reach) / 2;
    reach = Math.max(reach, to);
  }
  return end - reach >= LEAST_OFFCUT_MM ? reach : undefined;
}

function boxOf(points: readonly PackingPoint[]): Box {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { left: Math.min(...xs), bottom: Math.min(...ys), right: Math.max(...xs), top: Math.max(...ys) };
}

const loopLength = (loop: readonly PackingPoint[]): number =>
  loop.reduce((sum, p, index) => {
    const q = at(loop, (index + 1) % loop.length);
    return sum + Math.hypot(q.x - p.x, q.y - p.y);
  }, 0);
