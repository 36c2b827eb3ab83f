import type { Strip } from "../cutting/index.ts";
import { at, formatMm, formatNumber } from "../foundation/index.ts";
import { type EdgeMark, hasBevels, type MarkingTable } from "../marking/index.ts";
import type { Part } from "../patterns/index.ts";
import { type Box, boxesOverlap, boxOf, textCorners } from "./boxes.ts";
import { chordsAt } from "./chords.ts";
import { bladeWords } from "./cutting-words.ts";
import type { Design } from "./design.ts";
import { BEYOND_FIGURES_MM, edgeFigures, edgeTicks } from "./edge-figures.ts";
import { edgeWords } from "./edge-neighbours.ts";
import { findFreeSpot } from "./free-spot.ts";
import { layLines } from "./lay-lines.ts";
import type { Lettering } from "./lettering.ts";
import { arrowMarks, paper, type TextMark, textMark, toPaper } from "./marks.ts";
import type { Piece } from "./piece.ts";
import { lengthOf, spotOn } from "./polyline-spot.ts";
import { printedTable } from "./printed-table.ts";
import { type RibGroup, ribPlaceWords, stationFaceWords } from "./rib-piece.ts";
import { rulingLines, twistFigure } from "./ruling-lines.ts";
import { bendLimits } from "./strip-piece.ts";
import type { Mark, PaperPoint } from "./types.ts";
import { uprightText } from "./upright-text.ts";

/** Where words go: the piece, its letters, marks on its edges, and boxes in its frame that are to stay free. */
export interface LabelRoom {
  readonly piece: Piece;
  readonly lettering: Lettering;
  readonly avoid: readonly Box[];
  readonly marks: readonly EdgeMark[];
}

/** The words on a strip's template: its code, face, hand and arrow, what it joins, bends and stations. */
export function stripLabels(design: Design, strip: Strip, part: Part, room: LabelRoom): readonly Mark[] {
  const { piece, lettering, marks } = room;
  const table = printedTable(design, strip, part);
  const numbers = table === undefined ? [] : stationNumbers(table, piece.loops);
  const figures = edgeFigures(marks, part);
  const avoid = [...room.avoid, ...boxesOf(figures, lettering)];
  const clear = { ...room, avoid };
  const bends = bendLimits(strip, part).map(({ line, words }) =>
    freest(
      SHARES.map((share) => alongLine(line.points, words, share)),
      clear,
    ),
  );
  const twists = rulingLines(part, piece.loops).flatMap(({ line, twistRad }) => {
    const words = twistFigure(twistRad);
    return words === "" ? [] : [besideLine(line.points, words, 0.5)];
  });
  const lays = layLines(design, part, piece.loops).map(({ line, words }) =>
    freest(
      SHARES.map((share) => besideLine(line.points, words, share)),
      clear,
    ),
  );
  const slots = (strip.slots ?? []).flatMap(({ uMm, kerfMm, depthMm, face, stretchesMm }) => {
    const [from, to] = stretchesMm[0] ?? [0, 0];
    const line = [paper(uMm - kerfMm / 2, from), paper(uMm - kerfMm / 2, to)];
    const words = `slot ${formatMm(depthMm)} deep, ${face}`;
    return [
      freest(
        SHARES.map((share) => besideLine(line, words, share)),
        clear,
      ),
    ];
  });
  const edges = edgeLabels(design, strip, part, clear);
  const words = [...figures, ...edges, ...bends, ...slots, ...twists, ...lays, ...numbers];
  const foam = design.project.materials.foams.find((candidate) => candidate.id === part.foamId);
  const notes = [
    piece.face,
    `${part.name}, ${formatNumber(part.thicknessMm, 0)} mm ${foam?.name ?? ""}`.trim(),
    bladeWords(design.project.cutting),
    ...(hasBevels(strip) ? [BEVEL_WORDS] : []),
  ];
  return [
    ...edgeTicks(marks),
    ...words,
    ...mainLabel(piece, notes, { taken: [...avoid, ...boxesOf(words, lettering)], lettering }),
  ];
}

/** How to cut by the lines of a strip with bevelled edges. */
const BEVEL_WORDS = "thick line: on this face, tilt the blade; thin: mid-thickness";

/** The words on a rib's template: every rib that is cut from it, the faces, the base line and the heights. */
export function ribLabels(
  group: RibGroup,
  attitude: "upright" | "inverted",
  room: LabelRoom,
): readonly Mark[] {
  const { piece, lettering, avoid } = room;
  const { rib, alike } = group;
  const box = boxOf(piece.loops.flat());
  const axis = rib.runs === "across" ? "y" : "x";
  const inside = rib.heights.filter((h) => h.atMm > box.left && h.atMm < box.right);
  const words = [
    ...inside.map((height) =>
      uprightText(
        textMark(
          paper(height.atMm - 1, box.bottom + 3),
          `${axis} ${formatNumber(height.atMm, 0)}  h ${formatMm(height.stationFaceMm)}`,
          { face: "mono", turnRad: Math.PI / 2, layer: "words" },
        ),
      ),
    ),
    textMark(paper(box.left + 3, box.bottom + 1.5), "base line, stands on the baseboard", {
      layer: "words",
    }),
  ];
  const notes = [
    alike.map((one) => `${one.id} at ${ribPlaceWords(one)}`).join("; "),
    piece.face,
    ...alike.map((one) => stationFaceWords(one, attitude)),
  ];
  return [
    ...words,
    ...mainLabel(piece, notes, { taken: [...avoid, ...boxesOf(words, lettering)], lettering }),
  ];
}

