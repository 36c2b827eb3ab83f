import type { Strip } from "../cutting/index.ts";
import { backFace, hasBevels } from "../marking/index.ts";
import { faceBehind, type Part } from "../patterns/index.ts";
import { boxOf } from "./boxes.ts";
import type { Design } from "./design.ts";
import { flatDirections } from "./flat-directions.ts";
import { mainLabel } from "./main-label.ts";
import { type LineMark, loopMark, paper, toPaper } from "./marks.ts";
import type { Piece } from "./piece.ts";
import { boxesOf, type LabelRoom } from "./place-words.ts";
import { stationNumbers } from "./strip-labels.ts";
import { handWords, stationLines, stripLoops } from "./strip-piece.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** From this thickness on a hot wire needs a guide on both faces: held by hand alone it leans (common practice). */
const GUIDED_MM = 20;

/** Whether a strip is cut by a hot wire that runs between two guides: thick foam, and any bevel. */
export const needsBack = ({ project }: Design, strip: Strip, part: Part): boolean =>
  part.panel === undefined &&
  project.cutting.tool === "hot-wire" &&
  (part.thicknessMm >= GUIDED_MM || hasBevels(strip));

/** The code of the template for the face behind. */
export const backId = ({ id }: Strip): string => `${id}-back`;

/**
 * The template for the face behind a strip, seen from that face, so its mirror image: the line that the wire's other end
 * follows, with the datum and the stations that it is laid by.
 */
export function backPiece(design: Design, strip: Strip, part: Part): Piece {
  const directions = flatDirections(part);
  const loops = stripLoops(strip).map(mirrored);
  const { cutLinesMm } = backFace(strip, part.thicknessMm, design.project);
  return {
    id: backId(strip),
    name: part.name,
    partId: part.id,
    setOut: { origin: originOf(design, strip, loops), along: "along", across: "mark" },
    stuff: "foam",
    face: `${faceBehind(part)} up${handWords(part)}`,
    arrow: { word: "forward", turnRad: -directions.forwardRad },
    ...(directions.centreRad === undefined ? {} : { centreTurnRad: -directions.centreRad }),
    lines: [
      ...cutLinesMm.map((loop) => loopMark(mirrored(loop.map(toPaper)), "cut", "cut")),
      ...stationsOf(design, strip).map(mirroredLine),
    ],
    loops,
  };
}

/** The start of the strip's datum, seen from behind. */
function originOf(design: Design, strip: Strip, loops: readonly (readonly PaperPoint[])[]): PaperPoint {
  const table = tableOf(design, strip);
  if (table !== undefined) return paper(table.origin.u, -table.origin.v);
  const box = boxOf(loops.flat());
  return paper(box.left, box.bottom);
}

/** The words on it: its code, its face, and what it is laid by. */
export function backLabels(design: Design, strip: Strip, part: Part, room: LabelRoom): readonly Mark[] {
  const { piece, lettering, avoid } = room;
  const table = tableOf(design, strip);
  const numbers = table === undefined ? [] : stationNumbers(table, piece.loops);
  const notes = [
    piece.face,
    `${part.name}, for the hot wire's other end`,
    `datum and stations lie under those of ${strip.id}: square through the foam at two of them`,
  ];
  return [
    ...numbers,
    ...mainLabel(piece, notes, { taken: [...avoid, ...boxesOf(numbers, lettering)], lettering }),
  ];
}

/** The strip's table with its stations alone: its other marks are those of the face shown. */
function tableOf({ marking }: Design, strip: Strip) {
  const table = marking.find(({ stripId }) => stripId === strip.id);
  return table && { ...table, rows: table.rows.filter(({ reason }) => reason === "station") };
}

function stationsOf(design: Design, strip: Strip): readonly LineMark[] {
  const table = tableOf(design, strip);
  return table === undefined ? [] : stationLines(table, stripLoops(strip));
}

const mirrored = (points: readonly PaperPoint[]): readonly PaperPoint[] =>
  points.map(({ x, y }) => paper(x, 0 - y));

const mirroredLine = (line: LineMark): LineMark => ({ ...line, points: mirrored(line.points) });
