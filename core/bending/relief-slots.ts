import { alongAtTurn, type BentCurve, chordBetween, turnOf } from "./bent-curve.ts";

/** A closing slot is cut into the inside of the bend and closes; an opening one into the outside, and is filled after. */
export type SlotSide = "closing" | "opening";

export interface SlotCut {
  /** The width that the blade takes. */
  readonly kerfMm: number;
  readonly depthMm: number;
}

/**
 * The angle by which a slot of a width and a depth closes until its mouth is shut: 2 atan(k / 2d). The sheet hinges at
 * the slot's bottom (workshop practice, Building Construction vol. 3, Curved Risers: the method; closed form).
 */
export const closingAngleRad = ({ kerfMm, depthMm }: SlotCut): number =>
  2 * Math.atan(kerfMm / (2 * depthMm));

/** The kerf of a blade whose slot of a depth was measured to close by an angle. */
export const kerfOfClosing = (depthMm: number, angleRad: number): number =>
  2 * depthMm * Math.tan(angleRad / 2);

/** How many slots shut a turn: each closes by its angle at most. */
export const slotCount = (turnRad: number, closingRad: number): number =>
  Math.max(1, Math.ceil(turnRad / closingRad - 1e-9));

/** The distance along the web between slots that shut, where the web is bent to a radius. */
export const slotPitchMm = (webRadiusMm: number, closingRad: number): number => webRadiusMm * closingRad;

export interface SlotSettings extends SlotCut {
  readonly side: SlotSide;
  /** How far the straights between slots may stand off the curve. */
  readonly sagittaMm: number;
}

export interface SlotPattern {
  readonly side: SlotSide;
  readonly kerfMm: number;
  readonly depthMm: number;
  /** The middle of each slot, along the web from the start of the stretch. */
  readonly placesMm: readonly number[];
  /** What each slot turns by, rad; all alike, so that where the bend is tighter they stand closer. */
  readonly turnRad: number;
  /** What a slot would turn by until it is shut. */
  readonly closingRad: number;
  /** How wide the mouth stays once bent; negative where the foam beside a closing slot is crushed by so much. */
  readonly mouthMm: number;
  /** Distance between slots along the web, least and most; absent for a single one. */
  readonly pitchMm?: readonly [number, number];
  /** The most that a straight between two slots stands off the bent web. */
  readonly polygonMm: number;
  /** The section of one slot once bent, to be filled, mm². */
  readonly fillMm2: number;
}

/** More slots than this in one stretch are a slip of the keyboard. */
const MOST_SLOTS = 400;

/**
 * Relief slots over a stretch, told along the middle of the web that they leave. Every slot takes the same turn and
 * stands in the middle of it: the pitch follows the curvature. There are as many as shut the turn (closing slots), and
 * more where the straights between them would stand off the curve by more than is permitted.
 */
export function laySlots(web: BentCurve, settings: SlotSettings): SlotPattern {
  const { side, kerfMm, depthMm, sagittaMm } = settings;
  const turnRad = turnOf(web);
  const closingRad = closingAngleRad(settings);
  let count = side === "closing" ? slotCount(turnRad, closingRad) : 1;
  let placesMm = slotPlaces(web, turnRad, count);
  let polygonMm = polygonError(web, placesMm);
  while (polygonMm > sagittaMm && count < MOST_SLOTS) {
    count += Math.max(1, Math.floor(count * (Math.sqrt(polygonMm / sagittaMm) - 1)));
    placesMm = slotPlaces(web, turnRad, count);
    polygonMm = polygonError(web, placesMm);
  }
  const each = turnRad / count;
  const opensMm = 2 * depthMm * Math.tan(each / 2) * (side === "closing" ? -1 : 1);
  const pitches = placesMm.slice(1).map((place, i) => place - (placesMm[i] ?? 0));
  return {
    side,
    kerfMm,
    depthMm,
    placesMm,
    turnRad: each,
    closingRad,
    mouthMm: kerfMm + opensMm,
    ...(pitches.length > 0 && { pitchMm: [Math.min(...pitches), Math.max(...pitches)] }),
    polygonMm,
    fillMm2: Math.max(0, depthMm * (kerfMm + opensMm / 2)),
  };
}

/** Where slots stand: each in the middle of its share of the turn. */
const slotPlaces = (web: BentCurve, turnRad: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, i) => alongAtTurn(web, ((i + 0.5) * turnRad) / count));

function polygonError(web: BentCurve, placesMm: readonly number[]): number {
  const corners = [0, ...placesMm, web.lengthMm];
  return Math.max(...corners.slice(1).map((to, i) => chordBetween(web, corners[i] ?? 0, to).sagittaMm));
}
