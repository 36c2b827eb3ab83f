import { formatMm } from "../foundation/index.ts";
import { arrowHead, lineMark, paper, textMark } from "./marks.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** Length of an arrow head and how far an extension line runs past the dimension line (8 × 0.25), mm. */
const HEAD_MM = 2.5;
const PAST_MM = 2;
/** Advance of a digit of the dimension face at 2.5 mm. */
const DIGIT_MM = 2.1;

/**
 * A dimension between two points, its line `offsetMm` to the left of the direction from → to: extension lines,
 * arrows, the value above the line, beyond its end where it is too short (ISO 129-1; from memory). `valueMm` is the true length, whatever the scale.
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
  const text = formatMm(valueMm);
  const room = text.length * DIGIT_MM + 1;
  const isShort = length < room;
  const middle = paper((a.x + b.x) / 2, (a.y + b.y) / 2);
  const beyond = paper(b.x + dx * (room / 2 + HEAD_MM), b.y + dy * (room / 2 + HEAD_MM));
  const extension = (p: PaperPoint) =>
    lineMark([beside(p, side), beside(p, offsetMm + side * PAST_MM)], "thin", "dimensions");
  const out = (p: PaperPoint, by: number): PaperPoint => paper(p.x + dx * by, p.y + dy * by);
  const ends = isShort ? [out(a, -2 * HEAD_MM), out(b, room + 2 * HEAD_MM)] : [a, b];
  return [
    extension(from),
    extension(to),
    lineMark(ends, "thin", "dimensions"),
    arrowHead(isShort ? out(b, HEAD_MM) : a, b, HEAD_MM, "thin"),
    arrowHead(isShort ? out(a, -HEAD_MM) : b, a, HEAD_MM, "thin"),
    valueMark(isShort ? beyond : middle, Math.atan2(dy, dx), text),
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
