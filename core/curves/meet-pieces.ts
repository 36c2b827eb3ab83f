import {
  at,
  bracketedRoot,
  cross2,
  distance2,
  dot2,
  leftOf2,
  subtract2,
  unit2,
  type Vec2,
} from "../foundation/index.ts";
import { flattenPiece } from "./flatten.ts";
import { nearestOnPiece } from "./nearest-on-piece.ts";
import { type Box, boxesMeet, boxOfPoints } from "./piece-box.ts";
import {
  derivativeOnPiece,
  endOfPiece,
  pointOnPiece,
  secondDerivativeOnPiece,
  startOfPiece,
} from "./pieces.ts";
import type { CurvePiece } from "./types.ts";

/** Parameters of one place on two pieces. */
export interface Meeting {
  readonly a: number;
  readonly b: number;
}

/** A piece made ready to be met: cut into parts so straight that two of them cross once or run along each other. */
export interface ReadyPiece {
  readonly piece: CurvePiece;
  readonly box: Box;
  readonly parts: readonly Part[];
}

interface Part {
  readonly piece: CurvePiece;
  readonly from: number;
  readonly to: number;
  readonly start: Vec2;
  readonly end: Vec2;
  readonly box: Box;
}

/** A part turns by no more than this, so that it is a graph over any direction within a radian of its chord. */
const PART_TURN_RAD = 0.2;

/** A curve that turns by so much rises above its chord by less than this share of it. */
const PART_RISE = 0.06;

/** Chords that differ in direction by more than this belong to parts that cross once at most. */
const ACROSS_SINE = Math.sin(0.6);

export function readyToMeet(piece: CurvePiece, box: Box): ReadyPiece {
  const stops = flattenPiece(piece, { chordErrorMm: Number.MAX_VALUE, turnRad: PART_TURN_RAD });
  const points = stops.map((t) => pointOnPiece(piece, t));
  const parts = stops.slice(1).flatMap((to, i): Part[] => {
    const [start, end] = [at(points, i), at(points, i + 1)];
    const lengthMm = distance2(start, end);
    if (lengthMm === 0) return [];
    const { lowX, highX, lowY, highY } = boxOfPoints([start, end]);
    const riseMm = piece.kind === "line" ? 0 : PART_RISE * lengthMm;
    const around = { lowX: lowX - riseMm, highX: highX + riseMm, lowY: lowY - riseMm, highY: highY + riseMm };
    return [{ piece, from: at(stops, i), to, start, end, box: around }];
  });
  return { piece, box, parts };
}

/**
 * Where two pieces meet, in no order and perhaps more than once: every crossing (to rounding), the places where
 * they touch within `nearMm`, and the ends of one that lie within `nearMm` of the other (so those of a stretch that
 * they share), but not the ends that they have in common. What crosses is never missed: parts that cross steeply meet once, and between parts that run along
 * each other the gap is a smooth function of the way along, whose roots are shut in by bounds on its bend.
 */
export function meetPieces(a: ReadyPiece, b: ReadyPiece, nearMm: number): readonly Meeting[] {
  const meetings: Meeting[] = endsOn(a, b, nearMm);
  for (const partA of a.parts) {
    for (const partB of b.parts) {
      if (!boxesMeet(partA.box, partB.box, nearMm) || partFromShared(partA, partB, nearMm)) continue;
      meetings.push(...meetParts(partA, partB, nearMm));
    }
  }
  return meetings;
}

function endsOn(a: ReadyPiece, b: ReadyPiece, nearMm: number): Meeting[] {
  const meetings: Meeting[] = [];
  for (const end of [0, 1]) {
    const onB = placeOn(b, pointOnPiece(a.piece, end), nearMm);
    if (onB !== undefined) meetings.push({ a: end, b: onB });
    const onA = placeOn(a, pointOnPiece(b.piece, end), nearMm);
    if (onA !== undefined) meetings.push({ a: onA, b: end });
  }
  return meetings;
}

