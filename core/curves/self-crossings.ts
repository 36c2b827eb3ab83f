import { orient2d } from "robust-predicates";
import {
  add2,
  at,
  COINCIDENT_POINTS_MM,
  cross2,
  dot2,
  length2,
  scale2,
  subtract2,
  type Vec2,
} from "../foundation/index.ts";
import { type ChordLine, visitNearChords } from "./chord-tree.ts";
import { type FlattenLimits, flattenPiece } from "./flatten.ts";
import { pointOnPiece, secondDerivativeOnPiece } from "./pieces.ts";
import type { Curve } from "./types.ts";

/** A place where a curve meets itself: the two drawn edges (in the curve's order), their pieces, and the point. */
export interface SelfCrossing {
  readonly edgeIds: readonly [string, string];
  readonly pieceIndices: readonly [number, number];
  readonly at: Vec2;
}

/**
 * Where a curve crosses or touches itself, or runs back over itself; one place for each pair of drawn edges, in
 * the curve's order, MOST_CROSSINGS at most. Pieces that are not neighbours touch within COINCIDENT_POINTS_MM;
 * neighbours share their common end and may not meet elsewhere. Orientation is decided exactly (Shewchuk 1997,
 * Adaptive precision floating-point arithmetic, through `robust-predicates`).
 */
export function findSelfCrossings(curve: Curve): SelfCrossing[] {
  if (curve.pieces.length === 0) return [];
  const line = chordLineOf(curve);
  const found: Contact[] = [];
  visitNearChords(line, COINCIDENT_POINTS_MM, (i, j) => {
    const contact = contactOf(curve, line, i, j);
    if (contact && isNews(contact, found)) found.push(contact);
    return found.length < MOST_CROSSINGS;
  });
  found.sort((a, b) => a.order - b.order);
  return found.map(({ order: _order, ...crossing }) => crossing);
}

/** A scribble has millions; the builder needs to see the first few. */
const MOST_CROSSINGS = 50;

/** Fine enough that a touch within COINCIDENT_POINTS_MM is seen between two curves. */
const CHORD_LIMITS: FlattenLimits = { chordErrorMm: COINCIDENT_POINTS_MM / 4, turnRad: 0.1 };

/** A line that would need more chords is no sketch of a tray; it is looked at more coarsely, so that none hangs. */
const MOST_CHORDS = 200_000;

/** Contacts nearer than this along the curve are one place of it, such as the two sides of a narrow tip. */
const SEPARATE_PLACES_MM = 10 * COINCIDENT_POINTS_MM;

/** Two successive chords that turn back within this angle lie on each other. */
const TURNED_BACK_RAD = 1e-3;

interface Contact extends SelfCrossing {
  /** Index of the earlier chord. */
  readonly order: number;
}

/** The chord limits, with the error widened until the line is answered in time: chords grow with its root. */
function chordLimitsFor(curve: Curve): FlattenLimits {
  const { chordErrorMm, turnRad } = CHORD_LIMITS;
  const bendsMm = curve.pieces.flatMap((piece) => [
    length2(secondDerivativeOnPiece(piece, 0)),
    length2(secondDerivativeOnPiece(piece, 1)),
  ]);
  const chords = bendsMm.reduce((sum, bendMm) => sum + Math.sqrt(bendMm / (8 * chordErrorMm)), 0);
  return { chordErrorMm: chordErrorMm * Math.max(1, chords / MOST_CHORDS) ** 2, turnRad };
}

function chordLineOf(curve: Curve): ChordLine {
  const limits = chordLimitsFor(curve);
  const points: Vec2[] = [];
  const pieceIndices: number[] = [];
  curve.pieces.forEach((piece, pieceIndex) => {
    for (const t of flattenPiece(piece, limits)) {
      const point = pointOnPiece(piece, t);
      if (t === 1 || isSame(point, points[points.length - 1])) continue;
      points.push(point);
      pieceIndices.push(pieceIndex);
    }
  });
  points.push(curve.closed ? at(points, 0) : pointOnPiece(at(curve.pieces, -1), 1));
  const alongMm = [0];
  for (let i = 1; i < points.length; i++) {
    const [dx, dy] = subtract2(at(points, i), at(points, i - 1));
    alongMm.push(at(alongMm, -1) + Math.hypot(dx, dy));
  }
  return { xs: points.map(([x]) => x), ys: points.map(([, y]) => y), pieceIndices, alongMm };
}

const isSame = (a: Vec2, b: Vec2 | undefined): boolean => a[0] === b?.[0] && a[1] === b[1];

/** Whether neither this pair of edges nor this place is known already. */
function isNews(contact: Contact, found: readonly Contact[]): boolean {
  return found.every((other) => {
    const sameEdges = other.edgeIds[0] === contact.edgeIds[0] && other.edgeIds[1] === contact.edgeIds[1];
    const [dx, dy] = subtract2(contact.at, other.at);
    return !sameEdges && Math.hypot(dx, dy) > COINCIDENT_POINTS_MM;
  });
}

function contactOf(curve: Curve, line: ChordLine, i: number, j: number): Contact | undefined {
  const place = placeOfContact(curve, line, i, j);
  if (!place) return undefined;
  const a = at(line.pieceIndices, i);
  const b = at(line.pieceIndices, j);
  const edgeIds = [at(curve.pieces, a).edgeId, at(curve.pieces, b).edgeId] as const;
  return { edgeIds, pieceIndices: [a, b], at: place, order: i };
}

