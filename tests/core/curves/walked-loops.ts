import {
  type ArcPiece,
  type CubicPiece,
  type CurvePiece,
  compilePath,
  type Island,
  pointOnPiece,
  type WalkedPiece,
} from "../../../core/curves/index.ts";
import type { Vec2 } from "../../../core/foundation/index.ts";
import { curveNode, type node } from "./drawn-paths.ts";

/** A walked piece with the label that must come through every cut. */
export interface LabelledPiece extends WalkedPiece {
  readonly label: string;
}

export type Loop = readonly LabelledPiece[];

/** The pieces of a curve as a loop; its pieces are labelled `name.0`, `name.1`, …, by edge. */
export const loopOf = (name: string, pieces: readonly CurvePiece[]): Loop =>
  pieces.map((piece) => ({ piece, reversed: false, label: `${name}.${piece.edgeId}` }));

export function pathLoop(name: string, elements: readonly ReturnType<typeof node>[]): Loop | undefined {
  const compiled = compilePath({ closed: true, elements });
  return compiled.ok ? loopOf(name, compiled.value.pieces) : undefined;
}

export const polygonLoop = (name: string, corners: readonly Vec2[]): Loop =>
  loopOf(
    name,
    corners.map((from, i) => ({
      kind: "line",
      edgeId: `${i}`,
      startNodeId: `${name}${i}`,
      endNodeId: `${name}${(i + 1) % corners.length}`,
      from,
      to: corners[(i + 1) % corners.length] ?? from,
    })),
  );

export const rectangle = (name: string, [x0, y0]: Vec2, [x1, y1]: Vec2): Loop =>
  polygonLoop(name, [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ]);

/** A circle of so many arcs, counter-clockwise. */
export const circle = (name: string, centre: Vec2, radiusMm: number, arcs = 2, startRad = 0): Loop =>
  loopOf(
    name,
    Array.from({ length: arcs }, (_, i): ArcPiece => {
      const sweepRad = (2 * Math.PI) / arcs;
      return {
        kind: "arc",
        edgeId: `${i}`,
        centre,
        radiusMm,
        startRad: startRad + i * sweepRad,
        sweepRad,
      };
    }),
  );

export const splineLoop = (name: string, points: readonly Vec2[]): Loop | undefined =>
  pathLoop(
    name,
    points.map((point, i) => curveNode(`${i}`, point)),
  );

export const reversedLoop = (loop: Loop): Loop =>
  loop.toReversed().map((walked) => ({ ...walked, reversed: !walked.reversed }));

/** A move of the plane: turned, mirrored or not, and shifted. */
export interface Motion {
  readonly angleRad: number;
  readonly isMirrored: boolean;
  readonly shift: Vec2;
}

export const movePoint = ({ angleRad, isMirrored, shift }: Motion, [x, y]: Vec2): Vec2 => {
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  const w = isMirrored ? -y : y;
  return [c * x - s * w + shift[0], s * x + c * w + shift[1]];
};

export const moveLoop = (motion: Motion, loop: Loop): Loop =>
  loop.map((walked) => ({ ...walked, piece: movePiece(motion, walked.piece) }));

function movePiece(motion: Motion, piece: CurvePiece): CurvePiece {
  switch (piece.kind) {
    case "line":
      return { ...piece, from: movePoint(motion, piece.from), to: movePoint(motion, piece.to) };
    case "arc": {
      const sign = motion.isMirrored ? -1 : 1;
      return {
        ...piece,
        centre: movePoint(motion, piece.centre),
        startRad: motion.angleRad + sign * piece.startRad,
        sweepRad: sign * piece.sweepRad,
      };
    }
    case "cubic": {
      const columns = piece.first.map((x, i) =>
        movePoint(i === 0 ? motion : { ...motion, shift: [0, 0] }, [x, piece.second[i] ?? 0]),
      );
      const axis = (k: 0 | 1): CubicPiece["first"] => {
        const [a, b, c, d] = columns.map((point) => point[k]);
        return [a ?? 0, b ?? 0, c ?? 0, d ?? 0];
      };
      return { ...piece, first: axis(0), second: axis(1) };
    }
  }
}

/** A loop as a fine polygon, by even parameters: it knows nothing of the cuts. */
export const finePolygon = (loop: Loop): readonly Vec2[] =>
  loop.flatMap(({ piece, reversed }) => {
    const bent = piece.kind === "arc" ? Math.ceil(Math.abs(piece.sweepRad) * 30) : 60;
    const count = piece.kind === "line" ? 1 : bent;
    return Array.from({ length: count }, (_, i) => pointOnPiece(piece, reversed ? 1 - i / count : i / count));
  });

export function polygonHolds(polygon: readonly Vec2[], [px, py]: Vec2): boolean {
  let inside = false;
  polygon.forEach(([x, y], i) => {
    const [xb, yb] = polygon.at(i - 1) ?? [x, y];
    if (y > py !== yb > py && px < x + ((py - y) / (yb - y)) * (xb - x)) inside = !inside;
  });
  return inside;
}

export function distanceToPolygon(polygon: readonly Vec2[], [px, py]: Vec2): number {
  let least = Number.POSITIVE_INFINITY;
  polygon.forEach(([x, y], i) => {
    const [xb, yb] = polygon.at(i - 1) ?? [x, y];
    const [dx, dy] = [xb - x, yb - y];
    const size = dx * dx + dy * dy;
    const t = size === 0 ? 0 : Math.min(1, Math.max(0, ((px - x) * dx + (py - y) * dy) / size));
    least = Math.min(least, Math.hypot(px - x - t * dx, py - y - t * dy));
  });
  return least;
}

export const loopsOf = (islands: readonly Island<LabelledPiece>[]): readonly Loop[] =>
  islands.flatMap(({ outline, holes }) => [outline, ...holes]);
