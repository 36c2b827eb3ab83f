/** Line types of paper, told apart in black and white (ISO 128-2; widths 0.5, 0.35, 0.25 and 0.18 mm). */
export type LineStyle =
  | "outline"
  | "cut"
  | "thin"
  | "hidden"
  | "centre"
  | "fold"
  | "station"
  | "frame"
  | "register";

export type TextFace = "sans" | "bold" | "mono";

/** A point on paper: x to the right, y up from the lower left corner, mm. */
export interface PaperPoint {
  readonly x: number;
  readonly y: number;
}

/** What a drawing is made of. `layer` names the group in SVG files. */
export type Mark =
  | {
      readonly kind: "line";
      readonly points: readonly PaperPoint[];
      readonly closed: boolean;
      readonly style: LineStyle;
      readonly layer?: string;
      /** A filled area (arrowheads, hatching by solid); never used to carry meaning by grey. */
      readonly fill?: "ink" | "paper";
    }
  | {
      readonly kind: "circle";
      readonly centre: PaperPoint;
      readonly radiusMm: number;
      readonly style: LineStyle;
      readonly layer?: string;
    }
  | {
      readonly kind: "text";
      readonly at: PaperPoint;
      readonly text: string;
      /** Height of the letters after ISO 3098: 2.5, 3.5, 5, 7, 10 mm; no smaller on A4 and A3. */
      readonly heightMm: number;
      readonly face: TextFace;
      readonly anchor: "start" | "middle" | "end";
      /** Counter-clockwise, rad. */
      readonly turnRad: number;
      readonly layer?: string;
    };

/** One page of a build book or of the templates. */
export interface DrawingPage {
  readonly name: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly marks: readonly Mark[];
}

/** A set of pages that becomes one PDF. */
export interface DrawingSet {
  readonly title: string;
  /** yyyy-mm-dd, from the document. */
  readonly issuedOn: string;
  /** The project's id, from which the file id is made. */
  readonly projectId: string;
  readonly pages: readonly DrawingPage[];
}
