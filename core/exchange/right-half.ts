import { cubicRootsWithin, ON_CENTRE_LINE_MM, type Vec2 } from "../foundation/index.ts";
import { type Contour, pointOnStroke, type Stroke } from "./contour.ts";

/** How a contour lies to the centre line, and its right half where it has one. */
export type RightHalf =
  | { readonly kind: "right" }
  | { readonly kind: "left" }
  | { readonly kind: "half"; readonly contour: Contour }
  /** It crosses the centre line oftener than one half can be made of. */
  | { readonly kind: "tangled"; readonly crossings: number };

/**
 * What of a contour lies at y ≥ 0: an outline is closed along the centre line, an open line keeps its right end.
 * Strokes are cut exactly.
 */
export function rightHalf(contour: Contour): RightHalf {
  const parts = contour.strokes.flatMap(cutAtCentreLine);
  const isRight = (stroke: Stroke) => middleY(stroke) > 0 || isOnCentreLine(stroke);
  const leftParts = parts.filter((part) => !isRight(part));
  if (leftParts.every((part) => deepest(part) <= ON_CENTRE_LINE_MM)) return { kind: "right" };
  const rightParts = parts.filter((part) => isRight(part) && !isOnCentreLine(part));
  if (rightParts.length === 0) return { kind: "left" };
  const starts = parts.flatMap((part, i) => {
    const before = parts[i - 1] ?? (contour.closed ? parts.at(-1) : undefined);
    const begins = isRight(part) && (before === undefined || !isRight(before));
    return begins ? [i] : [];
  });
  const start = starts[0];
  if (starts.length !== 1 || start === undefined) return { kind: "tangled", crossings: 2 * starts.length };
  const turned = [...parts.slice(start), ...(contour.closed ? parts.slice(0, start) : [])];
  const end = turned.findIndex((part) => !isRight(part));
  const half = onAxisExactly(end < 0 ? turned : turned.slice(0, end));
  return { kind: "half", contour: { ...contour, strokes: contour.closed ? closedOnAxis(half) : half } };
}

/** Strokes that end beside the axis by rounding end on it. */
const onAxisExactly = (strokes: readonly Stroke[]): readonly Stroke[] =>
  strokes.map((stroke) => ({ ...stroke, from: settled(stroke.from), to: settled(stroke.to) }));

const settled = (point: Vec2): Vec2 => (Math.abs(point[1]) <= ON_CENTRE_LINE_MM ? [point[0], 0] : point);

function closedOnAxis(strokes: readonly Stroke[]): readonly Stroke[] {
  const [first, last] = [strokes[0], strokes.at(-1)];
  if (!first || !last) return strokes;
  const [from, to] = [last.to, first.from];
  return from[0] === to[0] && from[1] === to[1] ? strokes : [...strokes, { kind: "line", from, to }];
}

const middleY = (stroke: Stroke): number => pointOnStroke(stroke, 0.5)[1];
const isOnCentreLine = (stroke: Stroke): boolean =>
  [0, 0.5, 1].every((t) => Math.abs(pointOnStroke(stroke, t)[1]) <= ON_CENTRE_LINE_MM);
const deepest = (stroke: Stroke): number =>
  Math.max(0, ...[0, 0.25, 0.5, 0.75, 1].map((t) => -pointOnStroke(stroke, t)[1]));

/** A stroke cut wherever it passes y = 0. */
function cutAtCentreLine(stroke: Stroke): readonly Stroke[] {
  const inner = crossingsOf(stroke)
    .filter((t) => t > 1e-9 && t < 1 - 1e-9)
    .sort((a, b) => a - b);
  const stops = [0, ...inner, 1];
  return stops.slice(1).map((to, i) => between(stroke, stops[i] ?? 0, to));
}

function crossingsOf(stroke: Stroke): readonly number[] {
  switch (stroke.kind) {
    case "line": {
      const [a, b] = [stroke.from[1], stroke.to[1]];
      return a === b ? [] : [a / (a - b)];
    }
    case "cubic": {
      const [p0, p1, p2, p3] = [stroke.from[1], stroke.control1[1], stroke.control2[1], stroke.to[1]];
      return cubicRootsWithin([p0, 3 * (p1 - p0), 3 * (p0 - 2 * p1 + p2), p3 - 3 * p2 + 3 * p1 - p0], 0, 1);
    }
    case "arc": {
      // centre + u cos a + v sin a = 0, with u cos a + v sin a = r cos(a − b).
      const [u, v] = [stroke.u[1], stroke.v[1]];
      const r = Math.hypot(u, v);
      const share = -stroke.centre[1] / r;
      if (r === 0 || Math.abs(share) > 1) return [];
      const [b, off] = [Math.atan2(v, u), Math.acos(share)];
      return [b + off, b - off].flatMap((a) => {
        const turns = [-2, -1, 0, 1, 2].map((n) => (a + 2 * Math.PI * n - stroke.startRad) / stroke.sweepRad);
        return turns.filter((t) => t > 0 && t < 1);
      });
    }
  }
}

/** The part of a stroke between two of its parameters. */
function between(stroke: Stroke, start: number, end: number): Stroke {
  const [from, to] = [pointOnStroke(stroke, start), pointOnStroke(stroke, end)];
  switch (stroke.kind) {
    case "line":
      return { ...stroke, from, to };
    case "arc":
      return {
        ...stroke,
        from,
        to,
        startRad: stroke.startRad + start * stroke.sweepRad,
        sweepRad: (end - start) * stroke.sweepRad,
      };
    case "cubic": {
      const velocity = (t: number): Vec2 => {
        const s = 1 - t;
        const along = (axis: 0 | 1) =>
          3 * s * s * (stroke.control1[axis] - stroke.from[axis]) +
          6 * s * t * (stroke.control2[axis] - stroke.control1[axis]) +
          3 * t * t * (stroke.to[axis] - stroke.control2[axis]);
        return [along(0), along(1)];
      };
      const third = (end - start) / 3;
      const [leaves, arrives] = [velocity(start), velocity(end)];
      return {
        ...stroke,
        from,
        to,
        control1: [from[0] + third * leaves[0], from[1] + third * leaves[1]],
        control2: [to[0] - third * arrives[0], to[1] - third * arrives[1]],
      };
    }
  }
}
