import { expect } from "vitest";
import {
  type Curve,
  type CurvePiece,
  compilePath,
  endOfPiece,
  type Path,
  type PathNode,
  pieceLengthMm,
  pointOnPiece,
  startOfPiece,
} from "../../../core/curves/index.ts";
import type { Vec2 } from "../../../core/foundation/index.ts";

/** Rounding over coordinates of a metre: 1e-16 × 1000 × some operations. */
export const ROUNDING_MM = 1e-9;
/** What a shape may move when a command promises not to move it. */
export const UNMOVED_MM = 1e-6;
export const SEED = 20_261;

/** A node of a drawn line; a line leaves it unless said otherwise. */
export const node = (
  id: string,
  at: Vec2,
  settings: Partial<Omit<PathNode, "kind" | "id" | "at">> = {},
): PathNode => ({ kind: "node", id, at, next: "line", ...settings });

export const curveNode = (
  id: string,
  at: Vec2,
  settings: Partial<Omit<PathNode, "kind" | "id" | "at">> = {},
): PathNode => node(id, at, { next: "curve", ...settings });

export const openPath = (...elements: Path["elements"]): Path => ({ closed: false, elements });
export const closedPath = (...elements: Path["elements"]): Path => ({ closed: true, elements });

/** The curve of a path that must compile. */
export function curveOf(path: Path): Curve {
  const compiled = compilePath(path);
  if (!compiled.ok) throw new Error(JSON.stringify(compiled.problems));
  return compiled.value;
}

export function problemsOf(path: Path) {
  const compiled = compilePath(path);
  return compiled.ok ? [] : compiled.problems;
}

export const pieceAt = (curve: Curve, index: number): CurvePiece => {
  const piece = curve.pieces.at(index);
  if (!piece) throw new Error(`no piece ${index}`);
  return piece;
};

export function expectPoint(point: Vec2, expected: Vec2, withinMm = ROUNDING_MM): void {
  expect(Math.hypot(point[0] - expected[0], point[1] - expected[1])).toBeLessThan(withinMm);
}

/** Pieces run end to end, and a closed curve ends where it starts. */
export function expectEndToEnd(curve: Curve): void {
  curve.pieces.forEach((piece, i) => {
    const next = curve.pieces[i + 1] ?? (curve.closed ? curve.pieces[0] : undefined);
    if (next) expectPoint(endOfPiece(piece), startOfPiece(next));
  });
}

/** The distance of a point from a curve, by very many samples refined around the best; independent of lookups. */
export function distanceToCurve(curve: Curve, point: Vec2): number {
  let best = Number.POSITIVE_INFINITY;
  for (const piece of curve.pieces) {
    const miss = (t: number) => {
      const p = pointOnPiece(piece, Math.min(1, Math.max(0, t)));
      return Math.hypot(p[0] - point[0], p[1] - point[1]);
    };
    let nearest = 0;
    for (let i = 0; i <= 60; i++) if (miss(i / 60) < miss(nearest)) nearest = i / 60;
    for (let step = 1 / 60; step > 1e-13; step /= 2) {
      if (miss(nearest - step) < miss(nearest)) nearest -= step;
      else if (miss(nearest + step) < miss(nearest)) nearest += step;
    }
    best = Math.min(best, miss(nearest));
  }
  return best;
}

export const totalLength = (pieces: readonly CurvePiece[]): number =>
  pieces.reduce((sum, piece) => sum + pieceLengthMm(piece), 0);

export const nodesOfPath = (path: Path): PathNode[] =>
  path.elements.flatMap((element) => (element.kind === "node" ? [element] : []));

/** A path turned about the origin and moved; typed tangents turn with it. */
export function turnedPath(path: Path, angleRad: number, by: Vec2 = [0, 0]): Path {
  const cos = Math.cos(angleRad);
  const sin = Math.sin(angleRad);
  const elements = path.elements.map((element) => {
    if (element.kind === "stretch") throw new Error("a stretch cannot be turned here");
    const [a, b] = element.at;
    return {
      ...element,
      at: [a * cos - b * sin + by[0], a * sin + b * cos + by[1]] as const,
      ...(element.tangentInRad === undefined ? {} : { tangentInRad: element.tangentInRad + angleRad }),
      ...(element.tangentOutRad === undefined ? {} : { tangentOutRad: element.tangentOutRad + angleRad }),
    };
  });
  return { ...path, elements };
}
