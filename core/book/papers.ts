import type { PaperName } from "../project/index.ts";

/** Width and height of a page held upright, mm. */
export interface PaperSize {
  readonly widthMm: number;
  readonly heightMm: number;
}

/**
 * The largest page: a PDF page ends at 14,400 units of 1/72 inch, 5,080 mm; what is longer is tiled. (Published
 * limit of the format without scaled units, which readers do not honour.)
 */
export const LONGEST_PAGE_MM = 5000;

const INCH_MM = 25.4;

/** Exact sizes: ISO 216 in mm, American sizes from inches; a roll is as long as a page may be. */
export function paperSize(name: PaperName, rollWidthMm: number): PaperSize {
  switch (name) {
    case "A4":
      return { widthMm: 210, heightMm: 297 };
    case "A3":
      return { widthMm: 297, heightMm: 420 };
    case "Letter":
      return { widthMm: 8.5 * INCH_MM, heightMm: 11 * INCH_MM };
    case "Tabloid":
      return { widthMm: 11 * INCH_MM, heightMm: 17 * INCH_MM };
    case "A1":
      return { widthMm: 594, heightMm: 841 };
    case "A0":
      return { widthMm: 841, heightMm: 1189 };
    case "roll":
      return { widthMm: rollWidthMm, heightMm: LONGEST_PAGE_MM };
  }
}
