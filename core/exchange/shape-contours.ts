import type { Vec2 } from "../foundation/index.ts";
import type { Complaint } from "./complaint.ts";
import type { Contour, Stroke } from "./contour.ts";
import { numbersIn } from "./numbers-in.ts";
import { pathContours } from "./path-contours.ts";
import { userLength } from "./svg-length.ts";

/** An element of an SVG file with its attributes and its place in the file. */
export interface SvgElement {
  /** Without a prefix: `path`. */
  readonly tag: string;
  /** With its id, for words: `path “wing”`. */
  readonly name: string;
  readonly line: number;
  readonly attributes: Readonly<Record<string, string>>;
}

/** What an element draws, in its own units and axes, and what of it could not be read. */
export interface ElementContours {
  readonly contours: readonly Pick<Contour, "closed" | "strokes">[];
  readonly complaints: readonly Complaint[];
}

/** The contours of a basic shape or path (SVG 1.1 §8 and §9); undefined for an element that draws no line. */
export function elementContours(element: SvgElement): ElementContours | undefined {
  switch (element.tag) {
    case "path": {
      const { contours, unread } = pathContours(element.attributes.d ?? "");
      const { line, name } = element;
      return {
        contours,
        complaints: unread === undefined ? [] : [{ kind: "path-data", line, name, rest: unread }],
      };
    }
    case "rect":
      return withNumbers(element, ["x", "y", "width", "height"], ([x, y, width, height]) =>
        rectangle([x, y], [width, height], cornerRadii(element, [width, height])),
      );
    case "circle":
      return withNumbers(element, ["cx", "cy", "r"], ([cx, cy, r]) => ellipse([cx, cy], [r, r]));
    case "ellipse":
      return withNumbers(element, ["cx", "cy", "rx", "ry"], ([cx, cy, rx, ry]) =>
        ellipse([cx, cy], [rx, ry]),
      );
    case "line":
      return withNumbers(element, ["x1", "y1", "x2", "y2"], ([x1, y1, x2, y2]) => ({
        closed: false,
        strokes: chain([
          [x1, y1],
          [x2, y2],
        ]),
      }));
    case "polyline":
      return fromPoints(element, false);
    case "polygon":
      return fromPoints(element, true);
    default:
      return undefined;
  }
}

type Four = readonly [number, number, number, number];

function withNumbers(
  element: SvgElement,
  names: readonly string[],
  draw: (numbers: Four) => Pick<Contour, "closed" | "strokes"> | undefined,
): ElementContours {
  const { line, name } = element;
  const numbers = names.map((attribute) => userLength(element.attributes[attribute] ?? "0"));
  const wrong = names.find((_, index) => numbers[index] === undefined);
  if (wrong !== undefined) {
    const value = element.attributes[wrong] ?? "";
    return { contours: [], complaints: [{ kind: "element-value", line, name, attribute: wrong, value }] };
  }
  const [a = 0, b = 0, c = 0, d = 0] = numbers;
  const contour = draw([a, b, c, d]);
  return { contours: contour ? [contour] : [], complaints: [] };
}

/** One radius stands for both; none is larger than half the side (SVG 1.1 §9.2). */
function cornerRadii({ attributes }: SvgElement, [width, height]: Vec2): Vec2 {
  const given = (name: "rx" | "ry") =>
    attributes[name] === undefined ? undefined : userLength(attributes[name]);
  const rx = given("rx") ?? given("ry") ?? 0;
  const ry = given("ry") ?? given("rx") ?? 0;
  return [Math.min(Math.max(0, rx), width / 2), Math.min(Math.max(0, ry), height / 2)];
}

function rectangle(
  [x, y]: Vec2,
  [width, height]: Vec2,
  [rx, ry]: Vec2,
): Pick<Contour, "closed" | "strokes"> | undefined {
  if (!(width > 0 && height > 0)) return undefined;
  const [right, bottom] = [x + width, y + height];
  if (rx === 0 || ry === 0) {
    const corners: readonly Vec2[] = [
      [x, y],
      [right, y],
      [right, bottom],
      [x, bottom],
      [x, y],
    ];
    return { closed: true, strokes: chain(corners) };
  }
  const corner = (centre: Vec2, startRad: number): Stroke => quarter(centre, [rx, ry], startRad);
  const sides: readonly Stroke[] = [
    line([x + rx, y], [right - rx, y]),
    corner([right - rx, y + ry], -Math.PI / 2),
    line([right, y + ry], [right, bottom - ry]),
    corner([right - rx, bottom - ry], 0),
    line([right - rx, bottom], [x + rx, bottom]),
    corner([x + rx, bottom - ry], Math.PI / 2),
    line([x, bottom - ry], [x, y + ry]),
    corner([x + rx, y + ry], Math.PI),
  ];
  return {
    closed: true,
    strokes: sides.filter((stroke) => stroke.kind !== "line" || !isPoint(stroke.from, stroke.to)),
  };
}

function ellipse(centre: Vec2, radii: Vec2): Pick<Contour, "closed" | "strokes"> | undefined {
  if (!(radii[0] > 0 && radii[1] > 0)) return undefined;
  return { closed: true, strokes: [0, 1, 2, 3].map((n) => quarter(centre, radii, (n * Math.PI) / 2)) };
}

function quarter(centre: Vec2, [rx, ry]: Vec2, startRad: number): Stroke {
  const at = (a: number): Vec2 => [centre[0] + rx * Math.cos(a), centre[1] + ry * Math.sin(a)];
  const sweepRad = Math.PI / 2;
  return {
    kind: "arc",
    from: at(startRad),
    to: at(startRad + sweepRad),
    centre,
    u: [rx, 0],
    v: [0, ry],
    startRad,
    sweepRad,
  };
}

function fromPoints(element: SvgElement, closed: boolean): ElementContours {
  const { line: at, name } = element;
  const text = element.attributes.points ?? "";
  const numbers = numbersIn(text);
  if (!numbers) {
    return {
      contours: [],
      complaints: [{ kind: "element-value", line: at, name, attribute: "points", value: text.slice(0, 40) }],
    };
  }
  const points = Array.from(
    { length: Math.floor(numbers.length / 2) },
    (_, i): Vec2 => [numbers[2 * i] ?? 0, numbers[2 * i + 1] ?? 0],
  );
  const first = points[0];
  const strokes = chain(closed && first ? [...points, first] : points);
  return {
    contours: strokes.length > 0 ? [{ closed, strokes }] : [],
    complaints: numbers.length % 2 === 0 ? [] : [{ kind: "odd-points", line: at, name }],
  };
}

const line = (from: Vec2, to: Vec2): Stroke => ({ kind: "line", from, to });
const isPoint = (a: Vec2, b: Vec2): boolean => a[0] === b[0] && a[1] === b[1];

/** Lines from point to point; points that repeat the one before make none. */
export const chain = (points: readonly Vec2[]): readonly Stroke[] =>
  points.slice(1).flatMap((to, index) => {
    const from = points[index];
    return from === undefined || isPoint(from, to) ? [] : [line(from, to)];
  });
