import {
  type CubicPiece,
  type CurvePiece,
  derivativeOnPiece,
  enclosedAreaMm2,
  endOfPiece,
  nearestOnPiece,
  pieceLengthMm,
  pointOnPiece,
  startOfPiece,
  subtractLoops,
  trimPiece,
} from "../curves/index.ts";
import { distance2, type Vec2 } from "../foundation/index.ts";
import type { DrawnPiece } from "./drawn-loops.ts";
import { type Foot, footFinder, footVelocity } from "./plumb-walls.ts";
import type { CylinderChart } from "./types.ts";

type Loops = readonly (readonly DrawnPiece[])[];

/**
 * What upright openings leave of a section at a depth, cut there instead of on the air side: the feet of their walls,
 * fitted by cubics to a thousandth of a millimetre, are taken out of the square loops. The loops are told on the plan
 * curves again, so that corners are still to be met exactly. Needed where a wall passes so near a corner that the air
 * side and the middle of the foam do not have the same corners. Islands no wider than the walls lean are the feather
 * edge of a wall and left out.
 */
export function cutAtFeet(
  chart: CylinderChart,
  squareLoops: Loops,
  uprightLoops: Loops,
  depthMm: number,
): Loops {
  const feet = uprightLoops.map((loop) => loop.flatMap((drawn) => feetOf(chart, drawn, depthMm)));
  const leanMm = Math.max(0, ...feet.flat().map(({ over }) => over?.leanMm ?? 0));
  const square = squareLoops.map((loop) => loop.map((drawn): FootPiece => drawn));
  return subtractLoops(square, feet)
    .filter(({ outline }) => meanWidthMm(outline) > 2 * leanMm)
    .flatMap(({ outline, holes }) => [outline, ...holes])
    .map(onPlanCurves);
}

/** A piece in plan, or a stretch of the feet of an upright one. */
interface FootPiece extends DrawnPiece {
  readonly over?: {
    /** The upright piece, and the stretch of its parameter that this one has its feet under. */
    readonly drawn: DrawnPiece;
    readonly from: number;
    readonly to: number;
    /** The whole of this stretch's feet. */
    readonly feet: CurvePiece;
    readonly leanMm: number;
  };
}

function meanWidthMm(loop: readonly FootPiece[]): number {
  const lengthMm = loop.reduce((sum, { piece }) => sum + pieceLengthMm(piece), 0);
  return (2 * Math.abs(enclosedAreaMm2(loop))) / (lengthMm || 1);
}

/** Feet are fitted to this, mm; corners are met exactly afterwards. */
const FITTED_MM = 1e-3;
const MOST_HALVINGS = 8;

/** The feet of an upright piece as cubics that share its parameter. */
function feetOf(chart: CylinderChart, drawn: DrawnPiece, depthMm: number): readonly FootPiece[] {
  const { piece } = drawn;
  const footAt = footFinder(chart, depthMm);
  const placeAt = (t: number): { readonly foot: Foot; readonly at: Vec2 } => {
    const [x, y] = pointOnPiece(piece, t);
    const foot = footAt({ x, y });
    return { foot, at: [foot.xi + (foot.y - chart.pivotYMm) * chart.tanHeading, foot.y] };
  };
  const fitted = (from: number, to: number): CubicPiece => {
    const [a, b] = [placeAt(from), placeAt(to)];
    const velocity = ({ foot }: typeof a, t: number): Vec2 => {
      const { dXi, dY } = footVelocity(chart, foot.place, derivativeOnPiece(piece, t), depthMm);
      return [(dXi + dY * chart.tanHeading) * (to - from), dY * (to - from)];
    };
    const [va, vb] = [velocity(a, from), velocity(b, to)];
    const axis = (k: 0 | 1): CubicPiece["first"] => [
      a.at[k],
      va[k],
      3 * (b.at[k] - a.at[k]) - 2 * va[k] - vb[k],
      2 * (a.at[k] - b.at[k]) + va[k] + vb[k],
    ];
    return { kind: "cubic", edgeId: piece.edgeId, first: axis(0), second: axis(1) };
  };
  const pieces: FootPiece[] = [];
  const halve = (from: number, to: number, halvings: number): void => {
    const feet = fitted(from, to);
    const missMm = Math.max(
      ...[0.25, 0.5, 0.75].map((share) =>
        distance2(pointOnPiece(feet, share), placeAt(from + (to - from) * share).at),
      ),
    );
    if (missMm > FITTED_MM && halvings > 0) {
      halve(from, (from + to) / 2, halvings - 1);
      halve((from + to) / 2, to, halvings - 1);
      return;
    }
    const leanMm = distance2(startOfPiece(feet), pointOnPiece(piece, from));
    pieces.push({ ...drawn, piece: feet, over: { drawn, from, to, feet, leanMm } });
  };
  halve(0, 1, MOST_HALVINGS);
  return drawn.reversed ? pieces.toReversed() : pieces;
}

/** A loop with the feet of upright pieces told as stretches of their plan curves, those in a row as one. */
function onPlanCurves(loop: readonly FootPiece[]): readonly DrawnPiece[] {
  const told: { readonly drawn: DrawnPiece; readonly reversed: boolean; from: number; to: number }[] = [];
  for (const { over, ...own } of loop) {
    if (!over) {
      told.push({ drawn: own, reversed: own.reversed, from: 0, to: 1 });
      continue;
    }
    const [a, b] = [startOfPiece(own.piece), endOfPiece(own.piece)].map(
      (point) => over.from + (over.to - over.from) * nearestOnPiece(over.feet, point).t,
    );
    const [from, to] = [a ?? over.from, b ?? over.to];
    const last = told.at(-1);
    const follows =
      last?.drawn === over.drawn &&
      last.reversed === own.reversed &&
      Math.abs((own.reversed ? last.from : last.to) - (own.reversed ? to : from)) < SAME_PARAMETER;
    if (last && follows) {
      last.from = Math.min(last.from, from);
      last.to = Math.max(last.to, to);
    } else told.push({ drawn: over.drawn, reversed: own.reversed, from, to });
  }
  return told.map(({ drawn, reversed, from, to }) => ({
    ...drawn,
    reversed,
    piece: from === 0 && to === 1 ? drawn.piece : trimPiece(drawn.piece, from, to),
  }));
}

const SAME_PARAMETER = 1e-9;
