import type { LaminateSettings } from "../project/index.ts";

/** Work of one pair of hands on a square metre, minutes (common practice; a log of real times is better). */
const PRE_WET_MINUTES = 6;
const FIRST_PLY_MINUTES = 15;
const NEXT_PLY_MINUTES = 12;
const PEEL_PLY_MINUTES = 6;
/** Between fences and on narrow strips the same takes so much longer: 25 minutes where 15 do on the flat (common practice). */
const NARROW_FACTOR = 25 / 15;
/** To mix a pot, minutes (common practice). */
const MIX_MINUTES = 5;

/** An area that is worked on, and how much of it is too narrow for a roller's stroke, mm². */
export interface WorkedArea {
  readonly areaMm2: number;
  readonly narrowMm2: number;
}

/** What is laid on a field: its face, and the cloth of each ply. */
export interface FieldLoad {
  readonly face: WorkedArea;
  readonly cloth: readonly WorkedArea[];
  readonly mixedKg: number;
}

/** The time that the stated hands take over a field with all its plies and its share of the pots, minutes. */
export function fieldMinutes(
  { face, cloth, mixedKg }: FieldLoad,
  { preWetKgPerM2, peelPlyKgPerM2, potKg, hands }: LaminateSettings,
): number {
  const perM2 = (preWetKgPerM2 > 0 ? PRE_WET_MINUTES : 0) + (peelPlyKgPerM2 > 0 ? PEEL_PLY_MINUTES : 0);
  const laying = cloth.reduce(
    (sum, ply, i) => sum + slowedM2(ply) * (i === 0 ? FIRST_PLY_MINUTES : NEXT_PLY_MINUTES),
    slowedM2(face) * perM2,
  );
  return (laying + (MIX_MINUTES * mixedKg) / potKg) / hands;
}

const slowedM2 = ({ areaMm2, narrowMm2 }: WorkedArea): number =>
  (areaMm2 + (NARROW_FACTOR - 1) * narrowMm2) / 1e6;
