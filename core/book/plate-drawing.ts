import { at } from "../foundation/index.ts";
import type { FoldedPlate, PlatePart } from "../plates/index.ts";
import type { Block } from "./blocks.ts";
import { boxOf, heightOf, widthOf } from "./boxes.ts";
import { dimensionMarks } from "./dimensions.ts";
import type { Lettering } from "./lettering.ts";
import { arrowMarks, type Placing, paper, placeMark, placePoint, textMark, toPaper } from "./marks.ts";
import { CONTENT_WIDTH_MM } from "./page-frame.ts";
import { bendWords } from "./plate-labels.ts";
import { platePiece } from "./plate-piece.ts";
import { standardScale } from "./scales.ts";
import { thin } from "./thin-points.ts";
import type { Mark, PaperPoint } from "./types.ts";
import { uprightText } from "./upright-text.ts";

/** Room around the drawing for dimensions and the arrow, mm. */
const BESIDE_MM = 14;
const ABOVE_MM = 10;
const BELOW_MM = 16;
const MOST_HEIGHT_MM = 120;

/** The scaled flat of a plate with its bends in words, overall dimensions and the arrow; and its scale. */
export function plateDrawing(
  plate: FoldedPlate,
  part: PlatePart,
  lettering: Lettering,
): { readonly block: Block; readonly scale: number } {
  const piece = platePiece(plate, part);
  const box = boxOf(piece.loops.flat());
  const size = { widthMm: widthOf(box), heightMm: heightOf(box) };
  const scale = standardScale(size, {
    widthMm: CONTENT_WIDTH_MM - 2 * BESIDE_MM,
    heightMm: MOST_HEIGHT_MM - ABOVE_MM - BELOW_MM,
  });
  const draw = (corner: PaperPoint): readonly Mark[] => {
    const left = corner.x + (CONTENT_WIDTH_MM - size.widthMm / scale) / 2;
    const placing: Placing = {
      quarterTurned: false,
      scaleX: 1 / scale,
      scaleY: 1 / scale,
      move: paper(left - box.left / scale, corner.y - ABOVE_MM - box.top / scale),
    };
    const put = (p: PaperPoint) => placePoint(p, placing);
    const [lowLeft, lowRight] = [put(paper(box.left, box.bottom)), put(paper(box.right, box.bottom))];
    return [
      ...piece.lines.map((line) => {
        const placed = placeMark(line, placing);
        return placed.kind === "line" ? { ...placed, points: thin(placed.points) } : placed;
      }),
      ...bendTexts(part, put, lettering),
      ...dimensionMarks(lowLeft, lowRight, -9, size.widthMm),
      // Downward, so that a value with no room between its arrows stands below, clear of the arrow above.
      ...dimensionMarks(put(paper(box.left, box.top)), lowLeft, -8, size.heightMm),
      ...forwardMarks(paper(corner.x, corner.y - 3)),
    ];
  };
  return { block: { heightMm: size.heightMm / scale + ABOVE_MM + BELOW_MM, draw }, scale };
}

const forwardMarks = (from: PaperPoint): readonly Mark[] => [
  ...arrowMarks(paper(from.x + 14, from.y), paper(from.x, from.y), 3, "outline"),
  textMark(paper(from.x + 16, from.y - 1.2), "forward", { face: "bold" }),
];

/** Which bend a line is and which way it goes, beside its middle on the base's side; the name alone where it is short. */
function bendTexts(
  part: PlatePart,
  put: (p: PaperPoint) => PaperPoint,
  lettering: Lettering,
): readonly Mark[] {
  return part.bends.map(({ name, figures, baseTangent }) => {
    const [from, to] = [put(toPaper(at(baseTangent, 0))), put(toPaper(at(baseTangent, 1)))];
    const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
    const [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length];
    const long = `${name}: ${bendWords(figures)}`;
    const words = lettering.widthMm(long, "sans", 2.5) < length ? long : name;
    // The base lies on the left of the line's direction, and so do the words.
    const middle = paper((from.x + to.x) / 2 - dy * 1.2, (from.y + to.y) / 2 + dx * 1.2);
    return uprightText(textMark(middle, words, { anchor: "middle", turnRad: Math.atan2(dy, dx) }));
  });
}
