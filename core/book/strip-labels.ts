import type { Strip } from "../cutting/index.ts";
import { at, formatMm, formatNumber } from "../foundation/index.ts";
import { hasBevels, type MarkingTable } from "../marking/index.ts";
import type { Part } from "../patterns/index.ts";
import { chordsAt } from "./chords.ts";
import { bladeWords } from "./cutting-words.ts";
import type { Design } from "./design.ts";
import { BEYOND_FIGURES_MM, edgeFigures, edgeTicks } from "./edge-figures.ts";
import { edgeWords } from "./edge-neighbours.ts";
import { mainLabel } from "./main-label.ts";
import { type LineMark, lineMark, paper, type TextMark, textMark, toPaper } from "./marks.ts";
import { boxesOf, isStruck, type LabelRoom, placeWords, SHARES } from "./place-words.ts";
import { lengthOf, spotOn } from "./polyline-spot.ts";
import { rulingLines, twistFigure } from "./ruling-lines.ts";
import { bendLimits } from "./strip-piece.ts";
import type { Mark, PaperPoint } from "./types.ts";
import { uprightText } from "./upright-text.ts";

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
