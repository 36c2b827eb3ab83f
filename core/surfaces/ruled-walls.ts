import { type CurvePiece, derivativeOnPiece, pointOnPiece } from "../curves/index.ts";
import { crossSpace, lengthSpace, type PlanPoint, type SpacePoint, type Vec2 } from "../foundation/index.ts";
import { placeUnder, pointOnRuled, type RuledPlace, type RuledSurface, rulingAt } from "../rulings/index.ts";

/** How an opening's edge is cut, as its trace tells it. */
export type WallKind = "plan" | "plumb";

/** Finds the place of a wall on its sheet: the foot of the neutral fibre's edge, by plan point. */
export type WallFinder = (p: PlanPoint) => RuledPlace | undefined;

/**
 * Finds where a wall stands on a ruled sheet: a plumb one where the face at `depthMm` lies over the plan point, a square
 * one under the plan point on the drawn surface, whatever the depth.
 */
export const wallFinder = (surface: RuledSurface, kind: WallKind, depthMm: number): WallFinder =>
  placeUnder(surface, kind === "plumb" ? depthMm : 0, "endless");

/** Makes finders as they are asked for, one for each kind of wall. */
export function wallFinders(surface: RuledSurface, depthMm: number): (kind: WallKind) => WallFinder {
  const made = new Map<WallKind, WallFinder>();
  return (kind) => {
    const known = made.get(kind) ?? wallFinder(surface, kind, depthMm);
    made.set(kind, known);
    return known;
  };
}

/** The point in space of a wall's edge on the face at a depth, by the parameter of its plan curve. */
export function wallPoint(
  surface: RuledSurface,
  find: WallFinder,
  piece: CurvePiece,
  depthMm: number,
): (t: number) => SpacePoint {
  return (t) => {
    const [x, y] = pointOnPiece(piece, t);
    const place = find({ x, y });
    return place ? pointOnRuled(surface, place, depthMm) : { x, y, z: Number.NaN };
  };
}

/**
 * The bevel of a plumb wall off square to a ruled sheet, rad, at a place where its plan curve runs along (dx, dy) with
 * the sheet on its left, seen against the normal: positive leaves the air face longer.
 */
export function ruledBevelRad(surface: RuledSurface, { sMm }: RuledPlace, [dx, dy]: Vec2): number {
  const { normal } = rulingAt(surface, sMm);
  const along = { x: dx, y: dy, z: -(normal.x * dx + normal.y * dy) / normal.z };
  const inward = crossSpace(normal, along);
  return Math.atan(inward.z / (lengthSpace(inward) || 1) / normal.z);
}

/** The direction of a plan curve at a parameter, as it is walked from one parameter to another. */
export function walkedDirection(piece: CurvePiece, t: number, isForward: boolean): Vec2 {
  const [dx, dy] = derivativeOnPiece(piece, t);
  return isForward ? [dx, dy] : [-dx, -dy];
}
