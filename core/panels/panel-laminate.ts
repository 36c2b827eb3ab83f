import type { PanelMake } from "../laminate/index.ts";
import { solidHours } from "../laminate/index.ts";
import { type LaminateSettings, laminateOf, type Project } from "../project/index.ts";
import {
  fieldMinutes,
  type LaidPly,
  laidPlies,
  mixedOnKg,
  onTrayKg,
  potCards,
  sessionMinutes,
} from "../skins/index.ts";
import type { Panel, PanelFace } from "./types.ts";

/** What the laminate of a panel comes to. */
export type PanelLaminate = Pick<
  Panel,
  "plies" | "skinMm" | "faces" | "cloths" | "peelPlyMm2" | "mixedKg" | "skinKg" | "curedHours"
>;

interface Blank {
  readonly lengthMm: number;
  readonly widthMm: number;
}

/** Both faces of a panel with their cloth, resin, pots and minutes. Without pots where the resin cannot be used. */
export function panelLaminate(
  blank: Blank,
  make: PanelMake,
  project: Project,
  isSound: boolean,
): PanelLaminate {
  const laminate = laminateOf(project);
  const plies = laidPlies(make.plies, laminate);
  const faceMm2 = blank.lengthMm * blank.widthMm;
  const clothMm2 = make.plies.map((ply) => clothOn(blank, ply, laminate));
  const mixedKg = mixedOnKg(faceMm2, clothMm2, plies, laminate);
  const cards = isSound && sessionMinutes(laminate) > 0 ? potCards(mixedKg, laminate) : [];
  const workMinutes = minutesOn(faceMm2, clothMm2, mixedKg, laminate);
  const face = (which: PanelFace["face"]): PanelFace => ({ face: which, workMinutes, mixedKg, cards });
  return {
    plies,
    skinMm: plies.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0),
    faces: [face("first"), face("second")],
    cloths: clothsOf(plies, clothMm2),
    peelPlyMm2: laminate.peelPlyKgPerM2 > 0 ? 2 * faceMm2 : 0,
    mixedKg: 2 * mixedKg,
    skinKg: 2 * onTrayKg(faceMm2, clothMm2, plies, laminate),
    curedHours: laminate.resin ? solidHours(laminate.resin, laminate.shopCelsius) : 0,
  };
}

/** The largest face that is laid within the time in which the resin can be worked, mm²; none is too large where it cannot be used. */
export function largestFaceMm2(make: PanelMake, project: Project): number {
  const laminate = laminateOf(project);
  const plies = laidPlies(make.plies, laminate);
  const clothMm2 = plies.map(() => SQUARE_METRE);
  const mixedKg = mixedOnKg(SQUARE_METRE, clothMm2, plies, laminate);
  const minutes = sessionMinutes(laminate);
  return minutes > 0
    ? (SQUARE_METRE * minutes) / minutesOn(SQUARE_METRE, clothMm2, mixedKg, laminate)
    : Number.POSITIVE_INFINITY;
}

const SQUARE_METRE = 1e6;

const minutesOn = (
  faceMm2: number,
  clothMm2: readonly number[],
  mixedKg: number,
  laminate: LaminateSettings,
): number => {
  const open = (areaMm2: number) => ({ areaMm2, narrowMm2: 0 });
  return fieldMinutes({ face: open(faceMm2), cloth: clothMm2.map(open), mixedKg }, laminate);
};

/** Cloth of a ply over a face: as much as the face, and a lap at every seam where the roll is narrower across its warp. */
export function clothOn(
  { lengthMm, widthMm }: Blank,
  { cloth, warpRad }: PanelMake["plies"][number],
  { selvedgeMm, overlapMm }: Pick<LaminateSettings, "selvedgeMm" | "overlapMm">,
): number {
  const [cos, sin] = [Math.abs(Math.cos(warpRad)), Math.abs(Math.sin(warpRad))];
  const acrossMm = lengthMm * sin + widthMm * cos;
  const rollMm = cloth.rollWidthMm - 2 * selvedgeMm;
  const strips =
    rollMm > overlapMm ? Math.max(1, Math.ceil((acrossMm - overlapMm) / (rollMm - overlapMm) - 1e-9)) : 1;
  // No seam is longer than the face along the warp.
  const alongMm = Math.min(cos > 0 ? lengthMm / cos : Infinity, sin > 0 ? widthMm / sin : Infinity);
  return lengthMm * widthMm + (strips - 1) * overlapMm * alongMm;
}

function clothsOf(plies: readonly LaidPly[], clothMm2: readonly number[]): Panel["cloths"] {
  const ids = [...new Set(plies.map(({ clothId }) => clothId))];
  return ids.map((clothId) => ({
    clothId,
    name: plies.find((ply) => ply.clothId === clothId)?.clothName ?? clothId,
    areaMm2: plies.reduce((sum, ply, i) => sum + (ply.clothId === clothId ? 2 * (clothMm2[i] ?? 0) : 0), 0),
  }));
}
