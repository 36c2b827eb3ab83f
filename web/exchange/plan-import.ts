import { compilePath, flattenPiece, pointOnPiece } from "../../core/curves/index.ts";
import {
  type Affine,
  type Contour,
  changedContour,
  type FittedLine,
  fitContour,
  readDrawing,
  reversedContour,
  rightHalf,
  wordComplaint,
} from "../../core/exchange/index.ts";
import { MOST_NODES, type Vec2 } from "../../core/foundation/index.ts";

/** What an imported line is to be. */
export type ImportKind = "section" | "profile" | "fence" | "opening";

export interface ImportSettings {
  readonly kind: ImportKind;
  /** What one unit of the file is; undefined lets an SVG say it. */
  readonly unitMm: number | undefined;
  readonly shiftMm: Vec2;
  readonly isFlipped: boolean;
  readonly toleranceMm: number;
  readonly curvesBecome: "curves" | "lines";
  /** Which of the file's lines; the largest if absent. */
  readonly index: number | undefined;
  /** Only the right half is drawn in this tray. */
  readonly isMirrored: boolean;
}

/** An import before it is accepted. */
export interface ImportPlan {
  readonly lines: readonly string[];
  readonly index: number;
  readonly fitted: FittedLine | undefined;
  /** The line as it will be drawn, as points. */
  readonly picture: readonly Vec2[];
  readonly sizeMm: Vec2;
  /** What is wrong, and what is done about it, in plain words. */
  readonly remarks: readonly string[];
}

/** What a text would give with these settings; nothing is imported by it. */
export function planImport(text: string, settings: ImportSettings): ImportPlan {
  const { contours, complaints } = readDrawing(text, settings.unitMm);
  const remarks = complaints.map(wordComplaint);
  const index = contours[settings.index ?? -1] ? (settings.index ?? 0) : largest(contours);
  const chosen = contours[index];
  const lines = contours.map(({ name, line, closed }) => `${name}, line ${line}${closed ? "" : ", open"}`);
  const none = { lines, index, fitted: undefined, picture: [], sizeMm: [0, 0] as const };
  if (!chosen) return { ...none, remarks };
  const [dx, dy] = settings.shiftMm;
  const placement: Affine = [1, 0, 0, settings.isFlipped ? -1 : 1, dx, dy];
  const shaped = shapedFor(changedContour(chosen, placement), settings);
  if (!shaped.contour) return { ...none, remarks: [...remarks, ...shaped.remarks] };
  const fitted = fitContour(shaped.contour, settings);
  const own = fitRemarks(fitted, settings);
  const picture = pictureOf(fitted);
  return {
    lines,
    index,
    fitted: own.length > 0 ? undefined : fitted,
    picture,
    sizeMm: sizeOf(picture),
    remarks: [...remarks, ...shaped.remarks, ...own],
  };
}

interface Shaped {
  readonly contour?: Contour;
  readonly remarks: readonly string[];
}

/** The contour as its kind needs it: an outline closed, a profile rearward, on the right half where only that is drawn. */
function shapedFor(contour: Contour, { kind, isMirrored }: ImportSettings): Shaped {
  const [first, last] = [contour.strokes[0], contour.strokes.at(-1)];
  if (!first || !last) return { remarks: [] };
  if (kind === "profile") {
    if (contour.closed) return { remarks: ["A profile is an open line; this one is closed."] };
    return { contour: last.to[0] < first.from[0] ? reversedContour(contour) : contour, remarks: [] };
  }
  const isOutline = kind !== "fence";
  if (!isOutline && contour.closed)
    return { remarks: ["A fence stands on an open line; this one is closed."] };
  const opens = isOutline && !contour.closed;
  const whole: Contour = opens
    ? {
        ...contour,
        closed: true,
        strokes: [...contour.strokes, { kind: "line", from: last.to, to: first.from }],
      }
    : contour;
  const closing = opens ? ["The line is open; a straight edge closes it."] : [];
  if (!isMirrored) return { contour: whole, remarks: closing };
  const half = rightHalf(whole);
  switch (half.kind) {
    case "right":
      return { contour: whole, remarks: closing };
    case "half":
      return {
        contour: half.contour,
        remarks: [...closing, "It crosses the centre line; its right half is taken."],
      };
    case "left":
      return { remarks: ["All of it lies left of the centre line. Flip it or move it to the right."] };
    case "tangled":
      return { remarks: [`It crosses the centre line ${half.crossings} times; draw its right half alone.`] };
  }
}

function fitRemarks({ nodes }: FittedLine, { kind }: ImportSettings): readonly string[] {
  if (nodes.length > MOST_NODES) {
    return [`It needs ${nodes.length} nodes; a line has at most ${MOST_NODES}. Allow a larger miss.`];
  }
  if ((kind === "section" || kind === "opening") && nodes.length < 3)
    return ["An outline needs three nodes."];
  const back =
    kind === "profile"
      ? nodes.find((node, i) => node.at[0] <= (nodes[i - 1]?.at[0] ?? Number.NEGATIVE_INFINITY))
      : undefined;
  return back ? [`A profile only runs rearward; this line turns back at x ${back.at[0].toFixed(1)}.`] : [];
}

function largest(contours: readonly Contour[]): number {
  const sizes = contours.map(({ strokes }) => {
    const [wide, high] = sizeOf(strokes.map(({ to }) => to));
    return wide + high;
  });
  return Math.max(0, sizes.indexOf(Math.max(...sizes)));
}

function pictureOf({ nodes, closed }: FittedLine): readonly Vec2[] {
  const path = compilePath({
    closed,
    elements: nodes.map((node, i) => ({ kind: "node", id: `n${i}`, ...node })),
  });
  if (!path.ok) return nodes.map(({ at }) => at);
  return path.value.pieces.flatMap((piece) =>
    flattenPiece(piece, { chordErrorMm: 0.5, turnRad: 0.2 }).map((t) => pointOnPiece(piece, t)),
  );
}

function sizeOf(points: readonly Vec2[]): Vec2 {
  const span = (axis: 0 | 1): number => {
    let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const point of points) {
      least = Math.min(least, point[axis]);
      most = Math.max(most, point[axis]);
    }
    return most > least ? most - least : 0;
  };
  return [span(0), span(1)];
}
