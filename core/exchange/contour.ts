import { distance2, type Vec2 } from "../foundation/index.ts";
import { type Affine, moved, turned } from "./affine.ts";

/** A piece of a line from elsewhere; where it begins is the end of the piece before. */
export type Stroke = LineStroke | CubicStroke | ArcStroke;

export interface LineStroke {
  readonly kind: "line";
  readonly from: Vec2;
  readonly to: Vec2;
}

/** A cubic Bézier curve with its two control points. */
export interface CubicStroke {
  readonly kind: "cubic";
  readonly from: Vec2;
  readonly control1: Vec2;
  readonly control2: Vec2;
  readonly to: Vec2;
}

/** An elliptical arc: centre + u cos a + v sin a, a from startRad by sweepRad; exact under every affine change. */
export interface ArcStroke {
  readonly kind: "arc";
  readonly from: Vec2;
  readonly to: Vec2;
  readonly centre: Vec2;
  readonly u: Vec2;
  readonly v: Vec2;
  readonly startRad: number;
  readonly sweepRad: number;
}

/** One line of a drawing or a table from elsewhere. Coordinates in mm once it is read, the second axis upward. */
export interface Contour {
  /** What it is called there: its element with its id, or the table. */
  readonly name: string;
  /** Where it begins in the file, counting lines from 1. */
  readonly line: number;
  readonly closed: boolean;
  /** Its pieces are chords between measured points rather than edges that were drawn. */
  readonly isSampled?: true;
  readonly strokes: readonly Stroke[];
}

/** The point of a stroke at t from 0 to 1; the ends exactly. */
export function pointOnStroke(stroke: Stroke, t: number): Vec2 {
  if (t <= 0) return stroke.from;
  if (t >= 1) return stroke.to;
  switch (stroke.kind) {
    case "line":
      return mix([stroke.from, stroke.to], [1 - t, t]);
    case "cubic": {
      const s = 1 - t;
      const weights = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
      return mix([stroke.from, stroke.control1, stroke.control2, stroke.to], weights);
    }
    case "arc": {
      const a = stroke.startRad + t * stroke.sweepRad;
      return mix([stroke.centre, stroke.u, stroke.v], [1, Math.cos(a), Math.sin(a)]);
    }
  }
}

/** Direction of travel at an end of a stroke, rad; control points that lie on the end give way to the next. */
export function directionAt(stroke: Stroke, end: "start" | "end"): number {
  const [x, y] = leaving(end === "start" ? stroke : reversedStroke(stroke));
  return end === "start" ? Math.atan2(y, x) : Math.atan2(-y, -x);
}

function leaving(stroke: Stroke): Vec2 {
  if (stroke.kind === "arc") {
    const sign = Math.sign(stroke.sweepRad);
    const weights = [-sign * Math.sin(stroke.startRad), sign * Math.cos(stroke.startRad)];
    return mix([stroke.u, stroke.v], weights);
  }
  const ahead = stroke.kind === "line" ? [stroke.to] : [stroke.control1, stroke.control2, stroke.to];
  const scaleMm = distance2(stroke.from, stroke.to);
  const first = ahead.find((point) => distance2(stroke.from, point) > 1e-9 * scaleMm) ?? stroke.to;
  return mix([first, stroke.from], [1, -1]);
}

/** The same stroke travelled the other way. */
export function reversedStroke(stroke: Stroke): Stroke {
  const ends = { from: stroke.to, to: stroke.from };
  switch (stroke.kind) {
    case "line":
      return { ...stroke, ...ends };
    case "cubic":
      return { ...stroke, ...ends, control1: stroke.control2, control2: stroke.control1 };
    case "arc":
      return {
        ...stroke,
        ...ends,
        startRad: stroke.startRad + stroke.sweepRad,
        sweepRad: -stroke.sweepRad,
      };
  }
}

/** A contour under an affine change. */
export const changedContour = (contour: Contour, change: Affine): Contour => ({
  ...contour,
  strokes: contour.strokes.map((stroke) => changedStroke(stroke, change)),
});

function changedStroke(stroke: Stroke, change: Affine): Stroke {
  const ends = { from: moved(change, stroke.from), to: moved(change, stroke.to) };
  switch (stroke.kind) {
    case "line":
      return { ...stroke, ...ends };
    case "cubic":
      return {
        ...stroke,
        ...ends,
        control1: moved(change, stroke.control1),
        control2: moved(change, stroke.control2),
      };
    case "arc":
      return {
        ...stroke,
        ...ends,
        centre: moved(change, stroke.centre),
        u: turned(change, stroke.u),
        v: turned(change, stroke.v),
      };
  }
}

/** The same contour travelled the other way. */
export const reversedContour = (contour: Contour): Contour => ({
  ...contour,
  strokes: contour.strokes.map(reversedStroke).reverse(),
});

/** A weighted sum of points. */
function mix(points: readonly Vec2[], weights: readonly number[]): Vec2 {
  let x = 0;
  let y = 0;
  points.forEach((point, i) => {
    x += (weights[i] ?? 0) * point[0];
    y += (weights[i] ?? 0) * point[1];
  });
  return [x, y];
}
