import type { LineStyle } from "../book/index.ts";

/** How a line type is drawn: its width and the lengths of dashes and gaps, mm. */
export interface Pen {
  readonly widthMm: number;
  readonly dashMm: readonly number[];
}

/**
 * The line types of paper, told apart without colour (ISO 128-2: thick to thin at least 2 : 1, dashed for
 * hidden, chain for centre and bend lines; template lines after the trade: cut 0.5, fold 0.25, station 0.18).
 */
export const PENS: Readonly<Record<LineStyle, Pen>> = {
  outline: { widthMm: 0.5, dashMm: [] },
  cut: { widthMm: 0.5, dashMm: [] },
  thin: { widthMm: 0.25, dashMm: [] },
  hidden: { widthMm: 0.25, dashMm: [3, 1.5] },
  centre: { widthMm: 0.25, dashMm: [8, 1.5, 0.5, 1.5] },
  fold: { widthMm: 0.25, dashMm: [6, 1.2, 0.5, 1.2, 0.5, 1.2] },
  station: { widthMm: 0.18, dashMm: [] },
  frame: { widthMm: 0.7, dashMm: [] },
  register: { widthMm: 0.18, dashMm: [] },
};
