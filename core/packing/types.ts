/** A point of an outline, on a sheet or on the piece itself, mm. */
export interface PackingPoint {
  readonly x: number;
  readonly y: number;
}

export type PackingLoop = readonly PackingPoint[];

/** A piece to lay: outline and holes in its own frame, and the angles it may be turned by. It is never mirrored. */
export interface PackingPiece {
  readonly id: string;
  readonly outline: PackingLoop;
  readonly holes: readonly PackingLoop[];
  /** Counter-clockwise, at least one. */
  readonly anglesRad: readonly number[];
  /** Where it has to lie; it is never moved from there. Its angle then counts in place of the list. */
  readonly lockedAt?: Omit<Placement, "pieceId">;
}

/** Sheets of one size. x runs along the length, y along the width. */
export interface SheetSize {
  readonly id: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  /** Undefined where there is no limit. */
  readonly quantity: number | undefined;
}

/**
 * What pieces are laid on: a roll of given width, as short as possible; or sheets, as few as possible, the last one
 * with one large offcut left at its far end.
 */
export type PackingStock =
  | { readonly kind: "roll"; readonly widthMm: number }
  | { readonly kind: "sheets"; readonly sizes: readonly SheetSize[] };

export interface PackingProblem {
  readonly pieces: readonly PackingPiece[];
  readonly stock: PackingStock;
  /** Least distance between two pieces, for the blade. */
  readonly clearanceMm: number;
  /** Least distance from a piece to the edge of the sheet. */
  readonly marginMm: number;
}

/**
 * Where a piece lies: turned by `angleRad` about the origin of its own frame, then moved so that this origin comes to
 * `x`, `y` of its sheet.
 */
export interface Placement {
  readonly pieceId: string;
  /** Index into the sheets of the layout; 0 on a roll. */
  readonly sheet: number;
  readonly angleRad: number;
  readonly x: number;
  readonly y: number;
}

/** One sheet of a layout. */
export interface LaidSheet {
  /** Undefined on a roll. */
  readonly sizeId: string | undefined;
  readonly lengthMm: number;
  readonly widthMm: number;
  /** How much of its length pieces take: what lies beyond is one offcut. */
  readonly usedMm: number;
}

/** A layout: every piece once, either placed or named as one without a place. */
export interface Layout {
  readonly sheets: readonly LaidSheet[];
  readonly placements: readonly Placement[];
  /** Pieces larger than every sheet, or left over when all sheets are full. */
  readonly unplaced: readonly {
    readonly pieceId: string;
    readonly why: "larger-than-stock" | "stock-full";
  }[];
}
