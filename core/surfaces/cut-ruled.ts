import {
  type CurvePiece,
  enclosedAreaMm2,
  endOfPiece,
  nearestOnPiece,
  pieceLengthMm,
  pointOnPiece,
  startOfPiece,
  subtractLoops,
} from "../curves/index.ts";
import { at, distance2, type Vec2 } from "../foundation/index.ts";
import { pointOnRuled, type RuledSurface } from "../rulings/index.ts";
import type { DrawnPiece } from "./drawn-loops.ts";
import { type BorderRun, fitInPlan, runInPlan } from "./ruled-border.ts";
import { type WallKind, wallFinder } from "./ruled-walls.ts";

/** A stretch of an opening's edge that borders what is left, by the parameter of its plan curve. */
export interface WallRun {
  readonly drawn: DrawnPiece;
  readonly kind: WallKind;
  readonly from: number;
  readonly to: number;
}

/** A stretch of a cut strip's border: of its own border, `index` in it, or of an opening's edge. */
export type CutRun =
  | { readonly border: BorderRun; readonly index: number; readonly wall?: never }
  | { readonly wall: WallRun; readonly border?: never };

/** A piece in plan with what it is a stretch of; what is neither only closes a gap outside of the sheet. */
export interface CutPiece {
  readonly piece: CurvePiece;
  readonly reversed: boolean;
  readonly border?: BorderRun;
  readonly index?: number;
  readonly opening?: OpeningPiece;
}

interface OpeningPiece {
  readonly drawn: DrawnPiece;
  readonly kind: WallKind;
  /** The parameter of the drawn piece at a point of this one. */
  readonly parameterAt: (point: Vec2) => number;
}

/** One connected piece of a cut strip: its outline and the holes in it, in plan and as runs. */
export interface CutIsland {
  readonly loops: readonly (readonly CutPiece[])[];
  readonly runs: readonly (readonly CutRun[])[];
  readonly areaMm2: number;
  readonly meanWidthMm: number;
}

/**
 * What openings leave of a strip, cut in plan on the face at a depth. Loops have the sheet on their left, seen against
 * its normal.
 */
export function cutRuled(
  surface: RuledSurface,
  border: readonly BorderRun[],
  openings: readonly (readonly DrawnPiece[])[],
  { depthMm, isUp }: { readonly depthMm: number; readonly isUp: boolean },
): readonly CutIsland[] {
  const region = border.flatMap((run, index) =>
    runInPlan(surface, run, depthMm).map(
      (piece): CutPiece => ({ piece, reversed: false, border: run, index }),
    ),
  );
  const taken = openings.map((loop) =>
    closed(loop.flatMap((drawn) => openingPieces(surface, drawn, depthMm))),
  );
  return subtractLoops([region], taken).map(({ outline, holes }) => {
    const loops = [outline, ...holes].map((loop) => (isUp ? loop : walkedBack(loop)));
    const lengthMm = outline.reduce((sum, { piece }) => sum + pieceLengthMm(piece), 0);
    const outlineMm2 = Math.abs(enclosedAreaMm2(outline));
    const holesMm2 = holes.reduce((sum, hole) => sum + Math.abs(enclosedAreaMm2(hole)), 0);
    return {
      loops,
      runs: loops.map((loop) => runsOf(loop, border)),
      areaMm2: outlineMm2 - holesMm2,
      meanWidthMm: (2 * outlineMm2) / (lengthMm || 1),
    };
  });
}

const walkedBack = (loop: readonly CutPiece[]): readonly CutPiece[] =>
  loop.toReversed().map((one) => ({ ...one, reversed: !one.reversed }));

function openingPieces(surface: RuledSurface, drawn: DrawnPiece, depthMm: number): readonly CutPiece[] {
  const { piece, reversed, wall } = drawn;
  const kind: WallKind = wall === "upright" ? "plumb" : "plan";
  if (kind === "plumb" || depthMm === 0) {
    const parameterAt = (point: Vec2) => nearestOnPiece(piece, point).t;
    return [{ piece, reversed, opening: { drawn, kind, parameterAt } }];
  }
  const find = wallFinder(surface, kind, depthMm);
  const fitted = fitInPlan((t): Vec2 => {
    const [x, y] = pointOnPiece(piece, t);
    const place = find({ x, y });
    if (!place) return [x, y];
    const over = pointOnRuled(surface, place, depthMm);
    return [over.x, over.y];
  }, piece.edgeId).map(({ piece: feet, from, to }): CutPiece => {
    const parameterAt = (point: Vec2) => from + (to - from) * nearestOnPiece(feet, point).t;
    return { piece: feet, reversed, opening: { drawn, kind, parameterAt } };
  });
  return reversed ? fitted.toReversed() : fitted;
}

/** Pieces of one loop need no gap between them to be closed by a line. */
const CLOSED_MM = 1e-7;

function closed(loop: readonly CutPiece[]): readonly CutPiece[] {
  return loop.flatMap((one, i) => {
    const [from, to] = [walkEnd(one), walkStart(at(loop, (i + 1) % loop.length))];
    if (distance2(from, to) <= CLOSED_MM) return [one];
    return [one, { piece: { kind: "line", edgeId: "gap", from, to }, reversed: false }];
  });
}

const walkStart = ({ piece, reversed }: CutPiece): Vec2 =>
  reversed ? endOfPiece(piece) : startOfPiece(piece);
const walkEnd = ({ piece, reversed }: CutPiece): Vec2 => (reversed ? startOfPiece(piece) : endOfPiece(piece));

/** Parameters nearer than this are one. */
const SAME_PARAMETER = 1e-9;

/** The runs of a loop, beginning where one begins; sides of the strip that are a point in plan come between again. */
function runsOf(loop: readonly CutPiece[], border: readonly BorderRun[]): readonly CutRun[] {
  const told = loop.flatMap((piece): CutRun[] => {
    if (piece.border && piece.index !== undefined) return [{ border: piece.border, index: piece.index }];
    if (!piece.opening) return [];
    const { drawn, kind, parameterAt } = piece.opening;
    return [{ wall: { drawn, kind, from: parameterAt(walkStart(piece)), to: parameterAt(walkEnd(piece)) } }];
  });
  const begin = Math.max(
    0,
    told.findIndex((run, i) => !joined(at(told, i - 1), run)),
  );
  const merged: CutRun[] = [];
  for (const run of [...told.slice(begin), ...told.slice(0, begin)]) {
    const last = merged.at(-1);
    const one = last && joined(last, run);
    if (one) merged[merged.length - 1] = one;
    else merged.push(run);
  }
  return merged.flatMap((run, i) => {
    const next = at(merged, (i + 1) % merged.length);
    if (!run.border || !next.border || run === next) return [run];
    const between = (next.index - run.index + border.length) % border.length;
    return Array.from({ length: between }, (_, k): CutRun => {
      const index = (run.index + k) % border.length;
      return k === 0 ? run : { border: at(border, index), index };
    });
  });
}

/** Two runs in a row as one, where the second goes on with the first. */
function joined(a: CutRun, b: CutRun): CutRun | undefined {
  if (a.border) return a.border === b.border ? a : undefined;
  if (!b.wall || a.wall.drawn !== b.wall.drawn || a === b) return undefined;
  const isOneWay = a.wall.to > a.wall.from === b.wall.to > b.wall.from;
  if (!isOneWay || Math.abs(a.wall.to - b.wall.from) > SAME_PARAMETER) return undefined;
  return { wall: { ...a.wall, to: b.wall.to } };
}
