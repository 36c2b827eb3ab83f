import { boxOf, growBox, heightOf, markBox, widthOf } from "./boxes.ts";
import type { Design } from "./design.ts";
import { type Fonts, readLettering } from "./lettering.ts";
import { type Placing, paper, placeMark } from "./marks.ts";
import { type PaperWork, paperWork } from "./paper-work.ts";
import type { LabelRoom } from "./place-words.ts";
import { labelsOf } from "./templates.ts";
import type { DrawingPage } from "./types.ts";

/** Free paper around a piece, mm. */
const ROOM_MM = 10;

/** Every strip, every plate and every rib that needs a template, each true to size on a page just large enough. */
export function drawPiecePages(
  design: Design,
  fonts: Fonts,
  { marks, pieces }: PaperWork = paperWork(design),
): readonly DrawingPage[] {
  const lettering = readLettering(fonts);
  return pieces.map((piece) => {
    const own = marks.filter(({ stripId }) => stripId === piece.id);
    return piecePage(design, { piece, lettering, avoid: [], marks: own });
  });
}

function piecePage(design: Design, room: LabelRoom): DrawingPage {
  const { piece, lettering } = room;
  const marks = [...piece.lines, ...labelsOf(design, room)];
  const corners = marks.flatMap((mark) => {
    const box = markBox(mark, lettering);
    return [paper(box.left, box.bottom), paper(box.right, box.top)];
  });
  const whole = growBox(boxOf(corners), ROOM_MM);
  const placing: Placing = {
    quarterTurned: false,
    scaleX: 1,
    scaleY: 1,
    move: paper(-whole.left, -whole.bottom),
  };
  return {
    name: piece.id,
    widthMm: widthOf(whole),
    heightMm: heightOf(whole),
    marks: marks.map((mark) => placeMark(mark, placing)),
  };
}
