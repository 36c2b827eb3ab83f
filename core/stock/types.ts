import type { PackingPoint, PackingProblem } from "../packing/index.ts";

/** Pieces that are cut from the same foam and thickness, or from the same board, and what they are laid on. */
export interface StockGroup {
  readonly id: string;
  readonly name: string;
  readonly problem: PackingProblem;
  readonly prices: readonly { readonly stockId: string; readonly priceEach: number }[];
  /** Names a change in anything that a layout is computed from. */
  readonly fingerprint: string;
}

/** A piece as it lies on its sheet; lines in the sheet's frame: x along its length, y across, mm. */
export interface LaidPiece {
  readonly pieceId: string;
  readonly angleRad: number;
  readonly x: number;
  readonly y: number;
  readonly locked: boolean;
  /** Whether it lies over another piece, too near to one, or over the edge. */
  readonly isWrong: boolean;
  readonly linesMm: readonly (readonly PackingPoint[])[];
}

/** A cut in the order of work: straight through a whole piece of sheet, or around one piece. */
export type StockCut =
  | {
      readonly kind: "straight";
      readonly from: PackingPoint;
      readonly to: PackingPoint;
      readonly lengthMm: number;
    }
  | { readonly kind: "outline"; readonly pieceId: string; readonly lengthMm: number };

export interface LaidStockSheet {
  readonly stockId: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  /** Pieces take this much of its length; what lies beyond is one offcut. */
  readonly usedMm: number;
  readonly pieces: readonly LaidPiece[];
  readonly cuts: readonly StockCut[];
}

/** What a layout comes to. */
export interface StockFigures {
  readonly sheetAreaMm2: number;
  readonly pieceAreaMm2: number;
  /** The offcut at the far end of the last sheet. */
  readonly offcutAreaMm2: number;
  /** What is neither piece nor offcut, as a share of the sheets without the offcut. */
  readonly wasteShare: number;
  /** In the project's currency; undefined where a sheet has no price. */
  readonly price: number | undefined;
  readonly wastePrice: number | undefined;
}

/**
 * A group with its layout: accepted by the builder; accepted, but for other pieces or other stock than now; not laid
 * yet; or laid by a run without a builder, from a fixed seed.
 */
export interface LaidGroup {
  readonly groupId: string;
  readonly name: string;
  readonly standing: "accepted" | "out of date" | "not laid" | "laid here";
  readonly pieceIds: readonly string[];
  readonly sheets: readonly LaidStockSheet[];
  readonly unplaced: readonly string[];
  readonly figures: StockFigures;
}
