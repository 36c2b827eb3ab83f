import type { Box } from "./boxes.ts";
import { lineMark, paper, type TextMark, textMark } from "./marks.ts";
import {
  BAR_MM,
  barIsLevel,
  GAUGE_GAP_MM,
  GAUGE_INSET_MM,
  type PageWindow,
  SQUARE_MM,
} from "./page-window.ts";
import type { Mark, PaperPoint } from "./types.ts";

/**
 * The 200 mm bar and the 100 mm square that prove the print, in thin lines and stretched by the print correction
 * like everything in the window. Paper coordinates. The bar stands upright where the page is too narrow.
 */
export function gaugeMarks(window: PageWindow): readonly Mark[] {
  const inset = window.overlapMm + GAUGE_INSET_MM;
  const level = barIsLevel(window);
  const onPage = (u: number, v: number): PaperPoint =>
    paper(window.marginMm + u * window.correctionX, window.marginMm + v * window.correctionY);
  const line = (...points: readonly PaperPoint[]) => lineMark(points, "register", "gauge");
  const [barEnd, square] = level
    ? [onPage(inset + BAR_MM, inset), { u: inset, v: inset + GAUGE_GAP_MM }]
    : [onPage(inset, inset + BAR_MM), { u: inset + GAUGE_GAP_MM, v: inset }];
  const barStart = onPage(inset, inset);
  const tick = (p: PaperPoint) =>
    level ? line(paper(p.x, p.y - 2), paper(p.x, p.y + 2)) : line(paper(p.x - 2, p.y), paper(p.x + 2, p.y));
  const corner = (du: number, dv: number) => onPage(square.u + du * SQUARE_MM, square.v + dv * SQUARE_MM);
  return [
    line(barStart, barEnd),
    tick(barStart),
    tick(barEnd),
    line(corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1), corner(0, 0)),
    ...gaugeWords(window).flatMap((choices) => choices.slice(0, 1)),
  ];
}

/** The words of the bar and of the square: for each the places where they may stand, best first. Paper coordinates. */
export function gaugeWords(window: PageWindow): readonly (readonly TextMark[])[] {
  const [bar, square] = gaugeBoxes(window).map(({ left, right, bottom, top }) => ({
    left: window.marginMm + left * window.correctionX,
    right: window.marginMm + right * window.correctionX,
    bottom: window.marginMm + bottom * window.correctionY,
    top: window.marginMm + top * window.correctionY,
  }));
  if (bar === undefined || square === undefined) return [];
  const level = barIsLevel(window);
  const along = (share: number, beyondMm: number): TextMark =>
    level
      ? textMark(
          paper(bar.left + (bar.right - bar.left) * share, bar.bottom + 3.2 + beyondMm),
          "bar 200 mm",
          {
            anchor: "middle",
            layer: "gauge",
          },
        )
      : textMark(
          paper(bar.left + 2.8 + beyondMm, bar.bottom + (bar.top - bar.bottom) * share),
          "bar 200 mm",
          {
            anchor: "middle",
            turnRad: Math.PI / 2,
            layer: "gauge",
          },
        );
  const inSquare = (x: number, y: number, anchor: TextMark["anchor"]): TextMark =>
    textMark(paper(x, y), "100 mm square", { anchor, layer: "gauge" });
  const [left, right] = [square.left + 1.5, square.right - 1.5];
  return [
    [0, OTHER_SIDE_MM].flatMap((beyondMm) => BAR_SHARES.map((share) => along(share, beyondMm))),
    SQUARE_WORDS_MM.flatMap((upMm) => {
      const y = square.bottom + upMm;
      return [
        inSquare(right, y, "end"),
        inSquare(left, y, "start"),
        ...[0.5, 0.35, 0.65, 0.25, 0.75].map((share) => inSquare(left + (right - left) * share, y, "middle")),
      ];
    }),
  ];
}

/** Along the bar, where its words may stand, best first; and how far beyond it they stand on its other side, mm. */
const BAR_SHARES = [0.5, 0.3, 0.7, 0.15, 0.85, 0.4, 0.6, 0.22, 0.78, 0.35, 0.65, 0.45, 0.55, 0.1, 0.9];
const OTHER_SIDE_MM = 4.6;

/** Above the lower side of the square, where its words may stand, best first, mm. */
const SQUARE_WORDS_MM = [1.5, SQUARE_MM - 4, 30, 60, 10, 20, 40, 50, 70, 80, -4, SQUARE_MM + 1.5];

/** What bar and square cover of a window, from its lower left corner, mm of the window. */
export function gaugeBoxes(window: PageWindow): readonly Box[] {
  const inset = window.overlapMm + GAUGE_INSET_MM;
  const square = (left: number, bottom: number): Box => ({
    left,
    bottom,
    right: left + SQUARE_MM,
    top: bottom + SQUARE_MM,
  });
  return barIsLevel(window)
    ? [
        { left: inset, right: inset + BAR_MM, bottom: inset - 2, top: inset + 4 },
        square(inset, inset + GAUGE_GAP_MM),
      ]
    : [
        { left: inset - 4, right: inset + 2, bottom: inset, top: inset + BAR_MM },
        square(inset + GAUGE_GAP_MM, inset),
      ];
}

/** What the lines of bar and square take of a window, with their words: words may stand inside the square. */
export function gaugeFrames(window: PageWindow): readonly Box[] {
  const [bar, square] = gaugeBoxes(window);
  if (bar === undefined || square === undefined) return [];
  const side = (changes: Partial<Box>): Box => ({ ...square, ...changes });
  return [
    bar,
    side({ left: square.left - 1, right: square.left + 1 }),
    side({ left: square.right - 1, right: square.right + 1 }),
    side({ bottom: square.bottom - 1, top: square.bottom + WORDS_MM }),
    side({ bottom: square.top - 1, top: square.top + 1 }),
  ];
}

/** The words of the square stand on its lower side. */
const WORDS_MM = 5;
