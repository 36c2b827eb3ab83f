import svgpath from "svgpath";
import type { Vec2 } from "../foundation/index.ts";
import { arcStroke } from "./arc-stroke.ts";
import type { Contour, Stroke } from "./contour.ts";

/** The contours of path data, in its own units and axes, and what of the data could not be read. */
export interface PathContours {
  readonly contours: readonly Pick<Contour, "closed" | "strokes">[];
  readonly unread: string | undefined;
}

/** Letters of unread data that are shown. */
const MOST_LETTERS = 12;

/**
 * Path data (SVG 1.1 §8.3) as contours, one for each subpath: lines, cubics (quadratics are raised to cubics, which
 * is exact) and arcs. Data is read up to its first mistake, as the standard asks.
 */
export function pathContours(data: string): PathContours {
  const path = svgpath(data);
  const walk = startWalk();
  path
    .abs()
    .unshort()
    .iterate((segment) => take(walk, segment));
  endSubpath(walk, false);
  return { contours: walk.contours, unread: unreadPart(data, path) };
}

/** svgpath keeps its message in a field that its types leave out: `… (at pos 12)`. */
function unreadPart(data: string, path: unknown): string | undefined {
  const { err } = path as { readonly err?: unknown };
  if (typeof err !== "string" || err === "") return undefined;
  const at = Math.max(0, Number(/at pos (\d+)/.exec(err)?.[1] ?? 1) - 1);
  const rest = data.slice(at, at + MOST_LETTERS).trim();
  return rest === "" ? data.slice(-MOST_LETTERS) : rest;
}

interface Walk {
  contours: Pick<Contour, "closed" | "strokes">[];
  strokes: Stroke[];
  start: Vec2;
  here: Vec2;
}

const startWalk = (): Walk => ({ contours: [], strokes: [], start: [0, 0], here: [0, 0] });

type Segment = Parameters<Parameters<ReturnType<typeof svgpath>["iterate"]>[0]>[0];

function take(walk: Walk, segment: Segment): void {
  switch (segment[0]) {
    case "M":
      endSubpath(walk, false);
      walk.start = [segment[1], segment[2]];
      walk.here = walk.start;
      return;
    case "L":
      lineTo(walk, [segment[1], segment[2]]);
      return;
    case "H":
      lineTo(walk, [segment[1], walk.here[1]]);
      return;
    case "V":
      lineTo(walk, [walk.here[0], segment[1]]);
      return;
    case "C": {
      const [, x1, y1, x2, y2, x, y] = segment;
      add(walk, {
        kind: "cubic",
        from: walk.here,
        control1: [x1, y1],
        control2: [x2, y2],
        to: [x, y],
      });
      return;
    }
    case "Q": {
      const [, cx, cy, x, y] = segment;
      const control1 = toward(walk.here, [cx, cy]);
      const control2 = toward([x, y], [cx, cy]);
      add(walk, { kind: "cubic", from: walk.here, control1, control2, to: [x, y] });
      return;
    }
    case "A": {
      const [, rx, ry, degrees, isLarge, isPositive, x, y] = segment;
      const arc = {
        radii: [rx, ry] as const,
        rotationRad: (degrees * Math.PI) / 180,
        isLarge: isLarge !== 0,
        isPositive: isPositive !== 0,
      };
      add(walk, arcStroke(walk.here, [x, y], arc));
      return;
    }
    case "Z":
    case "z":
      closeSubpath(walk);
      return;
    default:
      return;
  }
}

/** A quadratic's control point, two thirds of the way from its end: the cubic's. */
const toward = (end: Vec2, control: Vec2): Vec2 => [
  end[0] + (2 / 3) * (control[0] - end[0]),
  end[1] + (2 / 3) * (control[1] - end[1]),
];

const lineTo = (walk: Walk, to: Vec2): void => add(walk, { kind: "line", from: walk.here, to });

/** A stroke that goes nowhere is none. */
function add(walk: Walk, stroke: Stroke): void {
  walk.here = stroke.to;
  const isPoint =
    stroke.kind !== "cubic" && stroke.from[0] === stroke.to[0] && stroke.from[1] === stroke.to[1];
  if (!isPoint) walk.strokes.push(stroke);
}

function closeSubpath(walk: Walk): void {
  lineTo(walk, walk.start);
  endSubpath(walk, true);
}

function endSubpath(walk: Walk, closed: boolean): void {
  if (walk.strokes.length > 0) walk.contours.push({ closed, strokes: walk.strokes });
  walk.strokes = [];
  walk.here = walk.start;
}
