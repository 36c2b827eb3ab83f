import { toCurve, walkCurve } from "../curves/index.ts";
import type { PlanPoint } from "../foundation/index.ts";
import type { FenceSheet, Sheet } from "../surfaces/index.ts";
import { BRUSH_MM } from "./closed-joints.ts";
import type { GlueUnit } from "./glue-units.ts";

/** A hand with a brush beside a fence takes this, and is stopped by what is higher than this (common practice), mm. */
export const HAND_MM = 80;
const LOW_MM = 40;
/** Fences are looked at in steps of this, and a hand lies along them by half of this either way, mm. */
const STEP_MM = 20;
const HAND_LONG_MM = 80;

/** A fence, and what may stand in the way of a hand beside it: for every place along it, on one side and on the other. */
export interface FenceRoom {
  readonly unit: GlueUnit;
  readonly lengthMm: number;
  readonly stepMm: number;
  readonly near: readonly (readonly [readonly GlueUnit[], readonly GlueUnit[]])[];
}

/** A fence as it stands in plan. */
interface FenceWall {
  readonly unit: GlueUnit;
  readonly thicknessMm: number;
  readonly heightMm: number;
  readonly places: readonly (PlanPoint & { readonly alongMm: number; readonly tangent: PlanPoint })[];
  readonly lengthMm: number;
}

/** Where a fence's joint is out of reach: over how much of it, and which fences stand beside it there. */
export interface TightPlace {
  readonly lengthMm: number;
  readonly beside: readonly GlueUnit[];
}

/** The room beside each fence among some pieces; other pieces have none. */
export function fenceRooms(
  units: readonly GlueUnit[],
  sheets: readonly Sheet[],
): ReadonlyMap<GlueUnit, FenceRoom> {
  const walls = units.flatMap((unit) => wallOf(unit, sheets) ?? []);
  const high = walls.filter(({ heightMm }) => heightMm > LOW_MM);
  return new Map(walls.map((wall) => [wall.unit, roomOf(wall, high)]));
}

function roomOf(wall: FenceWall, high: readonly FenceWall[]): FenceRoom {
  const { unit, lengthMm, places } = wall;
  const inner = places.filter(({ alongMm }) => alongMm > BRUSH_MM && alongMm < lengthMm - BRUSH_MM);
  const others = high.filter((other) => other.unit !== unit);
  const on = (place: FenceWall["places"][number], side: number) =>
    others.filter((other) => isInHandsWay(place, side, wall, other)).map((other) => other.unit);
  const stepMm = lengthMm / Math.max(1, places.length - 1);
  return { unit, lengthMm, stepMm, near: inner.map((place) => [on(place, 1), on(place, -1)]) };
}

/** A fence as a wall; undefined for what is no fence. */
function wallOf(unit: GlueUnit, sheets: readonly Sheet[]): FenceWall | undefined {
  const sheet = sheets.find(({ id }) => id === unit.part.sheetId);
  if (sheet?.kind !== "fence") return undefined;
  const sideOfY = unit.part.hand === "left" ? -1 : 1;
  const line = toCurve(
    sheet.chart.pieces.map(({ piece }) => piece),
    false,
  );
  const walk = walkCurve(line);
  const count = Math.max(1, Math.ceil(line.lengthMm / STEP_MM));
  const places = Array.from({ length: count + 1 }, (_, i) => {
    const alongMm = (line.lengthMm * i) / count;
    const { at, tangent } = walk(alongMm);
    return {
      alongMm,
      x: at[0],
      y: sideOfY * at[1],
      tangent: { x: tangent[0], y: sideOfY * tangent[1] },
    };
  });
  return {
    unit,
    thicknessMm: unit.part.thicknessMm,
    heightMm: heightOf(sheet),
    places,
    lengthMm: line.lengthMm,
  };
}

function heightOf({ loops }: FenceSheet): number {
  const vs = loops.flatMap(({ edges }) => edges.flatMap(({ points }) => points.map(({ v }) => v)));
  return Math.max(...vs) - Math.min(...vs);
}

/**
 * Where the joint of a fence cannot be reached from either side because others stand beside it: nearer than a hand with its
 * brush is wide, and farther in than a brush reaches from its ends. Nothing where there is room all along.
 */
export function tightPlace({ near, stepMm }: FenceRoom, standing: readonly GlueUnit[]): TightPlace {
  const there = near.map((sides) => sides.map((ones) => ones.filter((unit) => standing.includes(unit))));
  const shut = there.filter((sides) => sides.every((ones) => ones.length > 0));
  const beside = new Set(shut.flat(2));
  return { lengthMm: shut.length * stepMm, beside: standing.filter((unit) => beside.has(unit)) };
}

/** Whether a fence takes the room of a hand on one side of a place on another. */
const isInHandsWay = (
  { x, y, tangent }: FenceWall["places"][number],
  side: number,
  { thicknessMm }: FenceWall,
  other: FenceWall,
): boolean =>
  other.places.some((point) => {
    const [dx, dy] = [point.x - x, point.y - y];
    const alongMm = dx * tangent.x + dy * tangent.y;
    const acrossMm = side * (dy * tangent.x - dx * tangent.y);
    const roomMm = acrossMm - (thicknessMm + other.thicknessMm) / 2;
    return Math.abs(alongMm) <= HAND_LONG_MM / 2 && acrossMm > 0 && roomMm < HAND_MM;
  });