/** The boxes around words as printed. */
export const boxesOf = (words: readonly TextMark[], lettering: Lettering): readonly Box[] =>
  words.map((word) => boxOf(textCorners(word, lettering)));

/** Sizes tried one after the other, code and notes, mm. */
const SIZES: readonly (readonly [number, number])[] = [
  [10, 5],
  [7, 3.5],
  [5, 2.5],
  [3.5, 1.8],
];

/** The code, large, its notes below and the arrow; where nothing fits, small letters over the middle. */
export function mainLabel(
  piece: Piece,
  notes: readonly string[],
  context: { readonly taken: readonly Box[]; readonly lettering: Lettering },
): readonly Mark[] {
  for (const [code, note] of SIZES) {
    const block = labelBlock(piece, notes, { code, note }, context.lettering);
    const spot = findFreeSpot(block, piece.loops, context.taken);
    if (spot !== undefined) return block.draw(paper(spot.left, spot.bottom));
  }
  const block = labelBlock(piece, notes, { code: 3.5, note: 1.8 }, context.lettering);
  const whole = boxOf(piece.loops.flat());
  return block.draw(
    paper((whole.left + whole.right - block.widthMm) / 2, (whole.bottom + whole.top - block.heightMm) / 2),
  );
}

interface LabelBlock {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly draw: (corner: PaperPoint) => readonly Mark[];
}

function labelBlock(
  piece: Piece,
  notes: readonly string[],
  size: { readonly code: number; readonly note: number },
  lettering: Lettering,
): LabelBlock {
  const { code, note } = size;
  const arrowMm = 6 * note;
  const isLevel = piece.arrow.word === "forward";
  const codeWidth = lettering.widthMm(piece.id, "mono", code);
  const wordWidth = lettering.widthMm(piece.arrow.word, "bold", note);
  const centreWidth =
    piece.centreTurnRad === undefined ? 0 : 4 * note + lettering.widthMm(CENTRE_WORDS, "sans", note);
  const arrowWidth = 2 * note + (isLevel ? arrowMm : note) + wordWidth + centreWidth;
  const noteWidths = notes.map((text) => lettering.widthMm(text, "sans", note));
  const widthMm = Math.max(codeWidth + 2 * note + arrowWidth, ...noteWidths) + note;
  const lineMm = 1.7 * note;
  const heightMm = notes.length * lineMm + Math.max(code, arrowReach(piece, note, arrowMm)) + note;
  const draw = (corner: PaperPoint): readonly Mark[] => {
    const base = corner.y + notes.length * lineMm + note / 2;
    const arrowLeft = corner.x + codeWidth + 2 * note;
    return [
      textMark(paper(corner.x, base), piece.id, { heightMm: code, face: "mono", layer: "words" }),
      ...forwardArrow(piece, paper(arrowLeft, base), { note, arrowMm }),
      ...centreArrow(piece, paper(arrowLeft + arrowMm + 3 * note + wordWidth, base), { note, code }),
      ...notes.map((text, i) =>
        textMark(paper(corner.x, corner.y + (notes.length - 1 - i) * lineMm + note / 2), text, {
          heightMm: note,
          layer: "words",
        }),
      ),
    ];
  };
  return { widthMm, heightMm, draw };
}

const CENTRE_WORDS = "centre line";

/** Toward the centre line of the car, beside a right or left part. */
function centreArrow(
  piece: Piece,
  from: PaperPoint,
  size: { readonly note: number; readonly code: number },
): readonly Mark[] {
  if (piece.centreTurnRad === undefined) return [];
  const { note, code } = size;
  return [
    ...turnedArrow(paper(from.x, from.y + code / 2), piece.centreTurnRad, { lengthMm: code, headMm: note }),
    textMark(paper(from.x + note, from.y), CENTRE_WORDS, { heightMm: note, layer: "words" }),
  ];
}

function forwardArrow(
  piece: Piece,
  from: PaperPoint,
  size: { readonly note: number; readonly arrowMm: number },
): readonly Mark[] {
  const { note, arrowMm } = size;
  const word = (x: number) =>
    textMark(paper(x, from.y), piece.arrow.word, { heightMm: note, face: "bold", layer: "words" });
  const { turnRad } = piece.arrow;
  if (piece.arrow.word === "up") {
    const x = from.x + note / 2;
    return [
      ...turnedArrow(paper(x, from.y + arrowMm / 2), turnRad, { lengthMm: arrowMm, headMm: note }),
      word(x + note),
    ];
  }
  const middle = paper(from.x + arrowMm / 2, from.y + arrowReach(piece, note, arrowMm) / 2);
  return [
    ...turnedArrow(middle, turnRad, { lengthMm: arrowMm, headMm: note }),
    word(from.x + arrowMm + note),
  ];
}