/** Where a piece passes within `nearMm` of a point; nowhere, if it is one of its ends: these are known. */
function placeOn({ piece, box }: ReadyPiece, point: Vec2, nearMm: number): number | undefined {
  if (!boxesMeet(box, boxOfPoints([point]), nearMm)) return undefined;
  if (distance2(startOfPiece(piece), point) <= nearMm || distance2(endOfPiece(piece), point) <= nearMm) {
    return undefined;
  }
  const nearest = nearestOnPiece(piece, point);
  return nearest.distanceMm <= nearMm ? nearest.t : undefined;
}

/** Whether two parts share an end and go so far apart from there that they cannot meet again. */
function partFromShared(a: Part, b: Part, nearMm: number): boolean {
  for (const [endA, farA] of [
    [a.start, a.end],
    [a.end, a.start],
  ] as const) {
    for (const [endB, farB] of [
      [b.start, b.end],
      [b.end, b.start],
    ] as const) {
      if (distance2(endA, endB) > nearMm) continue;
      if (dot2(unit2(subtract2(farA, endA)), unit2(subtract2(farB, endB))) < PARTING_COSINE) return true;
    }
  }
  return false;
}

/** Parts that turn by 0.2 rad at most and leave a point more than three times that apart never meet again. */
const PARTING_COSINE = Math.cos(3 * PART_TURN_RAD);

function meetParts(a: Part, b: Part, nearMm: number): readonly Meeting[] {
  const along = unit2(subtract2(b.end, b.start));
  const isAcross = Math.abs(cross2(unit2(subtract2(a.end, a.start)), along)) > ACROSS_SINE;
  const found = isAcross ? crossOnce(a, b) : crossAlong(a, b, along, nearMm);
  return found.map((meeting) => ({ a: clamp01(meeting.a), b: clamp01(meeting.b) }));
}

const clamp01 = (t: number): number => Math.min(1, Math.max(0, t));

/** Newton's rule in both parameters from where the chords cross; an answer a little beyond a part is a neighbour's. */
function crossOnce(a: Part, b: Part): readonly Meeting[] {
  const [chordA, chordB] = [subtract2(a.end, a.start), subtract2(b.end, b.start)];
  const between = subtract2(b.start, a.start);
  const area = cross2(chordA, chordB);
  let ta = a.from + (a.to - a.from) * clamp01(cross2(between, chordB) / area);
  let tb = b.from + (b.to - b.from) * clamp01(cross2(between, chordA) / area);
  for (let i = 0; i < 30; i++) {
    const gap = subtract2(pointOnPiece(b.piece, tb), pointOnPiece(a.piece, ta));
    const [speedA, speedB] = [derivativeOnPiece(a.piece, ta), derivativeOnPiece(b.piece, tb)];
    const size = cross2(speedA, speedB);
    if (size === 0) break;
    const [stepA, stepB] = [cross2(gap, speedB) / size, cross2(gap, speedA) / size];
    ta = within(a, ta + stepA);
    tb = within(b, tb + stepB);
    if (Math.abs(stepA) <= 1e-15 && Math.abs(stepB) <= 1e-15) break;
  }
  const missMm = distance2(pointOnPiece(a.piece, ta), pointOnPiece(b.piece, tb));
  return missMm <= CROSSING_MISS_MM ? [{ a: ta, b: tb }] : [];
}

/** A crossing as found may miss by this: rounding of coordinates of metres, with room. */
const CROSSING_MISS_MM = 1e-9;

/** Held to its part of a piece, and a thousandth of it beyond so that rounding loses no crossing at a border. */
function within({ from, to }: Part, t: number): number {
  const slack = (to - from) * 1e-3;
  return Math.min(to + slack, 1, Math.max(from - slack, 0, t));
}

/** The gap between two parts over one place along them: a's height above b, its slope and bend. */
interface Gap {
  readonly meeting: Meeting;
  readonly heightMm: number;
  readonly slope: number;
  readonly bendPerMm: number;
}

/** So many halvings end every search. */
const MOST_HALVINGS = 48;

