import type { Strip } from "../cutting/index.ts";
import { at, distanceFlat, type FlatPoint, formatNumber } from "../foundation/index.ts";
import type { EdgeMark, MarkingTable } from "../marking/index.ts";
import type { Part } from "../patterns/index.ts";
import type { Block } from "./blocks.ts";
import { boxOf, heightOf, markBox, widthOf } from "./boxes.ts";
import { dimensionMarks } from "./dimensions.ts";
import type { Lettering } from "./lettering.ts";
import { markTicks } from "./mark-ticks.ts";
import { arrowMarks, lineMark, type Placing, paper, placePoint, textMark, toPaper } from "./marks.ts";
import { CONTENT_WIDTH_MM } from "./page-frame.ts";
import type { Piece } from "./piece.ts";
import { rulingLines, twistFigure } from "./ruling-lines.ts";
import { standardScale } from "./scales.ts";
import { thin } from "./thin-points.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** Room around the drawing for dimensions, numbers and the arrow, mm. */
const BESIDE_MM = 14;
const ABOVE_MM = 15;
/** Where no stations are numbered above it. */
const ABOVE_UNNUMBERED_MM = 11;
const BELOW_MM = 14;
const MOST_HEIGHT_MM = 110;

/** A corner of a strip: where two of its edges meet, numbered from 1. */
export interface StripCorner {
  readonly number: number;
  readonly at: FlatPoint;
}

/** The corners of the outline, in its own order, then those of the holes. */
export function stripCorners(loops: Strip["loops"]): readonly StripCorner[] {
  return loops
    .flatMap((loop) => loop.edges.map((edge) => at(edge.points, 0)))
    .map((point, i) => ({ number: i + 1, at: point }));
}

/** Corner numbers at the start and end of every edge, in the order of the strip's loops. */
export function cornerPairs(strip: Strip): readonly (readonly [number, number])[] {
  let first = 1;
  return strip.loops.flatMap((loop) => {
    const count = loop.edges.length;
    const pairs = loop.edges.map((_, i): readonly [number, number] => [first + i, first + ((i + 1) % count)]);
    first += count;
    return pairs;
  });
}

/** The longest distances between corners of an outline: what to tape before the knife is taken up. */
export function checkDiagonals(
  loops: Strip["loops"],
  count: number,
): readonly (readonly [number, number, number])[] {
  const corners = stripCorners(loops.slice(0, 1));
  const pairs = corners.flatMap((a, i) =>
    corners
      .slice(i + 1)
      .map((b): readonly [number, number, number] => [a.number, b.number, distanceFlat(a.at, b.at)]),
  );
  return [...pairs].sort((p, q) => q[2] - p[2] || p[0] - q[0]).slice(0, count);
}

/** What the sheets of a strip are set with: its letters, the marks on its edges, and its template. */
export interface StripSetting {
  readonly lettering: Lettering;
  readonly marks: readonly EdgeMark[];
  readonly piece: Piece;
}

/** The scaled drawing of a strip with overall dimensions, corner numbers and the arrow; and its scale. */
export function stripDrawing(
  strip: Strip,
  part: Part,
  { lettering, marks, piece }: StripSetting,
): { readonly block: Block; readonly scale: number } {
  const box = boxOf(piece.lines.flatMap((line) => line.points));
  const size = { widthMm: widthOf(box), heightMm: heightOf(box) };
  const room = {
    widthMm: CONTENT_WIDTH_MM - 2 * BESIDE_MM,
    heightMm: MOST_HEIGHT_MM - ABOVE_MM - BELOW_MM,
  };
  const scale = standardScale(size, room);
  const isNumbered = piece.ofStrip?.table?.rows.some(({ reason }) => reason === "station") ?? false;
  const aboveMm = isNumbered ? ABOVE_MM : ABOVE_UNNUMBERED_MM;
  const heightMm = size.heightMm / scale + aboveMm + BELOW_MM;
  const draw = (corner: PaperPoint): readonly Mark[] => {
    const left = corner.x + (CONTENT_WIDTH_MM - size.widthMm / scale) / 2;
    const placing: Placing = {
      quarterTurned: false,
      scaleX: 1 / scale,
      scaleY: 1 / scale,
      move: paper(left - box.left / scale, corner.y - aboveMm - box.top / scale),
    };
    const put = (p: PaperPoint) => placePoint(p, placing);
    const table = piece.ofStrip?.table;
    const finished = boxOf(piece.loops.flat());
    const lines = piece.lines.map((line) => ({
      ...line,
      points: thin(line.points.map((p) => placePoint(p, placing))),
    }));
    const corners = cornerNumbers(strip, put, lettering);
    return [
      ...lines,
      ...(table === undefined
        ? []
        : numberRow(table, { put, top: put(paper(0, box.top)).y + 5.5, lettering })),
      ...corners,
      ...dimensionMarks(
        put(paper(finished.left, finished.bottom)),
        put(paper(finished.right, finished.bottom)),
        -10,
        widthOf(finished),
      ),
      // Downward, so that a value with no room between its arrows stands below, clear of the arrow above.
      ...dimensionMarks(
        beside(put(paper(finished.left, finished.top))),
        beside(put(paper(finished.left, finished.bottom))),
        NUMBER_ROOM_MM - 9,
        heightOf(finished),
      ),
      ...markTicks(marks, put, {
        lettering,
        lines: lines.filter(({ style }) => style === "cut"),
        taken: corners.map((mark) => markBox(mark, lettering)),
      }),
      ...twistFigures(part, piece, put),
      ...forwardMarks(paper(corner.x + 7, corner.y - 3), piece.arrow.turnRad),
    ];
  };
  return { block: { heightMm, draw }, scale };
}

