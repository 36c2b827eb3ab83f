import { at, type FlatPoint } from "../foundation/index.ts";
import type { Making } from "../project/index.ts";
import { type Stretch, sharedMm } from "./crossing-rib.ts";

/** Feet and tabs are so wide, and no farther apart than this, mm (common practice). */
const FOOT_MM = 60;
const TAB_MM = 40;
const APART_MM = 450;
/** A tab keeps so far from the ends of the rib and from slots, mm. */
const CLEAR_MM = 15;
/** Between its feet a rib stands clear of the board by this, so that a crumb under it does not rock it, mm. */
const RECESS_MM = 6;

/** Where a rib touches the board, or goes through it: stretches along it, and its lower edge from left to right. */
export interface RibFoot {
  readonly line: readonly FlatPoint[];
  readonly standsOn: readonly Stretch[];
  /** Stretches that go down through the board. */
  readonly tabs: readonly Stretch[];
}

export interface FootSettings {
  readonly foot: Making["foot"];
  readonly baseThicknessMm: number;
  /** Slots from below, which no tab comes near. */
  readonly slots: readonly Stretch[];
  /** How high the board lies over its level, along the rib. */
  readonly boardAt: (alongMm: number) => number;
}

/**
 * The lower edge of a rib between its ends: straight on the board, on feet with a recess between them, or with tabs
 * that go through the board. Where the board was measured to lie high or low the edge follows it.
 */
export function ribFoot([firstMm, lastMm]: Stretch, settings: FootSettings): RibFoot {
  const { foot, baseThicknessMm } = settings;
  const ends: Stretch = [firstMm, lastMm];
  if (foot === "feet") {
    const feet = spread(ends, FOOT_MM);
    if (feet.length > 1)
      return { line: footLine(ends, feet, settings, -RECESS_MM), standsOn: feet, tabs: [] };
  }
  if (foot === "tabs") {
    const inner: Stretch = [firstMm + CLEAR_MM, lastMm - CLEAR_MM];
    const tabs = clearOf(spread(inner, TAB_MM), settings.slots, inner);
    const line = footLine(ends, tabs, settings, baseThicknessMm);
    return { line, standsOn: [ends], tabs };
  }
  return { line: footLine(ends, [], settings, 0), standsOn: [ends], tabs: [] };
}

/** Stretches of one width from end to end, no farther apart than allowed; one where there is no room for two. */
function spread([fromMm, toMm]: Stretch, widthMm: number): Stretch[] {
  const lengthMm = toMm - fromMm;
  if (lengthMm < widthMm) return [];
  if (lengthMm < 2.5 * widthMm) {
    const middle = (fromMm + toMm) / 2;
    return [[middle - widthMm / 2, middle + widthMm / 2]];
  }
  const bays = Math.ceil((lengthMm - widthMm) / APART_MM);
  return Array.from({ length: bays + 1 }, (_, i) => {
    const startMm = fromMm + ((lengthMm - widthMm) * i) / bays;
    return [startMm, startMm + widthMm];
  });
}

/** Each stretch where it is or moved aside until no slot is near; left out where there is no such place. */
function clearOf(tabs: readonly Stretch[], slots: readonly Stretch[], inner: Stretch): Stretch[] {
  const isFree = ([fromMm, toMm]: Stretch) =>
    fromMm >= inner[0] - 1e-9 &&
    toMm <= inner[1] + 1e-9 &&
    slots.every((slot) => sharedMm(slot, [fromMm - CLEAR_MM, toMm + CLEAR_MM]) === 0);
  return tabs.flatMap(([fromMm, toMm]) => {
    for (let asideMm = 0; asideMm < APART_MM / 3; asideMm += 5) {
      const found = [asideMm, -asideMm]
        .map((mm): Stretch => [fromMm + mm, toMm + mm])
        .find((moved) => isFree(moved));
      if (found !== undefined) return [found];
    }
    return [];
  });
}

/** How often the foot follows a board that is not level, mm. */
const STEP_MM = 50;

/** The edge with `stretches` lower than the rest by `dropMm`, or (negative) the rest higher than the stretches. */
function footLine(
  [firstMm, lastMm]: Stretch,
  stretches: readonly Stretch[],
  { boardAt }: FootSettings,
  dropMm: number,
): FlatPoint[] {
  const [inMm, outMm] = dropMm > 0 ? [-dropMm, 0] : [0, -dropMm];
  const borders = [firstMm, ...stretches.flat(), lastMm];
  return borders.slice(1).flatMap((toMm, i) => {
    const fromMm = at(borders, i);
    if (toMm - fromMm < 1e-9) return [];
    const levelMm = i % 2 === 1 ? inMm : outMm;
    return followed(fromMm, toMm, boardAt).map(({ u, v }) => ({ u, v: v + levelMm }));
  });
}

/** A stretch of board as seen from beside it; two points where it is straight. */
function followed(fromMm: number, toMm: number, boardAt: (alongMm: number) => number): FlatPoint[] {
  const steps = Math.max(1, Math.ceil((toMm - fromMm) / STEP_MM));
  const points = Array.from({ length: steps + 1 }, (_, i) => {
    const u = fromMm + ((toMm - fromMm) * i) / steps;
    return { u, v: boardAt(u) };
  });
  const [first, last] = [at(points, 0), at(points, -1)];
  const isStraight = points.every(
    ({ u, v }) => Math.abs(v - first.v - ((u - fromMm) / (toMm - fromMm)) * (last.v - first.v)) < 1e-6,
  );
  return isStraight ? [first, last] : points;
}
