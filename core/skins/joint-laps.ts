import { at, type FlatPoint } from "../foundation/index.ts";
import type { FaceRegion } from "./face-regions.ts";
import type { FaceJoint } from "./joint-lines.ts";
import { type Area, bandBeside, grown, isWithin, overlapOf, subtract } from "./polygons.ts";

/** How cloths lap beside joints and seams, mm. */
export interface LapSettings {
  readonly overlapMm: number;
  /** Between the seams of one ply and the next. */
  readonly staggerMm: number;
}

/** A seam keeps so far off a joint, mm (common practice): the joint lies under whole cloth. */
export const CLEAR_OF_JOINT_MM = 25;
/** Cloth that laps onto a face ends so far inside it at least, mm. */
const SPARE_ROOM_MM = 10;

/** At one joint and in one ply: cloth of `from` runs over the joint, and cloth of `onto` begins `clearMm` beyond it. */
export interface JointLap {
  readonly joint: FaceJoint;
  readonly ply: number;
  readonly from: 0 | 1;
  readonly clearMm: number;
  readonly overlapMm: number;
  /** How far the face that it lies on goes on, at its narrowest. */
  readonly roomMm: number;
  /** Whether there was no room for a whole lap clear of the joint. */
  readonly isTight: boolean;
  /** Whether it lies over the lap of the ply below: there was no room beside it. */
  readonly isStacked: boolean;
}

/**
 * Where cloths of two parts lap: never on the joint, but beside it. Cloth of the one runs over it and laps onto cloth of
 * the other, `CLEAR_OF_JOINT_MM` beyond at least; the next ply laps on the other side or farther away, so that no two
 * plies in a row have seams nearer than the stagger. Where there is too little room for that they lie closer, shorter, and
 * last over each other; a part that is too narrow for a seam runs over in every ply.
 */
export function jointLaps(
  joints: readonly FaceJoint[],
  plyCount: number,
  settings: LapSettings,
): readonly JointLap[] {
  const { overlapMm } = settings;
  return joints.flatMap((joint) => {
    const rooms = [
      roomBeside(at(joint.regions, 0), at(joint.lines, 0)),
      roomBeside(at(joint.regions, 1), at(joint.lines, 1)),
    ];
    const wider: 0 | 1 = at(rooms, 0) >= at(rooms, 1) ? 0 : 1;
    const narrower: 0 | 1 = wider === 0 ? 1 : 0;
    const places = [
      placesOnto(at(rooms, 0), plyCount, settings),
      placesOnto(at(rooms, 1), plyCount, settings),
    ];
    const fits = Array.from({ length: plyCount }, (_, step) => step).flatMap((step) =>
      ([narrower, wider] as const).flatMap((from): readonly LapSeat[] => {
        const clearMm = places[1 - from]?.[step];
        return clearMm === undefined ? [] : [{ from, clearMm, overlapMm, isTight: false }];
      }),
    );
    const seats = fits.length >= Math.min(2, plyCount) ? fits : closeSeats(fits, rooms, narrower, overlapMm);
    return Array.from({ length: plyCount }, (_, ply): JointLap => {
      const [seat, below] = [
        at(seats, ply % seats.length),
        at(seats, (ply + seats.length - 1) % seats.length),
      ];
      const roomMm = at(rooms, 1 - seat.from);
      return { joint, ply, ...seat, roomMm, isStacked: ply > 0 && lieOverEachOther(seat, below) };
    });
  });
}

/** Where a lap may lie beside a joint. */
type LapSeat = Pick<JointLap, "from" | "clearMm" | "overlapMm" | "isTight">;

/** A shorter lap is none: the least that is published, mm. */
const LEAST_LAP_MM = 25;
/** Between two laps beside each other, and between one and a joint or an edge, mm (common practice: what scissors and hands miss by). */
const APART_MM = 5;

/**
 * Where fewer than two whole laps find room: one on each side of the joint, or two on one side, as narrow as a lap may be;
 * else one for every ply, over each other.
 */
function closeSeats(
  fits: readonly LapSeat[],
  rooms: readonly number[],
  narrower: 0 | 1,
  overlapMm: number,
): readonly LapSeat[] {
  const sides = [narrower, narrower === 0 ? 1 : 0] as const;
  const oneEach = sides.flatMap((from): readonly LapSeat[] => {
    const whole = fits.find((seat) => seat.from === from);
    const lapMm = Math.min(overlapMm, at(rooms, 1 - from) / 2);
    if (whole) return [whole];
    return lapMm < LEAST_LAP_MM
      ? []
      : [{ from, clearMm: (at(rooms, 1 - from) - lapMm) / 2, overlapMm: lapMm, isTight: true }];
  });
  if (oneEach.length === 2) return oneEach;
  const from = oneEach[0]?.from ?? narrower;
  const roomMm = at(rooms, 1 - from);
  const lapMm = Math.min(overlapMm, (roomMm - 3 * APART_MM) / 2);
  if (lapMm >= LEAST_LAP_MM) {
    const firstMm = Math.min(CLEAR_OF_JOINT_MM, roomMm - 2 * lapMm - 2 * APART_MM);
    return [firstMm, firstMm + lapMm + APART_MM].map((clearMm) => ({
      from,
      clearMm,
      overlapMm: lapMm,
      isTight: true,
    }));
  }
  const onlyMm = Math.min(overlapMm, roomMm / 2);
  return oneEach.length > 0
    ? oneEach
    : [{ from, clearMm: (roomMm - onlyMm) / 2, overlapMm: onlyMm, isTight: true }];
}

