import { orient2d } from "robust-predicates";
import { at, COINCIDENT_POINTS_MM, type Vec2 } from "../foundation/index.ts";
import { flattenPiece } from "./flatten.ts";
import { pointOnPiece } from "./pieces.ts";
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
 * Adaptive precision floating-point arithmetic, through `robust-predicates`); pairs are found by a tree of boxes.
 */
export function findSelfCrossings(curve: Curve): SelfCrossing[] {
  const chords = chordsOf(curve);
  if (chords.length < 2) return [];
  const found: Contact[] = [];
  const meet = (i: number, j: number) => {
    const contact = contactOf(curve, chords, i, j);
    if (contact && isNews(contact, found)) found.push(contact);
    return found.length < MOST_CROSSINGS;
  };
  visitPairs(boxTree(chords, 0, chords.length), meet);
  return found
    .sort((a, b) => a.order - b.order)
    .map(({ edgeIds, pieceIndices, at: place }) => ({ edgeIds, pieceIndices, at: place }));
}

/** A scribble has millions; the builder needs to see the first few. */
const MOST_CROSSINGS = 50;

/** Fine enough that a touch within COINCIDENT_POINTS_MM is seen between two curves. */
const CHORDS = { chordErrorMm: COINCIDENT_POINTS_MM / 10, turnRad: 0.1 };

/** Contacts nearer than this along the curve are one place of it, such as the two sides of a narrow tip. */
const SEPARATE_PLACES_MM = 10 * COINCIDENT_POINTS_MM;

/** Two chords that turn back within this angle lie on each other. */
const TURNED_BACK_RAD = 1e-3;

interface Chord {
  readonly from: Vec2;
  readonly to: Vec2;
  readonly pieceIndex: number;
  readonly startMm: number;
  readonly lengthMm: number;
}

interface Contact extends SelfCrossing {
  /** Index of the earlier chord. */
  readonly order: number;
}

/** The curve as chords that share their ends bit for bit, so that neighbours meet exactly. */
function chordsOf(curve: Curve): Chord[] {
  const places = curve.pieces.flatMap((piece, pieceIndex) =>
    flattenPiece(piece, CHORDS)
      .slice(0, -1)
      .map((t) => ({ point: pointOnPiece(piece, t), pieceIndex })),
  );
  const lastPoint = curve.closed ? at(places, 0).point : pointOnPiece(at(curve.pieces, -1), 1);
  let startMm = 0;
  return places.map(({ point, pieceIndex }, i) => {
    const to = places[i + 1]?.point ?? lastPoint;
    const lengthMm = Math.hypot(to[0] - point[0], to[1] - point[1]);
    const chord = { from: point, to, pieceIndex, startMm, lengthMm };
    startMm += lengthMm;
    return chord;
  });
}

/** Whether neither this pair of edges nor this place is known already. */
function isNews(contact: Contact, found: readonly Contact[]): boolean {
  return found.every((other) => {
    const sameEdges = other.edgeIds[0] === contact.edgeIds[0] && other.edgeIds[1] === contact.edgeIds[1];
    const apartMm = Math.hypot(other.at[0] - contact.at[0], other.at[1] - contact.at[1]);
    return !sameEdges && apartMm > COINCIDENT_POINTS_MM;
  });
}

function contactOf(curve: Curve, chords: readonly Chord[], i: number, j: number): Contact | undefined {
  const a = at(chords, i);
  const b = at(chords, j);
  const place = placeOfContact(curve, chords, i, j);
  if (!place) return undefined;
  const edgeOf = (chord: Chord) => at(curve.pieces, chord.pieceIndex).edgeId;
  return {
    edgeIds: [edgeOf(a), edgeOf(b)],
    pieceIndices: [a.pieceIndex, b.pieceIndex],
    at: place,
    order: i,
  };
}

function placeOfContact(curve: Curve, chords: readonly Chord[], i: number, j: number): Vec2 | undefined {
  const a = at(chords, i);
  const b = at(chords, j);
  const wraps = curve.closed && i === 0 && j === chords.length - 1;
  const folded = (j === i + 1 && turnsBack(a, b)) || (wraps && turnsBack(b, a));
  if (folded) return j === i + 1 ? a.to : a.from;
  if (j === i + 1 || wraps) return undefined;
  const crossing = exactCrossing(a, b);
  if (crossing) return crossing;
  return areNeighbours(curve, a.pieceIndex, b.pieceIndex) ? undefined : touch(curve, chords, a, b);
}

function areNeighbours(curve: Curve, a: number, b: number): boolean {
  const apart = Math.abs(a - b);
  return apart <= 1 || (curve.closed && apart === curve.pieces.length - 1);
}

/** Whether the second of two successive chords runs back over the first. */
function turnsBack(first: Chord, second: Chord): boolean {
  const ax = first.to[0] - first.from[0];
  const ay = first.to[1] - first.from[1];
  const bx = second.to[0] - second.from[0];
  const by = second.to[1] - second.from[1];
  const cross = Math.abs(ax * by - ay * bx);
  const dot = ax * bx + ay * by;
  return dot < 0 && Math.atan2(cross, -dot) < TURNED_BACK_RAD;
}

