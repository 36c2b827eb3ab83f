import type { Strip } from "../cutting/index.ts";
import { at, formatMm, formatNumber } from "../foundation/index.ts";
import type { Rib, RibSplice } from "../jig/index.ts";
import { type EdgeMark, hasBevels, type MarkingTable } from "../marking/index.ts";
import type { Part } from "../patterns/index.ts";
import { type Box, boxesOverlap, boxOf, heightOf, textCorners } from "./boxes.ts";
import { chordsAt } from "./chords.ts";
import { clipLine } from "./clip.ts";
import { bladeWords } from "./cutting-words.ts";
import type { Design } from "./design.ts";
import { BEYOND_FIGURES_MM, edgeFigures, edgeTicks } from "./edge-figures.ts";
import { edgeWords } from "./edge-neighbours.ts";
import type { Lettering } from "./lettering.ts";
import { mainLabel } from "./main-label.ts";
import { type LineMark, lineMark, paper, type TextMark, textMark, toPaper } from "./marks.ts";
import type { Piece } from "./piece.ts";
import { lengthOf, spotOn } from "./polyline-spot.ts";
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
  const { table, lays = [] } = piece.ofStrip ?? {};
  const numbers = table === undefined ? [] : stationNumbers(table, piece.loops);
  const figures = edgeFigures(marks, part);
  const alongLines = (
    lines: readonly { readonly line: LineMark; readonly words: string }[],
    place: (points: readonly PaperPoint[], words: string, share: number) => TextMark,
  ) => lines.map(({ line, words }) => SHARES.map((share) => place(line.points, words, share)));
  const twists = rulingLines(part, piece.loops).flatMap(({ line, twistRad }) => {
    const words = twistFigure(twistRad);
    return words === "" ? [] : [besideLine(line.points, words, 0.5)];
  });
  const fixed = [...figures, ...twists, ...numbers];
  const foam = design.project.materials.foams.find((candidate) => candidate.id === part.foamId);
  const notes = [
    piece.face,
    ...(part.panel
      ? [`${part.name}, ${formatMm(part.thicknessMm)} mm panel, cured`, "saw outside the line, sand to it"]
      : [
          `${part.name}, ${formatNumber(part.thicknessMm, 0)} mm ${foam?.name ?? ""}`.trim(),
          bladeWords(design.project.cutting),
        ]),
    ...(hasBevels(strip) ? [BEVEL_WORDS] : []),
  ];
  const fixedBoxes = boxesOf(fixed, lettering);
  const taken = [...room.avoid, ...fixedBoxes];
  const main = mainLabel(piece, notes, { taken, words: fixedBoxes, lettering });
  const words = placeWords(
    [
      ...edgeLabels(design, strip, part, room),
      ...alongLines(slotWords(strip), besideLine),
      ...alongLines(lays, besideLine),
      ...alongLines(bendLimits(strip, part), alongLine),
    ],
    [...fixed, ...main.filter((mark) => mark.kind === "text")],
    room,
  );
  return [...edgeTicks(marks), ...fixed, ...words, ...main];
}

/** What stands along a wall of every relief slot. */
const slotWords = ({ slots }: Strip): readonly { readonly line: LineMark; readonly words: string }[] =>
  (slots ?? []).map(({ uMm, kerfMm, depthMm, face, stretchesMm }) => {
    const [from, to] = stretchesMm[0] ?? [0, 0];
    const wallMm = uMm - kerfMm / 2;
    return {
      line: lineMark([paper(wallMm, from), paper(wallMm, to)], "thin"),
      words: `slot ${formatMm(depthMm)} deep, ${face}`,
    };
  });

/** How to cut by the lines of a strip with bevelled edges. */
const BEVEL_WORDS = "thick line: on this face, tilt the blade; thin: mid-thickness";

