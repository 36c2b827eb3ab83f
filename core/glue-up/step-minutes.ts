import type { GlueUnit } from "./glue-units.ts";

/**
 * Minutes at the rates of common practice; no source was found for any of them. Together they come to 15 min a joint and
 * 10 min a metre for one person with pins 100 mm apart.
 */
const MINUTES = {
  /** Fitting a joint dry, scuffing, dusting, misting. */
  readyJoint: 10,
  readyPerM: 4,
  /** Bringing the faces together and checking marks and heights: two people are no faster. */
  close: 5,
  spreadPerM: 2.5,
  pin: 1 / 6,
  /** Fetching a piece and laying it on its marks, more for a heavy one. */
  layPiece: 4,
  layPerKg: 2,
  fillSlotPerM: 2,
  turnOver: 30,
  dryFit: 15,
  dryFitPiece: 6,
} as const;

/** A line of glue with its pins. */
export interface HeldLine {
  readonly lengthMm: number;
  readonly pins: number;
}

/** From the first glue to the last pin on some lines, minutes. */
export const wetMinutes = (lines: readonly HeldLine[], hands: number): number =>
  lines.length * MINUTES.close +
  sum(lines.map(({ lengthMm, pins }) => (lengthMm / 1000) * MINUTES.spreadPerM + pins * MINUTES.pin)) / hands;

/** Making joints ready for glue, minutes. */
export const readyMinutes = (lines: readonly HeldLine[], hands: number): number =>
  sum(lines.map(({ lengthMm }) => MINUTES.readyJoint + (lengthMm / 1000) * MINUTES.readyPerM)) / hands;

/** Fetching pieces and laying them on their marks, minutes. */
export const layMinutes = (massesKg: readonly number[], hands: number): number =>
  sum(massesKg.map((massKg) => MINUTES.layPiece + massKg * MINUTES.layPerKg)) / hands;

/** Filling relief slots with glue while a sheet is bent down, minutes. */
export const slotMinutes = (lengthMm: number, hands: number): number =>
  ((lengthMm / 1000) * MINUTES.fillSlotPerM) / hands;

/** Laying the whole tray without glue, looking at every joint and marking what is to be fitted, minutes. */
export const dryFitMinutes = (units: readonly GlueUnit[], hands: number): number =>
  MINUTES.dryFit + (units.length * MINUTES.dryFitPiece) / hands;

/** Lifting the tray off its jig and turning it over; it wants its people however many there are, minutes. */
export const turnMinutes = MINUTES.turnOver;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