/** Room for a corner's number between the drawing and the extension line, mm. */
const NUMBER_ROOM_MM = 5;
const beside = (p: PaperPoint): PaperPoint => paper(p.x - NUMBER_ROOM_MM, p.y);

/** A front that lies off level by less than this sine is drawn level. */
const NEARLY_LEVEL = 0.3;

/** The arrow about its middle, and the word beside it. */
function forwardMarks(middle: PaperPoint, turnRad: number): readonly Mark[] {
  const isLevel = Math.abs(Math.sin(turnRad)) < NEARLY_LEVEL;
  const [dx, dy] = isLevel
    ? [7 * Math.sign(Math.cos(turnRad)), 0]
    : [7 * Math.cos(turnRad), 7 * Math.sin(turnRad)];
  // A level arrow keeps to the top of the drawing; one that turns stands a little lower.
  const y = middle.y - Math.max(0, Math.abs(dy) - 3);
  return [
    ...arrowMarks(paper(middle.x - dx, y - dy), paper(middle.x + dx, y + dy), 3, "outline"),
    textMark(paper(middle.x + 9, y - 1.2), "forward", { face: "bold" }),
  ];
}

/** Twist along the rulings that are drawn, each beside its middle; those that would collide are left out. */
function twistFigures(part: Part, piece: Piece, put: (p: PaperPoint) => PaperPoint): readonly Mark[] {
  let last: PaperPoint | undefined;
  return rulingLines(part, piece.loops).flatMap(({ line, twistRad }): Mark[] => {
    const words = twistFigure(twistRad).replace("twist ", "");
    const [a, b] = [put(at(line.points, 0)), put(at(line.points, -1))];
    const middle = paper((a.x + b.x) / 2 + 0.6, (a.y + b.y) / 2);
    if (words === "" || (last !== undefined && Math.hypot(middle.x - last.x, middle.y - last.y) < 9))
      return [];
    last = middle;
    return [textMark(middle, words, { heightMm: 2.5, face: "mono" })];
  });
}

/** Where the numbers of the stations stand. */
interface NumberRow {
  readonly put: (p: PaperPoint) => PaperPoint;
  readonly top: number;
  readonly lettering: Lettering;
}

/** The stations' numbers in one row above the drawing; those that would run into the one before are left out. */
function numberRow(table: MarkingTable, row: NumberRow): readonly Mark[] {
  let end = Number.NEGATIVE_INFINITY;
  return table.rows
    .filter(({ reason }) => reason === "station")
    .flatMap(({ alongMm }): Mark[] => {
      const { x, y } = row.put(paper(table.origin.u + alongMm, table.origin.v));
      const text = formatNumber(alongMm, 0);
      const half = row.lettering.widthMm(text, "mono", 2.5) / 2;
      if (x - half < end + 1) return [];
      end = x + half;
      return [
        lineMark([paper(x, y), paper(x, row.top - 0.6)], "station", "station"),
        textMark(paper(x, row.top), text, { heightMm: 2.5, face: "mono", anchor: "middle" }),
      ];
    });
}

/** Each number a little outside its corner, away from the neighbours; those that would collide are left out. */
function cornerNumbers(
  strip: Strip,
  put: (p: PaperPoint) => PaperPoint,
  lettering: Lettering,
): readonly Mark[] {
  const placed: PaperPoint[] = [];
  let number = 0;
  return strip.loops.flatMap((loop) =>
    loop.edges.flatMap((edge, i): Mark[] => {
      number += 1;
      const before = at(loop.edges, (i + loop.edges.length - 1) % loop.edges.length);
      const [p, from, to] = [
        put(toPaper(at(edge.points, 0))),
        put(toPaper(at(before.points, -2))),
        put(toPaper(at(edge.points, 1))),
      ];
      const spot = outside(p, from, to);
      if (placed.some((other) => Math.hypot(other.x - spot.x, other.y - spot.y) < 3.2)) return [];
      placed.push(spot);
      const text = formatNumber(number, 0);
      const wide = lettering.widthMm(text, "bold", 2.5);
      return [textMark(paper(spot.x - wide / 2, spot.y - 1.25), text, { face: "bold" })];
    }),
  );
}

/** The material lies left of the walk from → p → to; outside is right of it. */
function outside(p: PaperPoint, from: PaperPoint, to: PaperPoint): PaperPoint {
  const right = (a: PaperPoint, b: PaperPoint) => {
    const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    return paper((b.y - a.y) / length, -(b.x - a.x) / length);
  };
  const [r1, r2] = [right(from, p), right(p, to)];
  const [x, y] = [r1.x + r2.x, r1.y + r2.y];
  const length = Math.hypot(x, y) || 1;
  return paper(p.x + (x / length) * 3.6, p.y + (y / length) * 3.6);
}