/** The words on a rib's template: every rib that is cut from it, the faces, the base line and the heights. */
export function ribLabels(group: RibGroup, room: LabelRoom): readonly Mark[] {
  const { piece, lettering, avoid } = room;
  const { rib, alike } = group;
  const box = boxOf(piece.loops.flat());
  const axis = rib.runs === "across" ? "y" : "x";
  const baseMm = rib.tabs.length > 0 ? 0 : box.bottom;
  const inside = rib.heights.filter((h) => h.atMm > box.left && h.atMm < box.right);
  const figures = inside.map((height) => ({
    atMm: height.atMm,
    text: `${axis} ${formatNumber(height.atMm, 0)}  h ${formatMm(height.stationFaceMm)}`,
  }));
  const words = [
    ...placeWords(
      figures
        .filter(({ atMm, text }, i) => !figures.slice(0, i).some(isSame(atMm, text)))
        .map(({ atMm, text }) => heightWords(atMm, baseMm, text)),
      [],
      { ...room, avoid: [] },
    ),
    baseWords(
      [box.left, ...inside.map(({ atMm }) => atMm).toSorted((a, b) => a - b), box.right],
      baseMm,
      lettering,
    ),
    ...rib.splices.flatMap((splice) => spliceWords(rib, splice)),
  ];
  const notes = [
    alike.map((one) => `${one.id} at ${ribPlaceWords(one)}`).join("; "),
    piece.face,
    ...alike.map((one) => stationFaceWords(one)),
  ];
  return [
    ...words,
    ...mainLabel(piece, notes, { taken: [...avoid, ...boxesOf(words, lettering)], lettering }),
  ];
}

/** Along the base line, between the first two lines of heights that leave room for the words. */
function baseWords(linesMm: readonly number[], baseMm: number, lettering: Lettering): TextMark {
  const words = textMark(paper(0, baseMm + 1.5), "base line, stands on the baseboard", { layer: "words" });
  const { left, right } = boxOf(textCorners(words, lettering));
  const roomMm = right - left + 2 * CLEAR_OF_LINES_MM;
  const free = linesMm.find((atMm, i) => (linesMm[i + 1] ?? atMm) - atMm >= roomMm);
  return { ...words, at: paper((free ?? at(linesMm, 0)) + CLEAR_OF_LINES_MM, baseMm + 1.5) };
}

const CLEAR_OF_LINES_MM = 3;

/** Two heights that would be told in the same words beside each other. */
const isSame =
  (atMm: number, text: string) =>
  (other: { readonly atMm: number; readonly text: string }): boolean =>
    other.text === text && Math.abs(other.atMm - atMm) < 5;

/** Above the words of the base line: places for a height beside its line, to its left, to its right, and higher up. */
const OVER_BASE_MM = 6;
const heightWords = (atMm: number, baseMm: number, text: string): readonly TextMark[] =>
  [OVER_BASE_MM, OVER_BASE_MM + 40, OVER_BASE_MM + 80].flatMap((upMm) =>
    [-1, 3.5].map((asideMm) =>
      uprightText(
        textMark(paper(atMm + asideMm, baseMm + upMm), text, {
          face: "mono",
          turnRad: Math.PI / 2,
          layer: "words",
        }),
      ),
    ),
  );

/** Beside a splice: what is sawn apart here, and how it is joined. */
function spliceWords(rib: Rib, { atMm, way, plate }: RibSplice): readonly TextMark[] {
  const words =
    way === "plate" && plate !== undefined
      ? `saw here; plate ${plate.id} on the face away from the station face, glued and screwed`
      : "saw along the dovetail; tail and socket are glued, flat on the bench";
  const box = boxOf(rib.outlineMm.map(toPaper));
  return [textMark(paper(atMm + 3, box.bottom + heightOf(box) / 2), words, { layer: "words" })];
}

/** The boxes around words as printed. */
export const boxesOf = (words: readonly TextMark[], lettering: Lettering): readonly Box[] =>
  words.map((word) => boxOf(textCorners(word, lettering)));

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