/** Room that the arrow takes upward: a letter's height where it is level, more the more it turns. */
const arrowReach = (piece: Piece, note: number, arrowMm: number): number =>
  Math.max(note, arrowMm * Math.abs(Math.sin(piece.arrow.turnRad)));

function turnedArrow(
  middle: PaperPoint,
  turnRad: number,
  size: { readonly lengthMm: number; readonly headMm: number },
): readonly Mark[] {
  const [dx, dy] = [(Math.cos(turnRad) * size.lengthMm) / 2, (Math.sin(turnRad) * size.lengthMm) / 2];
  return arrowMarks(
    paper(middle.x - dx, middle.y - dy),
    paper(middle.x + dx, middle.y + dy),
    size.headMm,
    "thin",
  );
}

/** Places along a line that are tried for its words. */
export const SHARES = [0.35, 0.5, 0.65, 0.2, 0.8, 0.28, 0.42, 0.58, 0.72];

/** The first of the texts that lies clear of what is to stay free, else the first. */
export function freest(choices: readonly TextMark[], room: LabelRoom): TextMark {
  const clear = choices.find((mark) => {
    const box = boxOf(textCorners(mark, room.lettering));
    return !room.avoid.some((other) => boxesOverlap(box, other));
  });
  return clear ?? at(choices, 0);
}

/** Letters along an edge, and where they would be longer than it, mm. */
const EDGE_LETTERS_MM = 3.5;
const SMALL_LETTERS_MM = 2.5;
/** From an edge to words along it, mm. */
const ASIDE_MM = 2;

/** Shortest edge that gets words, mm. */
const LABELLED_EDGE_MM = 40;

function edgeLabels(design: Design, strip: Strip, part: Part, room: LabelRoom): readonly TextMark[] {
  let index = -1;
  return strip.loops.flatMap((loop) =>
    loop.edges.flatMap((edge) => {
      index += 1;
      const points = edge.points.map(toPaper);
      if (lengthOf(points) < LABELLED_EDGE_MM) return [];
      const words = edgeWords(design, strip, part, edge);
      const label = edge.name === "" || edge.role === "seam" ? words : `${edge.name}: ${words}`;
      const isLong = room.lettering.widthMm(label, "sans", EDGE_LETTERS_MM) > lengthOf(points);
      const heightMm = isLong ? SMALL_LETTERS_MM : EDGE_LETTERS_MM;
      const isMarked = room.marks.some(({ edgeIndex }) => edgeIndex === index);
      const asideMm = isMarked ? BEYOND_FIGURES_MM : ASIDE_MM;
      return [
        freest(
          SHARES.map((share) => ({ ...insideEdge(points, label, share, asideMm), heightMm })),
          room,
        ),
      ];
    }),
  );
}

/** Words beside an edge on the material's side, which lies to the left of its direction. */
export function insideEdge(
  points: readonly PaperPoint[],
  words: string,
  share: number,
  asideMm: number = ASIDE_MM,
): TextMark {
  const spot = spotOn(points, share);
  const [nx, ny] = [-Math.sin(spot.turnRad), Math.cos(spot.turnRad)];
  return uprightText(
    textMark(paper(spot.at.x + nx * asideMm, spot.at.y + ny * asideMm), words, {
      heightMm: EDGE_LETTERS_MM,
      anchor: "middle",
      turnRad: spot.turnRad,
      layer: "words",
    }),
  );
}

function alongLine(points: readonly PaperPoint[], words: string, share: number): TextMark {
  const spot = spotOn(points, share);
  return textMark(paper(spot.at.x - 1, spot.at.y), words, {
    anchor: "middle",
    turnRad: Math.PI / 2,
    layer: "words",
  });
}

/** Words along any line, just above it. */
function besideLine(points: readonly PaperPoint[], words: string, share: number): TextMark {
  const spot = spotOn(points, share);
  const turned = uprightText(
    textMark(spot.at, words, { anchor: "middle", turnRad: spot.turnRad, layer: "words" }),
  );
  const up = { x: -Math.sin(turned.turnRad), y: Math.cos(turned.turnRad) };
  return { ...turned, at: paper(spot.at.x + up.x, spot.at.y + up.y) };
}

/** The number of every station just beyond the upper end of its line. */
export function stationNumbers(
  table: MarkingTable,
  loops: readonly (readonly PaperPoint[])[],
): readonly TextMark[] {
  return table.rows
    .filter((row) => row.reason === "station")
    .flatMap((row) => {
      const u = table.origin.u + row.alongMm;
      const chords = chordsAt(loops, u);
      if (chords.length === 0) return [];
      const [, top] = at(chords, -1);
      return [
        textMark(paper(u, top + 2.5), formatNumber(row.alongMm, 0), {
          face: "mono",
          anchor: "middle",
          layer: "words",
        }),
      ];
    });
}