function placeOfContact(curve: Curve, line: ChordLine, i: number, j: number): Vec2 | undefined {
  const follows = j === i + 1;
  const precedes = curve.closed && i === 0 && j === line.pieceIndices.length - 1;
  if (follows && turnsBack(line, i, j)) return pointOf(line, j);
  if (precedes && turnsBack(line, j, i)) return pointOf(line, 0);
  if (follows || precedes) return undefined;
  const neighbours = areNeighbours(curve, at(line.pieceIndices, i), at(line.pieceIndices, j));
  return (neighbours ? undefined : touch(curve, line, i, j)) ?? exactCrossing(line, i, j);
}

function areNeighbours(curve: Curve, a: number, b: number): boolean {
  const apart = Math.abs(a - b);
  return apart <= 1 || (curve.closed && apart === curve.pieces.length - 1);
}

const pointOf = (line: ChordLine, index: number): Vec2 => [at(line.xs, index), at(line.ys, index)];

const directionOf = (line: ChordLine, chord: number): Vec2 =>
  subtract2(pointOf(line, chord + 1), pointOf(line, chord));

/** Whether the second of two successive chords runs back over the first. */
function turnsBack(line: ChordLine, first: number, second: number): boolean {
  const a = directionOf(line, first);
  const b = directionOf(line, second);
  return Math.abs(cross2(a, b)) < -dot2(a, b) * TURNED_BACK_RAD;
}

/** Where two chords meet, their ends included; decided by exact orientation. */
function exactCrossing(line: ChordLine, i: number, j: number): Vec2 | undefined {
  const o1 = orientation(line, i, j);
  const o2 = orientation(line, i, j + 1);
  if (o1 === 0 && o2 === 0) return sharedPoint(line, i, j);
  if (areOnOneSide(o1, o2)) return undefined;
  const o3 = orientation(line, j, i);
  const o4 = orientation(line, j, i + 1);
  if (areOnOneSide(o3, o4)) return undefined;
  const [x, y] = pointOf(line, i);
  const [dx, dy] = directionOf(line, i);
  const share = o3 / (o3 - o4);
  return [x + dx * share, y + dy * share];
}

/** Positive where a point lies to one side of a chord, negative on the other, 0 exactly on its line. */
const orientation = (line: ChordLine, chord: number, point: number): number =>
  orient2d(
    at(line.xs, chord),
    at(line.ys, chord),
    at(line.xs, chord + 1),
    at(line.ys, chord + 1),
    at(line.xs, point),
    at(line.ys, point),
  );

const areOnOneSide = (a: number, b: number): boolean => (a > 0 && b > 0) || (a < 0 && b < 0);

/** The middle of the stretch that two chords on one straight line share. */
function sharedPoint(line: ChordLine, i: number, j: number): Vec2 | undefined {
  const isOn = (chord: number, point: number) =>
    isBetween(line.xs, chord, point) && isBetween(line.ys, chord, point);
  return middleOf(line, [
    ...[j, j + 1].filter((end) => isOn(i, end)),
    ...[i, i + 1].filter((end) => isOn(j, end)),
  ]);
}

function isBetween(values: readonly number[], chord: number, point: number): boolean {
  const value = at(values, point);
  const from = at(values, chord);
  const to = at(values, chord + 1);
  return value >= Math.min(from, to) && value <= Math.max(from, to);
}

/**
 * Where ends of two chords come within COINCIDENT_POINTS_MM of the other, at two separate places of the curve; the
 * middle of the shared stretch where the chords lie on each other.
 */
function touch(curve: Curve, line: ChordLine, i: number, j: number): Vec2 | undefined {
  const wholeMm = at(line.alongMm, -1);
  const touches = (chord: number, point: number) => {
    const foot = nearestOnChord(line, chord, point);
    const apartMm = Math.abs(foot.alongMm - at(line.alongMm, point));
    const separateMm = curve.closed ? Math.min(apartMm, wholeMm - apartMm) : apartMm;
    return foot.distanceMm <= COINCIDENT_POINTS_MM && separateMm >= SEPARATE_PLACES_MM;
  };
  return middleOf(line, [
    ...[j, j + 1].filter((end) => touches(i, end)),
    ...[i, i + 1].filter((end) => touches(j, end)),
  ]);
}

function middleOf(line: ChordLine, points: readonly number[]): Vec2 | undefined {
  if (points.length === 0) return undefined;
  const sum = points.map((point) => pointOf(line, point)).reduce(add2);
  return scale2(sum, 1 / points.length);
}

function nearestOnChord(
  line: ChordLine,
  chord: number,
  point: number,
): { readonly distanceMm: number; readonly alongMm: number } {
  const direction = directionOf(line, chord);
  const toPoint = subtract2(pointOf(line, point), pointOf(line, chord));
  const size = dot2(direction, direction);
  const share = size === 0 ? 0 : Math.min(1, Math.max(0, dot2(toPoint, direction) / size));
  return {
    distanceMm: Math.hypot(toPoint[0] - direction[0] * share, toPoint[1] - direction[1] * share),
    alongMm: at(line.alongMm, chord) + Math.sqrt(size) * share,
  };
}
