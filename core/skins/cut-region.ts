import { at, type FlatPoint } from "../foundation/index.ts";
import { type Area, areaMm2, borderMm, islandsOf, overlapOf, reachAlong, stripeAlong } from "./polygons.ts";

/** Lines that divide a face into fields, mm along u and along v. */
export interface FieldGrid {
  readonly uMm: readonly number[];
  readonly vMm: readonly number[];
}

/** A field of a grid: its column along u and its row along v. */
export interface Cell {
  readonly column: number;
  readonly row: number;
}

export const cellsOf = ({ uMm, vMm }: FieldGrid): readonly Cell[] =>
  Array.from({ length: uMm.length + 1 }, (_, column) => column).flatMap((column) =>
    Array.from({ length: vMm.length + 1 }, (_, row) => ({ column, row })),
  );

/** The grid as a ply has it: every line moved by the ply's shift, so that seams do not lie over each other. */
export const shiftedGrid = ({ uMm, vMm }: FieldGrid, byMm: number): FieldGrid => ({
  uMm: uMm.map((mm) => mm + byMm),
  vMm: vMm.map((mm) => mm + byMm),
});

/** How far the seams of a ply lie beside those of the first: 0, one stagger ahead, one behind, two ahead … */
export const shiftOfPly = (ply: number, staggerMm: number): number =>
  (ply % 2 === 1 ? 1 : -1) * Math.ceil(ply / 2) * staggerMm;

/** What of an area lies in a cell, grown by `overMm` past every line between cells. */
export function inCell(area: Area, { uMm, vMm }: FieldGrid, { column, row }: Cell, overMm: number): Area {
  const along = (area: Area, angleRad: number, lines: readonly number[], i: number): Area => {
    if (lines.length === 0) return area;
    const from = (lines[i - 1] ?? Number.NEGATIVE_INFINITY) - overMm;
    const to = (lines[i] ?? Number.POSITIVE_INFINITY) + overMm;
    return overlapOf(area, stripeAlong(angleRad, from, to));
  };
  return along(along(area, 0, uMm, column), Math.PI / 2, vMm, row);
}

/** The cell of a point. */
export const cellAt = ({ uMm, vMm }: FieldGrid, { u, v }: FlatPoint): Cell => ({
  column: uMm.filter((mm) => mm <= u).length,
  row: vMm.filter((mm) => mm <= v).length,
});

/** What seams keep off: in every ply, of which the lines are shifted so, by so much; and areas that they do not cross. */
export interface KeepOff {
  readonly shiftsMm: readonly number[];
  readonly clearMm: number;
  readonly areas: readonly Area[];
}

/** Even lines over an area, moved together by as little as keeps every ply's seam off the given joints of the foam and off areas. */
export function evenGrid(
  area: Area,
  counts: { readonly alongU: number; readonly alongV: number },
  foamSeams: FieldGrid,
  keepOff: KeepOff,
): FieldGrid {
  const lines = (angleRad: number, count: number, avoid: readonly number[]): readonly number[] => {
    const [from, to] = reachAlong(area, angleRad);
    const pitch = (to - from) / count;
    const even = Array.from({ length: count - 1 }, (_, i) => from + pitch * (i + 1));
    const stretches = [
      ...avoid.map((mm): readonly [number, number] => [mm, mm]),
      ...keepOff.areas.map((one) => reachAlong(one, angleRad)),
    ];
    const moves = MOVES_MM.filter((mm) => Math.abs(mm) <= pitch / 4);
    const best = clearestMove(even, moves, stretches, keepOff);
    return even.map((line) => line + best);
  };
  return {
    uMm: lines(0, counts.alongU, foamSeams.uMm),
    vMm: lines(Math.PI / 2, counts.alongV, foamSeams.vMm),
  };
}

/** The least move of lines that takes every ply's shift of them clear of the stretches, else the one that comes nearest to that. */
function clearestMove(
  lines: readonly number[],
  moves: readonly number[],
  stretches: readonly (readonly [number, number])[],
  { shiftsMm, clearMm }: KeepOff,
): number {
  const nearest = (moved: number) =>
    Math.min(
      ...lines.flatMap((line) =>
        shiftsMm.flatMap((shift) =>
          stretches.map(([from, to]) => Math.max(from - line - moved - shift, line + moved + shift - to)),
        ),
      ),
    );
  return (
    moves.find((mm) => nearest(mm) >= clearMm) ?? moves.reduce((a, b) => (nearest(b) > nearest(a) ? b : a), 0)
  );
}