/** Where two chords meet, their ends included; decided by exact orientation. */
function exactCrossing(a: Chord, b: Chord): Vec2 | undefined {
  const o1 = orientation(a, b.from);
  const o2 = orientation(a, b.to);
  const o3 = orientation(b, a.from);
  const o4 = orientation(b, a.to);
  if (o1 === 0 && o2 === 0) return sharedPoint(a, b);
  if (o1 * o2 > 0 || o3 * o4 > 0) return undefined;
  const share = o3 / (o3 - o4);
  return [a.from[0] + (a.to[0] - a.from[0]) * share, a.from[1] + (a.to[1] - a.from[1]) * share];
}

const orientation = (chord: Chord, point: Vec2): number =>
  orient2d(chord.from[0], chord.from[1], chord.to[0], chord.to[1], point[0], point[1]);

/** An end of one of two chords on one straight line that lies on the other. */
function sharedPoint(a: Chord, b: Chord): Vec2 | undefined {
  const isWithin = (chord: Chord, point: Vec2) =>
    [0, 1].every((axis) => {
      const p = point[axis] ?? 0;
      const from = chord.from[axis] ?? 0;
      const to = chord.to[axis] ?? 0;
      return p >= Math.min(from, to) && p <= Math.max(from, to);
    });
  return (
    [b.from, b.to].find((point) => isWithin(a, point)) ?? [a.from, a.to].find((point) => isWithin(b, point))
  );
}

/** Where two chords that do not cross come within COINCIDENT_POINTS_MM, at two separate places of the curve. */
function touch(curve: Curve, chords: readonly Chord[], a: Chord, b: Chord): Vec2 | undefined {
  const last = at(chords, -1);
  const wholeMm = last.startMm + last.lengthMm;
  const candidates = [
    { ...nearest(a, b.from), otherMm: b.startMm },
    { ...nearest(a, b.to), otherMm: b.startMm + b.lengthMm },
    { ...nearest(b, a.from), otherMm: a.startMm },
    { ...nearest(b, a.to), otherMm: a.startMm + a.lengthMm },
  ];
  return candidates.find(({ distanceMm, alongMm, otherMm }) => {
    const apartMm = Math.abs(alongMm - otherMm);
    const separateMm = curve.closed ? Math.min(apartMm, wholeMm - apartMm) : apartMm;
    return distanceMm <= COINCIDENT_POINTS_MM && separateMm >= SEPARATE_PLACES_MM;
  })?.point;
}

function nearest(chord: Chord, to: Vec2): { point: Vec2; distanceMm: number; alongMm: number } {
  const dx = chord.to[0] - chord.from[0];
  const dy = chord.to[1] - chord.from[1];
  const size = dx * dx + dy * dy;
  const raw = size === 0 ? 0 : ((to[0] - chord.from[0]) * dx + (to[1] - chord.from[1]) * dy) / size;
  const share = Math.min(1, Math.max(0, raw));
  const point: Vec2 = [chord.from[0] + dx * share, chord.from[1] + dy * share];
  return {
    point,
    distanceMm: Math.hypot(point[0] - to[0], point[1] - to[1]),
    alongMm: chord.startMm + chord.lengthMm * share,
  };
}

/** A box around successive chords; successive chords lie near each other, so halving the list halves the space. */
interface BoxNode {
  readonly first: number;
  readonly low: Vec2;
  readonly high: Vec2;
  readonly children: readonly [BoxNode, BoxNode] | undefined;
}

function boxTree(chords: readonly Chord[], first: number, end: number): BoxNode {
  if (end - first === 1) {
    const { from, to } = at(chords, first);
    const low: Vec2 = [Math.min(from[0], to[0]), Math.min(from[1], to[1])];
    const high: Vec2 = [Math.max(from[0], to[0]), Math.max(from[1], to[1])];
    return { first, low, high, children: undefined };
  }
  const middle = (first + end) >> 1;
  const a = boxTree(chords, first, middle);
  const b = boxTree(chords, middle, end);
  return {
    first,
    low: [Math.min(a.low[0], b.low[0]), Math.min(a.low[1], b.low[1])],
    high: [Math.max(a.high[0], b.high[0]), Math.max(a.high[1], b.high[1])],
    children: [a, b],
  };
}

/** Calls `meet(i, j)`, i < j, for every two chords whose boxes are near; it answers whether to go on. */
function visitPairs(root: BoxNode, meet: (i: number, j: number) => boolean): void {
  const within = (node: BoxNode): boolean =>
    !node.children ||
    (within(node.children[0]) && within(node.children[1]) && between(node.children[0], node.children[1]));
  const between = (a: BoxNode, b: BoxNode): boolean => {
    if (areApart(a, b)) return true;
    if (!a.children && !b.children) return meet(a.first, b.first);
    const split = !a.children || (b.children && sizeOf(b) > sizeOf(a)) ? "b" : "a";
    return split === "a" && a.children
      ? between(a.children[0], b) && between(a.children[1], b)
      : !b.children || (between(a, b.children[0]) && between(a, b.children[1]));
  };
  within(root);
}

const sizeOf = (node: BoxNode): number => node.high[0] - node.low[0] + node.high[1] - node.low[1];

function areApart(a: BoxNode, b: BoxNode): boolean {
  const gap = COINCIDENT_POINTS_MM;
  return (
    a.low[0] > b.high[0] + gap ||
    b.low[0] > a.high[0] + gap ||
    a.low[1] > b.high[1] + gap ||
    b.low[1] > a.high[1] + gap
  );
}