function crossAlong(a: Part, b: Part, along: Vec2, nearMm: number): readonly Meeting[] {
  const up = leftOf2(along);
  const [graphA, graphB] = [graphOver(a, along, up), graphOver(b, along, up)];
  const low = Math.max(graphA.low, graphB.low);
  const high = Math.min(graphA.high, graphB.high);
  if (!(low < high)) return [];
  const gapAt = (x: number): Gap => {
    const [onA, onB] = [graphA.at(x), graphB.at(x)];
    return {
      meeting: { a: onA.t, b: onB.t },
      heightMm: onA.heightMm - onB.heightMm,
      slope: onA.slope - onB.slope,
      bendPerMm: onA.bendPerMm - onB.bendPerMm,
    };
  };
  const found: Meeting[] = [];
  const search = (x0: number, x1: number, ends: readonly [Gap, Gap], halvings: number): void => {
    const [first, last] = ends;
    const middleX = (x0 + x1) / 2;
    const middle = gapAt(middleX);
    const widthMm = x1 - x0;
    const gaps = [first, middle, last];
    const bend = 2 * Math.max(...gaps.map(({ bendPerMm }) => Math.abs(bendPerMm)));
    const bulgeMm = (bend * widthMm * widthMm) / 8;
    const crosses = first.heightMm > 0 !== last.heightMm > 0 || first.heightMm === 0 || last.heightMm === 0;
    const leastMm = Math.min(Math.abs(first.heightMm), Math.abs(last.heightMm));
    if (!crosses && leastMm > bulgeMm + nearMm) return;
    const isMonotone = Math.abs(middle.slope) > (bend * widthMm) / 2;
    const isAlongside = bulgeMm <= nearMm / 4 && gaps.every(({ heightMm }) => Math.abs(heightMm) <= nearMm);
    if (isMonotone || isAlongside || halvings === 0) {
      if (crosses) found.push(gapAt(bracketedRoot((x) => gapAt(x).heightMm, x0, x1)).meeting);
      else if (halvings < MOST_HALVINGS && Math.abs(middle.heightMm) <= nearMm) found.push(middle.meeting);
      return;
    }
    search(x0, middleX, [first, middle], halvings - 1);
    search(middleX, x1, [middle, last], halvings - 1);
  };
  search(low, high, [gapAt(low), gapAt(high)], MOST_HALVINGS);
  return found;
}

interface Graph {
  readonly low: number;
  readonly high: number;
  /** Parameter, height, slope and bend over a place along the direction. */
  readonly at: (x: number) => {
    readonly t: number;
    readonly heightMm: number;
    readonly slope: number;
    readonly bendPerMm: number;
  };
}

function graphOver(part: Part, along: Vec2, up: Vec2): Graph {
  const { piece } = part;
  const ends = [dot2(along, part.start), dot2(along, part.end)] as const;
  return {
    low: Math.min(...ends),
    high: Math.max(...ends),
    at: (x) => {
      const t = parameterOver(part, along, x, ends);
      const speed = derivativeOnPiece(piece, t);
      const bend = secondDerivativeOnPiece(piece, t);
      const [dx, dy] = [dot2(along, speed), dot2(up, speed)];
      const [ddx, ddy] = [dot2(along, bend), dot2(up, bend)];
      return {
        t,
        heightMm: dot2(up, pointOnPiece(piece, t)),
        slope: dx === 0 ? 0 : dy / dx,
        bendPerMm: dx === 0 ? 0 : (dx * ddy - dy * ddx) / (dx * dx * dx),
      };
    },
  };
}

/** The parameter of a part over x along a direction: Newton's rule kept inside a bracket. */
function parameterOver(
  { piece, from, to }: Part,
  along: Vec2,
  x: number,
  [start, end]: readonly [number, number],
): number {
  let t = Math.min(to, Math.max(from, from + ((x - start) / (end - start)) * (to - from)));
  if (piece.kind === "line") return t;
  let [low, high] = [from, to];
  for (let i = 0; i < 60; i++) {
    const missMm = dot2(along, pointOnPiece(piece, t)) - x;
    if (missMm > 0 === end > start) high = t;
    else low = t;
    const newton = t - missMm / dot2(along, derivativeOnPiece(piece, t));
    const next = newton >= low && newton <= high ? newton : (low + high) / 2;
    if (Math.abs(next - t) <= 1e-15) return next;
    t = next;
  }
  return t;
}