const lieOverEachOther = (one: LapSeat, other: LapSeat): boolean =>
  one.from === other.from &&
  one.clearMm < other.clearMm + other.overlapMm &&
  other.clearMm < one.clearMm + one.overlapMm;

/** How far beyond a joint laps may begin in a room: a stagger apart, the last as far in as there is room for it. */
function placesOnto(roomMm: number, count: number, { overlapMm, staggerMm }: LapSettings): readonly number[] {
  const farthestMm = roomMm - overlapMm - SPARE_ROOM_MM;
  const even = Array.from({ length: count }, (_, step) => CLEAR_OF_JOINT_MM + step * staggerMm);
  const fits = even.filter((clearMm) => clearMm <= farthestMm);
  const last = fits.at(-1);
  const hasMore = last !== undefined && fits.length < count && farthestMm - last >= overlapMm + SPARE_ROOM_MM;
  return hasMore ? [...fits, farthestMm] : fits;
}

/** Places along a joint where its face is measured, mm apart; and the share of them that may be narrower. */
const EVERY_MM = 40;

/** How far a face goes on square to a line on its edge before it ends or meets a fence, at its narrowest, mm. */
export function roomBeside({ area }: FaceRegion, line: readonly FlatPoint[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i + 1 < line.length; i++) {
    const [a, b] = [at(line, i), at(line, i + 1)];
    const lengthMm = Math.hypot(b.u - a.u, b.v - a.v);
    if (lengthMm === 0) continue;
    const count = Math.max(1, Math.round(lengthMm / EVERY_MM));
    const across = { u: -(b.v - a.v) / lengthMm, v: (b.u - a.u) / lengthMm };
    for (let k = 0; k < count; k++) {
      const share = (k + 0.5) / count;
      const foot = { u: a.u + (b.u - a.u) * share, v: a.v + (b.v - a.v) * share };
      // The face lies to one side of its edge: the ray that starts inside it counts.
      for (const sign of [1, -1]) {
        const away = { u: sign * across.u, v: sign * across.v };
        const crossings = crossingsAlong(area, foot, away).filter((mm) => mm > START_MM);
        const [first] = crossings.sort((x, y) => x - y);
        if (first !== undefined && crossings.length % 2 === 1) least = Math.min(least, first);
      }
    }
  }
  return Number.isFinite(least) ? least : 0;
}

/** Nearer crossings are the edge itself, mm. */
const START_MM = 1;

function crossingsAlong(area: Area, from: FlatPoint, along: FlatPoint): number[] {
  const found: number[] = [];
  for (const loop of area) {
    let a = loop[loop.length - 1];
    for (const b of loop) {
      if (a) {
        const sideA = along.u * (a.v - from.v) - along.v * (a.u - from.u);
        const sideB = along.u * (b.v - from.v) - along.v * (b.u - from.u);
        if (sideA > 0 !== sideB > 0) {
          const share = sideA / (sideA - sideB);
          const point = { u: a.u + (b.u - a.u) * share, v: a.v + (b.v - a.v) * share };
          found.push((point.u - from.u) * along.u + (point.v - from.v) * along.v);
        }
      }
      a = b;
    }
  }
  return found;
}

/** What cloth of a face covers in a ply: the face without where other cloth runs over it, with where its own runs over. */
export function clothGround(
  region: FaceRegion,
  laps: readonly JointLap[],
  ply: number,
): { readonly kept: Area; readonly flaps: Area } {
  const own = laps.filter((lap) => lap.ply === ply && lap.joint.regions.includes(region));
  let kept = region.area;
  const flaps: Area[] = [];
  for (const { joint, from, clearMm, overlapMm } of own) {
    const side = joint.regions[0] === region ? 0 : 1;
    const line = at(joint.lines, side);
    const inward = inwardOf(line, region.area);
    if (side === from) flaps.push(flapBeside(region, line, -inward * (clearMm + overlapMm)));
    else kept = subtract(kept, bandBeside(line, inward * clearMm));
  }
  return { kept, flaps: flaps.flat() };
}

/** What runs over an edge: nowhere farther off the face than it is wide, however the line beside it turns. */
function flapBeside({ area, inner }: FaceRegion, line: readonly FlatPoint[], widthMm: number): Area {
  const band = subtract(bandBeside(line, widthMm), inner);
  return overlapOf(band, grown(area, Math.abs(widthMm)));
}

/** On which side of a line along its edge an area lies: 1 to the left of its course, else −1. */
export function inwardOf(line: readonly FlatPoint[], area: Area): 1 | -1 {
  let left = 0;
  for (let i = 0; i + 1 < line.length; i++) {
    const [a, b] = [at(line, i), at(line, i + 1)];
    const lengthMm = Math.hypot(b.u - a.u, b.v - a.v);
    if (lengthMm === 0) continue;
    const middle = { u: (a.u + b.u) / 2, v: (a.v + b.v) / 2 };
    const beside = { u: middle.u - (b.v - a.v) / lengthMm, v: middle.v + (b.u - a.u) / lengthMm };
    left += isWithin(area, beside) ? lengthMm : -lengthMm;
  }
  return left >= 0 ? 1 : -1;
}
