import type { MarkingTable, ShownFace } from "../marking/index.ts";
import type { LayLine } from "./lay-lines.ts";
import type { LineMark } from "./marks.ts";
import type { PaperPoint } from "./types.ts";

/** Something that is printed true to size: a strip, a rib or a plate, in its own flat frame with x = u, y = v, mm. */
export interface Piece {
  /** The code that every page carries: of the strip, or of the first of several identical ribs. */
  readonly id: string;
  readonly name: string;
  /** What it is a piece of, and chosen by: the code of its part, its plate, or the rib itself. */
  readonly partId: string;
  /** What it is cut from: the lines of foam have the kerf in them, those of board and metal are the finished ones. */
  readonly stuff: "foam" | "board" | "metal";
  /** Which face is up, which hand: the words that stand beside the code on every page. */
  readonly face: string;
  /** The word at the arrow, and where it points in the flat frame. */
  readonly arrow: { readonly word: "forward" | "up"; readonly turnRad: number };
  /** Where the centre line of the car lies beside a right or left section, in the flat frame. */
  readonly centreTurnRad?: number;
  /** Everything that is drawn and must be cut or marked; a page on which none of it lies is not printed. */
  readonly lines: readonly LineMark[];
  /** Where only some of it must be had at true size: that; then pages without it are not printed. */
  readonly needed?: readonly LineMark[];
  /** From where places on it are told, and the words for along and across: where its marking-out table starts, if it has one. */
  readonly setOut: { readonly origin: PaperPoint; readonly along: string; readonly across: string };
  /** The outline and the holes: where there is room for words. */
  readonly loops: readonly (readonly PaperPoint[])[];
  /** Of a strip seen from the face shown: what its lines were taken from. */
  readonly ofStrip?: StripFindings;
}

/** A strip as it is drawn: its lines on the face shown, the marking-out table of them, and what lies on or under it. */
export interface StripFindings {
  readonly face: ShownFace;
  readonly table?: MarkingTable;
  readonly lays: readonly LayLine[];
}
