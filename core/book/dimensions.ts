import { formatMm } from "../foundation/index.ts";
import { arrowHead, lineMark, paper, textMark } from "./marks.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** Length of an arrow head and how far an extension line runs past the dimension line (8 × 0.25), mm. */
const HEAD_MM = 2.5;
const PAST_MM = 2;

/**
 * A dimension between two points, its line `offsetMm` to the left of the direction from → to: extension lines,
 * arrows, the value above the line (ISO 129-1; from memory). `valueMm` is the true length, whatever the scale.
 */
export function dimensionMarks(
  from: PaperPoint,
  to: PaperPoint,
  offsetMm: number,
  valueMm: number,
): readonly Mark[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  if (length < 1e-6) return [];
  const [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const beside = (p: PaperPoint, by: number): PaperPoint => paper(p.x - dy * by, p.y + dx * by);
  const side = Math.sign(offsetMm);
  const [a, b] = [beside(from, offsetMm), beside(to, offsetMm)];
  const middle = paper((a.x + b.x) / 2, (a.y + b.y) / 2);
  const extension = (p: PaperPoint) =>
    lineMark([beside(p, side), beside(p, offsetMm + side * PAST_MM)], "thin", "dimensions");
  return [
    extension(from),
    extension(to),
    lineMark([a, b], "thin", "dimensions"),
    arrowHead(a, b, HEAD_MM, "thin"),
    arrowHead(b, a, HEAD_MM, "thin"),
    valueMark(middle, Math.atan2(dy, dx), formatMm(valueMm)),
  ];
}

/** Above the line as read from below or from the right. */
function valueMark(middle: PaperPoint, directionRad: number, text: string): Mark {
  const turn =
    directionRad > Math.PI / 2 + 1e-9 || directionRad <= -Math.PI / 2 + 1e-9
      ? directionRad + (directionRad > 0 ? -Math.PI : Math.PI)
      : directionRad;
  const above = paper(middle.x - Math.sin(turn), middle.y + Math.cos(turn));
  return textMark(above, text, { face: "mono", anchor: "middle", turnRad: turn, layer: "dimensions" });
}
