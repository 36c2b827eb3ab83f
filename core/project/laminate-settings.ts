import { weighedFigures } from "./coupons.ts";
import { type Label, RANGES, type Range } from "./limits.ts";
import type { Cloth, EdgeFinish, Project, Resin } from "./schema.ts";
import { type ReinforcementZone, soundZone, zonesOf } from "./zones.ts";

/** A ply with its cloth. */
export interface ClothPly {
  readonly cloth: Cloth;
  readonly warpRad: number;
}

/** The finish of one edge of an item. */
export interface OwnFinish {
  readonly itemId: string;
  readonly edgeId: string;
  readonly finish: EdgeFinish;
}

/** How the faces are laminated, with nothing left open but plies and the mixing ratio, which only the supplier knows. */
export interface LaminateSettings {
  /** Undefined where the builder chose none. */
  readonly lower: readonly ClothPly[] | undefined;
  readonly upper: readonly ClothPly[] | undefined;
  readonly resin: Resin | undefined;
  readonly fibreMassShare: number;
  readonly wasteShare: number;
  readonly preWetKgPerM2: number;
  readonly peelPlyKgPerM2: number;
  readonly potKg: number;
  readonly hardenerPer100: number | undefined;
  readonly pigmentShare: number;
  readonly shopCelsius: number;
  readonly leastCelsius: number;
  readonly hands: number;
  readonly selvedgeMm: number;
  readonly overlapMm: number;
  readonly longestPatchMm: number;
  readonly reachMm: number;
  readonly humidityShare: number;
  readonly filletMm: number;
  readonly edgeFinish: EdgeFinish;
  readonly edgeFinishes: readonly OwnFinish[];
  readonly flangeMm: number;
  readonly chamferRun: number;
  readonly insertMm: number;
  readonly insertKgPerM3: number;
  readonly zones: readonly ReinforcementZone[];
  /** What weighed coupons gave in place of typed figures. */
  readonly weighed: { readonly fibreMassShare?: number; readonly preWetKgPerM2?: number };
}

/**
 * Fibre half the mass: published three times; waste of 15 %: published; peel ply 50 g/m²: published (weak); pre-wet of
 * 80 g/m² for closed foam, 200 g in a pot, one pair of hands: common practice; 15 °C: published for marine epoxies.
 * Fillet of 10 mm: published as 9.5. Overlap of 50 mm: published (weak) as 25 to 100; selvedge, reach and the longest piece: common practice.
 * Flange and insert of 20 mm, chamfer over three thicknesses: common practice; hardwood of 700 kg/m³: from memory.
 */
const DEFAULTS = {
  fibreMassShare: 0.5,
  wasteShare: 0.15,
  preWetKgPerM2: 0.08,
  peelPlyKgPerM2: 0.05,
  potKg: 0.2,
  pigmentShare: 0,
  shopCelsius: 20,
  leastCelsius: 15,
  hands: 1,
  selvedgeMm: 10,
  overlapMm: 50,
  longestPatchMm: 1500,
  reachMm: 800,
  humidityShare: 0.5,
  filletMm: 10,
  flangeMm: 20,
  chamferRun: 3,
  insertMm: 20,
  insertKgPerM3: 700,
} as const;

/** The laminate of a project: what is chosen, and for the rest its default. A ply of a cloth that is not there is left out. */
export function laminateOf({
  laminate = {},
  materials,
}: Pick<Project, "laminate" | "materials">): LaminateSettings {
  const {
    lower,
    upper,
    resinId,
    hardenerPer100,
    coupons = [],
    edgeFinish = "wrapped",
    edgeFinishes = [],
    zones = [],
    ...numbers
  } = laminate;
  const plies = (chosen: typeof lower) => chosen && clothPlies(chosen, materials);
  const resin = materials.resins.find(({ id }) => id === resinId) ?? materials.resins[0];
  const typed = Object.fromEntries(Object.entries(numbers).filter(([, value]) => value !== undefined));
  const settings = { ...DEFAULTS, ...typed };
  const weighed = weighedFigures(coupons, materials.cloths, settings.fibreMassShare);
  return {
    ...settings,
    ...weighed,
    weighed,
    edgeFinish,
    edgeFinishes,
    zones: zonesOf(zones),
    lower: plies(lower),
    upper: plies(upper),
    resin,
    hardenerPer100,
  };
}

/** Plies with their cloths; a ply of a cloth that is not there is left out. */
export const clothPlies = (
  plies: readonly { readonly clothId: string; readonly warpRad: number }[],
  { cloths }: Project["materials"],
): readonly ClothPly[] =>
  plies.flatMap(({ clothId, warpRad }) => {
    const cloth = cloths.find(({ id }) => id === clothId);
    return cloth ? [{ cloth, warpRad }] : [];
  });

type Laminate = NonNullable<Project["laminate"]>;
type CheckNumber = (value: number, label: Label, range: Range, fallback: number) => number;

const NUMBERS = [
  ["fibreMassShare", "Share of fibre", "the laminate", RANGES.fibreMassShare],
  ["wasteShare", "Waste", "the resin", RANGES.wasteShare],
  ["preWetKgPerM2", "Pre-wet", "the foam", RANGES.uptakeKgPerM2],
  ["peelPlyKgPerM2", "Uptake", "the peel ply", RANGES.uptakeKgPerM2],
  ["potKg", "Mass", "a pot", RANGES.potKg],
  ["pigmentShare", "Pigment", "the resin", RANGES.pigmentShare],
  ["shopCelsius", "Temperature", "the shop", RANGES.shopCelsius],
  ["leastCelsius", "Least temperature", "the resin", RANGES.shopCelsius],
  ["hands", "Hands", "the lay-up", RANGES.hands],
  ["selvedgeMm", "Selvedge", "the roll", RANGES.selvedgeMm],
  ["overlapMm", "Overlap", "the cloth", RANGES.clothOverlapMm],
  ["longestPatchMm", "Longest piece", "the cloth", RANGES.patchMm],
  ["reachMm", "Reach", "the hands", RANGES.reachMm],
  ["filletMm", "Radius", "the fillets", RANGES.skinFilletMm],
  ["flangeMm", "Width", "the flanges", RANGES.edgeStripMm],
  ["chamferRun", "Chamfer", "the flanges", RANGES.chamferRun],
  ["insertMm", "Width", "the hard inserts", RANGES.edgeStripMm],
  ["insertKgPerM3", "Density", "the hard inserts", RANGES.densityKgPerM3],
  ["humidityShare", "Humidity", "the shop", RANGES.humidityShare],
] as const;

/** The laminate with every typed number that is out of its range replaced by its default; a ratio by none. */
export function soundLaminate(laminate: Laminate, number: CheckNumber): Laminate {
  const sound = NUMBERS.flatMap(([key, field, of, range]) => {
    const value = laminate[key];
    return value === undefined
      ? []
      : [[key, number(value, [`laminate.${key}`, field, of], range, DEFAULTS[key])]];
  });
  const { hardenerPer100, ...rest } = laminate;
  const label: Label = ["laminate.hardenerPer100", "Hardener", "the mix"];
  const ratio = hardenerPer100 === undefined ? 0 : number(hardenerPer100, label, RANGES.hardenerPer100, 0);
  return {
    ...rest,
    ...Object.fromEntries(sound),
    ...(ratio > 0 && { hardenerPer100: ratio }),
    ...(laminate.zones && { zones: laminate.zones.map((zone, i) => soundZone(zone, i, number)) }),
  };
}
