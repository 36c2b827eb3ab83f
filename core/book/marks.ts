import type { FlatPoint } from "../foundation/index.ts";
import type { LineStyle, Mark, PaperPoint, TextFace } from "./types.ts";

export type LineMark = Extract<Mark, { readonly kind: "line" }>;
export type TextMark = Extract<Mark, { readonly kind: "text" }>;

/** A point on paper, mm. */
export const paper = (x: number, y: number): PaperPoint => ({ x, y });

/** A point of a flat pattern on paper: u to the right, v up. */
export const toPaper = (p: FlatPoint): PaperPoint => paper(p.u, p.v);

/** An open line through the points. */
export const lineMark = (points: readonly PaperPoint[], style: LineStyle, layer?: string): LineMark => ({
  kind: "line",
  points,
  closed: false,
  style,
  ...(layer === undefined ? {} : { layer }),
});

/** A closed line. */
export const loopMark = (points: readonly PaperPoint[], style: LineStyle, layer?: string): LineMark => ({
  ...lineMark(points, style, layer),
  closed: true,
});

/** A filled area. */
export const filledMark = (
  points: readonly PaperPoint[],
  fill: "ink" | "paper",
  style: LineStyle,
): LineMark => ({ ...loopMark(points, style), fill });

/** An upright rectangle from its lower left corner. */
export const boxMark = (corner: PaperPoint, widthMm: number, heightMm: number, style: LineStyle): LineMark =>
  loopMark(
    [
      corner,
      paper(corner.x + widthMm, corner.y),
      paper(corner.x + widthMm, corner.y + heightMm),
      paper(corner.x, corner.y + heightMm),
    ],
    style,
  );

/** A circle about a point. */
export const circleMark = (centre: PaperPoint, radiusMm: number, style: LineStyle, layer?: string): Mark => ({
  kind: "circle",
  centre,
  radiusMm,
  style,
  ...(layer === undefined ? {} : { layer }),
});

/** How a text stands; what is left out is 2.5 mm high, in the running face, from the left, level. */
export interface TextLook {
  readonly heightMm?: number;
  readonly face?: TextFace;
  readonly anchor?: TextMark["anchor"];
  readonly turnRad?: number;
  readonly layer?: string;
}

/** A text with its base line at a point. */
export const textMark = (at: PaperPoint, text: string, look: TextLook = {}): TextMark => ({
  kind: "text",
  at,
  text,
  heightMm: look.heightMm ?? 2.5,
  face: look.face ?? "sans",
  anchor: look.anchor ?? "start",
  turnRad: look.turnRad ?? 0,
  ...(look.layer === undefined ? {} : { layer: look.layer }),
});

/** How a drawing is put on paper: turned by a quarter turn or not, scaled about its origin, then moved. */
export interface Placing {
  readonly quarterTurned: boolean;
  readonly scaleX: number;
  readonly scaleY: number;
  readonly move: PaperPoint;
}

/** Where a point of the drawing comes to lie. */
export function placePoint(point: PaperPoint, placing: Placing): PaperPoint {
  const turned = placing.quarterTurned ? paper(-point.y, point.x) : point;
  return paper(turned.x * placing.scaleX + placing.move.x, turned.y * placing.scaleY + placing.move.y);
}

/** The marks put on paper; letters move with the drawing and keep their size. */
export function placeMark(mark: Mark, placing: Placing): Mark {
  switch (mark.kind) {
    case "line":
      return { ...mark, points: mark.points.map((p) => placePoint(p, placing)) };
    case "circle":
      return {
        ...mark,
        centre: placePoint(mark.centre, placing),
        radiusMm: mark.radiusMm * Math.sqrt(placing.scaleX * placing.scaleY),
      };
    case "text":
      return {
        ...mark,
        at: placePoint(mark.at, placing),
        turnRad: mark.turnRad + (placing.quarterTurned ? Math.PI / 2 : 0),
      };
  }
}

/** A solid arrow from tail to tip, its head `headMm` long. */
export function arrowMarks(tail: PaperPoint, tip: PaperPoint, headMm: number, style: LineStyle): Mark[] {
  return [lineMark([tail, tip], style), arrowHead(tail, tip, headMm, style)];
}

/** A filled arrow head at `tip`, pointing away from `tail`; about twice as long as wide. */
export function arrowHead(tail: PaperPoint, tip: PaperPoint, headMm: number, style: LineStyle): LineMark {
  const length = Math.hypot(tip.x - tail.x, tip.y - tail.y) || 1;
  const [dx, dy] = [(tip.x - tail.x) / length, (tip.y - tail.y) / length];
  const back = paper(tip.x - dx * headMm, tip.y - dy * headMm);
  const half = headMm / 4;
  return filledMark(
    [tip, paper(back.x - dy * half, back.y + dx * half), paper(back.x + dy * half, back.y - dx * half)],
    "ink",
    style,
  );
}