/**
 * Texts one after the other, each at the first of its places that is clear of all words before it, of the lines to cut by and
 * of what is to stay free; else clear of the words and those lines; else of the words alone; one that finds no such place is left out: the sheet of the piece has it.
 */
function placeWords(
  wanted: readonly (readonly TextMark[])[],
  words: readonly TextMark[],
  room: LabelRoom,
): readonly TextMark[] {
  const placed: TextMark[] = [];
  const cuts = room.piece.lines.filter(({ style }) => style === "cut");
  const taken = [...boxesOf(words, room.lettering)];
  for (const choices of wanted) {
    const isOff = (boxes: readonly Box[]) => (mark: TextMark) => {
      const box = boxOf(textCorners(mark, room.lettering));
      return !boxes.some((other) => boxesOverlap(box, other));
    };
    const isUncut = (mark: TextMark) => !isStruck(mark, cuts, room.lettering);
    const clear = choices.filter(isOff(taken));
    const mark =
      clear.find((one) => isUncut(one) && isOff(room.avoid)(one)) ?? clear.find(isUncut) ?? clear[0];
    if (mark === undefined) continue;
    placed.push(mark);
    taken.push(...boxesOf([mark], room.lettering));
  }
  return placed;
}

/** Whether one of the lines runs through a text: seen in its own frame, where it stands level. */
function isStruck(mark: TextMark, lines: readonly LineMark[], lettering: Lettering): boolean {
  const [c, s] = [Math.cos(mark.turnRad), Math.sin(mark.turnRad)];
  const levelled = ({ x, y }: PaperPoint): PaperPoint => paper(x * c + y * s, y * c - x * s);
  const corners = textCorners(mark, lettering);
  const box = boxOf(corners.map(levelled));
  const near = lines.flatMap((line) => clipLine(line, boxOf(corners)));
  return near.some((line) => clipLine({ ...line, points: line.points.map(levelled) }, box).length > 0);
}

/** Letters along an edge, and where they would be longer than it, mm. */
const EDGE_LETTERS_MM = 3.5;
const SMALL_LETTERS_MM = 2.5;
/** From an edge to words along it, mm. */
const ASIDE_MM = 2;

/** Shortest edge that gets words, mm. */
const LABELLED_EDGE_MM = 40;

/**
 * The places for the words of every edge where no line to cut by runs through them; on an edge too short for all of them its
 * name is left out.
 */
function edgeLabels(
  design: Design,
  strip: Strip,
  part: Part,
  { marks, lettering, piece }: LabelRoom,
): readonly (readonly TextMark[])[] {
  const cuts = piece.lines.filter(({ style }) => style === "cut");
  const widthMm = (words: string, heightMm: number) => lettering.widthMm(words, "sans", heightMm);
  return strip.loops
    .flatMap(({ edges }) => edges)
    .flatMap((edge, index) => {
      const points = edge.points.map(toPaper);
      const lengthMm = lengthOf(points);
      if (lengthMm < LABELLED_EDGE_MM) return [];
      const words = edgeWords(design, strip, part, edge);
      const whole = edge.name === "" || edge.role === "seam" ? words : `${edge.name}: ${words}`;
      const label = widthMm(whole, SMALL_LETTERS_MM) > lengthMm ? words : whole;
      const heightMm = widthMm(label, EDGE_LETTERS_MM) > lengthMm ? SMALL_LETTERS_MM : EDGE_LETTERS_MM;
      const isMarked = marks.some(({ edgeIndex }) => edgeIndex === index);
      const asideMm = isMarked ? BEYOND_FIGURES_MM : ASIDE_MM;
      return [
        [0, 3, 7]
          .flatMap((furtherMm) =>
            SHARES.map((share) => ({ ...insideEdge(points, label, share, asideMm + furtherMm), heightMm })),
          )
          .filter((mark) => !isStruck(mark, cuts, lettering)),
      ];
    });
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
