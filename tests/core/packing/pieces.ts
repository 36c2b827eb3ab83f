import type { Layout, PackingLoop, PackingPiece, PackingProblem } from "../../../core/packing/index.ts";

export const rectangle = (length: number, width: number): PackingLoop => [
  { x: 0, y: 0 },
  { x: length, y: 0 },
  { x: length, y: width },
  { x: 0, y: width },
];

/** A right-angled triangle with its square corner at 0, 0. */
export const triangle = (length: number, width: number): PackingLoop => [
  { x: 0, y: 0 },
  { x: length, y: 0 },
  { x: 0, y: width },
];

export const piece = (id: string, outline: PackingLoop, more: Partial<PackingPiece> = {}): PackingPiece => ({
  id,
  outline,
  holes: [],
  anglesRad: [0, Math.PI],
  ...more,
});

export const onRoll = (
  pieces: readonly PackingPiece[],
  widthMm: number,
  clearanceMm = 0,
): PackingProblem => ({
  pieces,
  stock: { kind: "roll", widthMm },
  clearanceMm,
  marginMm: 0,
});

export const onSheets = (
  pieces: readonly PackingPiece[],
  sheet: { readonly lengthMm: number; readonly widthMm: number; readonly quantity?: number },
): PackingProblem => ({
  pieces,
  stock: { kind: "sheets", sizes: [{ id: "sheet", quantity: undefined, ...sheet }] },
  clearanceMm: 2,
  marginMm: 5,
});

/** A layout on one sheet, each piece as it is given at a place. */
export const laid = (
  places: readonly {
    readonly id: string;
    readonly x: number;
    readonly y: number;
    readonly angleRad?: number;
  }[],
  size: { readonly lengthMm: number; readonly widthMm: number },
): Layout => ({
  sheets: [{ sizeId: undefined, usedMm: size.lengthMm, ...size }],
  placements: places.map(({ id, x, y, angleRad = 0 }) => ({ pieceId: id, sheet: 0, x, y, angleRad })),
  unplaced: [],
});
