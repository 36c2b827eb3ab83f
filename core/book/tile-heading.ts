import { formatMm } from "../foundation/index.ts";
import { bladeWords } from "./cutting-words.ts";
import type { Lettering } from "./lettering.ts";
import { arrowMarks, paper, textMark } from "./marks.ts";
import { shorten } from "./shorten.ts";
import type { PlacedPiece, TemplateLayout, Tile } from "./template-layouts.ts";
import { cutLength, PRINT_WORDS, type TemplateSetting } from "./template-setting.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** What the words above a page are about. */
export interface HeadingContent {
  readonly layout: TemplateLayout;
  readonly tile: Tile;
  readonly inside: readonly PlacedPiece[];
  readonly pageNumber: number;
}

/** The strip of words above the window: the page's name and number, what is on it, which face is up, how to print and cut. */
export function tileHeading(content: HeadingContent, setting: TemplateSetting): readonly Mark[] {
  const { layout, tile, inside, pageNumber } = content;
  const { window, lettering } = setting;
  const left = window.marginMm;
  const right = window.paperWidthMm - window.marginMm;
  const top = (window.cutToLength ? cutLength(layout, window) : window.paperHeightMm) - window.marginMm;
  const count = `page ${pageNumber} of ${setting.pageCount}`;
  const origin = `tile origin u ${formatMm(tile.origin.x)} v ${formatMm(tile.origin.y)}`;
  const nameEnd = left + lettering.widthMm(tile.name, "mono", 7) + 5;
  const ids = inside.map((placed) => placed.piece.id).join(" ");
  const countStart = right - lettering.widthMm(count, "sans", 3.5) - 3;
  return [
    textMark(paper(left, top - 7.5), tile.name, { heightMm: 7, face: "mono" }),
    textMark(
      paper(nameEnd, top - 7.5),
      shorten(ids, "mono", 5, { lettering, roomMm: countStart - nameEnd }),
      {
        heightMm: 5,
        face: "mono",
      },
    ),
    textMark(paper(right, top - 7.5), count, { heightMm: 3.5, anchor: "end" }),
    ...faces(inside, paper(left, top - 12.5), { lettering, right }),
    textMark(
      paper(left, top - 16.5),
      shorten(`${setting.title}, layout ${layout.number}, ${origin}`, "sans", 2.5, {
        lettering,
        roomMm: right - left,
      }),
    ),
    textMark(paper(left, top - 20.5), `${PRINT_WORDS}; ${lineWords(inside, setting)}`),
  ];
}

/**
 * How to cut by the lines on a page: ribs of board and plates of metal have no kerf in their lines, foam has; where
 * several lie on one page foam is named, since the map says the rest.
 */
function lineWords(inside: readonly PlacedPiece[], { cutting }: TemplateSetting): string {
  const stuffs = new Set(inside.map(({ piece }) => piece.stuff));
  if (stuffs.has("foam")) return `${stuffs.size > 1 ? "foam: " : ""}${bladeWords(cutting)}`;
  return stuffs.has("metal") ? METAL_LINE_WORDS : BOARD_LINE_WORDS;
}

const BOARD_LINE_WORDS = "saw up to the centre of the line";
const METAL_LINE_WORDS = "cut to the centre of the line, bend lines in pencil, never scribed";

/** For each piece on the page which face is up and where front or top is. */
function faces(
  inside: readonly PlacedPiece[],
  from: PaperPoint,
  room: { readonly lettering: Lettering; readonly right: number },
): readonly Mark[] {
  const marks: Mark[] = [];
  let x = from.x;
  for (const { piece, placing } of inside) {
    const words = `${piece.id} ${piece.face}, ${piece.arrow.word}`;
    const width = room.lettering.widthMm(words, "sans", 2.5);
    if (x + width + 8 > room.right) break;
    const turn = piece.arrow.turnRad + (placing.quarterTurned ? Math.PI / 2 : 0);
    const middle = paper(x + width + 4, from.y + 1.2);
    const [dx, dy] = [2.2 * Math.cos(turn), 2.2 * Math.sin(turn)];
    marks.push(
      textMark(paper(x, from.y), words),
      ...arrowMarks(paper(middle.x - dx, middle.y - dy), paper(middle.x + dx, middle.y + dy), 2.5, "thin"),
    );
    x += width + 12;
  }
  return marks;
}