const MOVES_MM = Array.from({ length: 41 }, (_, i) => (i % 2 === 1 ? 1 : -1) * Math.ceil(i / 2) * 10);

/** What one piece of cloth may be, mm. */
export interface PieceLimits {
  /** Across the warp: what a roll gives without its selvedges. */
  readonly acrossMm: number;
  /** Along the warp: what can be carried wet and laid down straight. */
  readonly alongMm: number;
  readonly overlapMm: number;
  /** The shifts are those of the other plies beside this one. */
  readonly keepOff: KeepOff;
}

/**
 * Cloth divided into pieces that come off the roll and can be handled: by lines along the warp where it is wider than the
 * roll, by lines across where it is longer than what can be handled. A piece that lies slantwise is as wide as it reaches
 * across the warp, so that none is longer on the bias than the roll gives.
 */
export function piecesOf(area: Area, warpRad: number, limits: PieceLimits, shiftMm: number): readonly Area[] {
  const { acrossMm, alongMm } = limits;
  return islandsOf(area)
    .flatMap((island) => divided(island, warpRad + Math.PI / 2, acrossMm, limits, shiftMm))
    .flatMap((piece) => divided(piece, warpRad, alongMm, limits, shiftMm))
    .filter((piece) => 2 * areaMm2(piece) > SLIVER_MM * borderMm(piece));
}

/** What is narrower on the mean is no cloth: it is left between two lines that nearly meet, mm. */
const SLIVER_MM = 1;

/** Dividing gives up at so many pieces: then the limit is a slip. */
const MOST_PIECES = 200;

function divided(
  area: Area,
  angleRad: number,
  mostMm: number,
  { overlapMm, keepOff }: PieceLimits,
  shiftMm: number,
): readonly Area[] {
  const [from, to] = reachAlong(area, angleRad);
  if (to - from <= mostMm || mostMm <= 2 * overlapMm) return [area];
  const first = Math.ceil((to - from - overlapMm) / (mostMm - overlapMm));
  for (let count = first; count <= MOST_PIECES; count++) {
    const pitch = (to - from) / count;
    // Never so far that a sliver is left at an end; what a shift makes wider than the roll asks for one piece more.
    const mostShift = Math.max(0, pitch / 2 - overlapMm);
    const shifted = Math.max(-mostShift, Math.min(mostShift, shiftMm));
    const even = Array.from({ length: count - 1 }, (_, i) => from + pitch * (i + 1) + shifted);
    const bordersAt = (moved: number) => [from, ...even.map((mm) => mm + moved), to];
    const isNarrowEnough = (moved: number) => widestOf(bordersAt(moved), overlapMm) <= mostMm;
    const moves = MOVES_MM.filter((mm) => Math.abs(shifted + mm) <= mostShift && isNarrowEnough(mm));
    if (!isNarrowEnough(0)) continue;
    const stretches = keepOff.areas.map((one) => reachAlong(one, angleRad));
    const borders = bordersAt(stretches.length === 0 ? 0 : clearestMove(even, moves, stretches, keepOff));
    return borders.slice(1).flatMap((mm, i) => {
      const low = i > 0 ? at(borders, i) - overlapMm / 2 : from - 1;
      const high = i + 2 < borders.length ? mm + overlapMm / 2 : to + 1;
      return islandsOf(overlapOf(area, stripeAlong(angleRad, low, high)));
    });
  }
  return [area];
}

/** The widest piece between borders, half a lap added on its inner ones. */
const widestOf = (borders: readonly number[], overlapMm: number): number =>
  Math.max(
    ...borders.slice(1).map((mm, i) => {
      const inner = (i > 0 ? 1 : 0) + (i + 2 < borders.length ? 1 : 0);
      return mm - at(borders, i) + (inner * overlapMm) / 2;
    }),
  );

export const areaOfPieces = (pieces: readonly Area[]): number =>
  pieces.reduce((sum, piece) => sum + areaMm2(piece), 0);
