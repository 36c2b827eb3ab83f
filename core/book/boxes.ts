import type { Lettering } from "./lettering.ts";
import type { TextMark } from "./marks.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** An upright rectangle on paper, mm. */
export interface Box {
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
  readonly top: number;
}

/** The box around points; an empty list gives an empty box at the origin. */
export function boxOf(points: readonly PaperPoint[]): Box {
  if (points.length === 0) return { left: 0, bottom: 0, right: 0, top: 0 };
  let [left, bottom, right, top] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    bottom = Math.min(bottom, y);
    top = Math.max(top, y);
  }
  return { left, bottom, right, top };
}

export const widthOf = (box: Box): number => box.right - box.left;
export const heightOf = (box: Box): number => box.top - box.bottom;

/** The box grown by a distance on every side. */
export const growBox = (box: Box, byMm: number): Box => ({
  left: box.left - byMm,
  bottom: box.bottom - byMm,
  right: box.right + byMm,
  top: box.top + byMm,
});

export const boxesOverlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top;

export const boxHolds = (outer: Box, inner: Box): boolean =>
  inner.left >= outer.left &&
  inner.right <= outer.right &&
  inner.bottom >= outer.bottom &&
  inner.top <= outer.top;

/** The four corners of a text as printed: from a quarter of its height under the base line to its top. */
export function textCorners(mark: TextMark, lettering: Lettering): readonly PaperPoint[] {
  const width = lettering.widthMm(mark.text, mark.face, mark.heightMm);
  const start = mark.anchor === "start" ? 0 : mark.anchor === "middle" ? -width / 2 : -width;
  const [c, s] = [Math.cos(mark.turnRad), Math.sin(mark.turnRad)];
  const place = (along: number, up: number): PaperPoint => ({
    x: mark.at.x + along * c - up * s,
    y: mark.at.y + along * s + up * c,
  });
  const [low, high] = [-0.3 * mark.heightMm, 1.1 * mark.heightMm];
  return [place(start, low), place(start + width, low), place(start + width, high), place(start, high)];
}

/** The box around a mark as printed. */
export function markBox(mark: Mark, lettering: Lettering): Box {
  switch (mark.kind) {
    case "line":
      return boxOf(mark.points);
    case "circle":
      return growBox(boxOf([mark.centre]), mark.radiusMm);
    case "text":
      return boxOf(textCorners(mark, lettering));
  }
}

/** Equal places side by side in rows, read as a page is read. */
export interface Grid {
  readonly columns: number;
  readonly rows: number;
}

/** As many places of a size as an area holds, `roomMm` between two of them; one at least. */
export const gridIn = (area: Box, placeWidthMm: number, placeHeightMm: number, roomMm: number): Grid => ({
  columns: Math.max(1, Math.floor((widthOf(area) + roomMm) / (placeWidthMm + roomMm))),
  rows: Math.max(1, Math.floor((heightOf(area) + roomMm) / (placeHeightMm + roomMm))),
});

/** How many places a grid has. */
export const placesOf = ({ columns, rows }: Grid): number => columns * rows;
