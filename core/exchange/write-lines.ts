import {
  type ArcPiece,
  type CubicPiece,
  type CurvePiece,
  endOfPiece,
  extremeParameters,
  flattenPiece,
  pointOnPiece,
  startOfPiece,
} from "../curves/index.ts";
import { at, roundTo, type Vec2 } from "../foundation/index.ts";

/** A drawn line as it goes out: in mm, (x, y) in plan or (x, z) in the side view, its pieces end to end. */
export interface OutgoingLine {
  readonly name: string;
  readonly closed: boolean;
  readonly pieces: readonly CurvePiece[];
}

/** Coordinates keep this many places, mm. */
const PLACES = 4;
/** White around the lines, mm. */
const MARGIN_MM = 10;
/** Points of a table follow the line as finely as this. */
const CHORDS = { chordErrorMm: 0.01, turnRad: Math.PI / 8 };

/**
 * Lines as SVG, true to size: width and height in mm, one user unit a millimetre, x to the right, the second axis up
 * on the page. Each line is a group of its name with one path; straight lines, arcs and cubics go out as what they are.
 */
export function linesAsSvg(title: string, lines: readonly OutgoingLine[]): string {
  const [least, most] = boxOf(lines.flatMap(({ pieces }) => pieces.flatMap(outermost)));
  const [left, top] = [least[0] - MARGIN_MM, -most[1] - MARGIN_MM];
  const [width, height] = [most[0] - least[0] + 2 * MARGIN_MM, most[1] - least[1] + 2 * MARGIN_MM];
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${number(width)}mm" height="${number(height)}mm" viewBox="${[left, top, width, height].map(number).join(" ")}">`,
    `<title>${xmlWords(title)}</title>`,
    ...lines.map(
      (line) =>
        `<g id="${xmlWords(line.name)}" fill="none" stroke="#000000" stroke-width="0.35">\n<path d="${pathData(line)}"/>\n</g>`,
    ),
    "</svg>",
    "",
  ].join("\n");
}

/**
 * Lines as CSV: points along each that follow it within a hundredth of a millimetre, nodes among them, under a heading
 * that names the axes and the unit. Several lines are told apart by a first column with their names.
 */
export function linesAsCsv(lines: readonly OutgoingLine[], axes: readonly [string, string]): string {
  const isSeveral = lines.length > 1;
  const heading = [...(isSeveral ? ["line"] : []), `${axes[0]} mm`, `${axes[1]} mm`];
  const rows = lines.flatMap((line) =>
    pointsAlong(line).map((point) => [...(isSeveral ? [csvWords(line.name)] : []), ...point.map(number)]),
  );
  return `${[heading, ...rows].map((row) => row.join(",")).join("\r\n")}\r\n`;
}

/** Points along a line; a closed one ends where it began. */
function pointsAlong({ pieces }: OutgoingLine): readonly Vec2[] {
  const points = pieces.flatMap((piece) => flattenPiece(piece, CHORDS).map((t) => pointOnPiece(piece, t)));
  return points.filter((point, i) => i === 0 || !isSame(point, at(points, i - 1)));
}

const isSame = (a: Vec2, b: Vec2): boolean => number(a[0]) === number(b[0]) && number(a[1]) === number(b[1]);

function pathData({ closed, pieces }: OutgoingLine): string {
  const [first] = pieces;
  if (first === undefined) return "";
  return [`M${place(startOfPiece(first))}`, ...pieces.map(strokeData), ...(closed ? ["Z"] : [])].join(" ");
}

function strokeData(piece: CurvePiece): string {
  switch (piece.kind) {
    case "line":
      return `L${place(piece.to)}`;
    case "arc":
      return arcData(piece);
    case "cubic":
      return `C${controlsOf(piece).map(place).join(" ")}`;
  }
}

/** The second axis is turned over, and with it the way round. */
function arcData(piece: ArcPiece): string {
  const radius = number(piece.radiusMm);
  const isLarge = Math.abs(piece.sweepRad) > Math.PI ? 1 : 0;
  return `A${radius} ${radius} 0 ${isLarge} ${piece.sweepRad > 0 ? 0 : 1} ${place(endOfPiece(piece))}`;
}

/** Powers of t as Bézier control points: b1 = c0 + c1/3, b2 = c0 + 2 c1/3 + c2/3, b3 the end. */
function controlsOf({ first, second }: CubicPiece): readonly Vec2[] {
  const along = ([c0, c1, c2, c3]: CubicPiece["first"]) => [
    c0 + c1 / 3,
    c0 + (2 * c1 + c2) / 3,
    c0 + c1 + c2 + c3,
  ];
  const [xs, ys] = [along(first), along(second)];
  return xs.map((x, i): Vec2 => [x, at(ys, i)]);
}

const outermost = (piece: CurvePiece): readonly Vec2[] =>
  [0, ...extremeParameters(piece, [1, 0]), ...extremeParameters(piece, [0, 1]), 1].map((t) =>
    pointOnPiece(piece, t),
  );

function boxOf(points: readonly Vec2[]): readonly [Vec2, Vec2] {
  const pick = (axis: 0 | 1, choose: (a: number, b: number) => number) =>
    points.reduce((best, point) => choose(best, point[axis]), points[0]?.[axis] ?? 0);
  return [
    [pick(0, Math.min), pick(1, Math.min)],
    [pick(0, Math.max), pick(1, Math.max)],
  ];
}

const place = ([x, up]: Vec2): string => `${number(x)} ${number(-up)}`;

const number = (value: number): string => String(roundTo(value, PLACES) + 0);

const xmlWords = (words: string): string =>
  words.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

const csvWords = (words: string): string =>
  /[",\r\n]/.test(words) ? `"${words.replaceAll('"', '""')}"` : words;
