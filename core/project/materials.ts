import type { Board, Cloth, Foam, Glue, Metal, Resin, Stock } from "./schema.ts";

/**
 * Foams as they are sold, by generic name. Densities, moduli and limits are typical values, to be replaced by
 * the product's own sheet; each field says where its figure comes from. Least bend: 60 t for XPS and 40 t for
 * PVC are common practice, the other two are estimates on the careful side.
 */
export const DEFAULT_FOAMS: readonly Foam[] = [
  {
    id: "xps",
    name: "XPS board",
    densityKgPerM3: 32,
    leastBendRatio: 60,
    modulusMPa: 15,
    mostCelsius: 75,
    hotWire: "allowed",
    origins: {
      densityKgPerM3: "published",
      leastBendRatio: "common-practice",
      modulusMPa: "memory",
      mostCelsius: "published",
      hotWire: "published",
    },
  },
  {
    id: "pvc-80",
    name: "Cross-linked PVC 80",
    densityKgPerM3: 80,
    leastBendRatio: 40,
    modulusMPa: 90,
    mostCelsius: 70,
    hotWire: "never",
    origins: {
      densityKgPerM3: "memory",
      leastBendRatio: "common-practice",
      modulusMPa: "memory",
      mostCelsius: "memory",
      hotWire: "published-weak",
    },
  },
  {
    id: "pet-100",
    name: "PET foam 100",
    densityKgPerM3: 100,
    leastBendRatio: 60,
    modulusMPa: 85,
    mostCelsius: 100,
    hotWire: "never",
    origins: {
      densityKgPerM3: "memory",
      leastBendRatio: "memory",
      modulusMPa: "memory",
      mostCelsius: "memory",
      hotWire: "common-practice",
    },
  },
  {
    id: "pu-50",
    name: "Rigid PU foam 50",
    densityKgPerM3: 50,
    leastBendRatio: 80,
    modulusMPa: 10,
    mostCelsius: 100,
    hotWire: "never",
    origins: {
      densityKgPerM3: "memory",
      leastBendRatio: "memory",
      modulusMPa: "memory",
      mostCelsius: "memory",
      hotWire: "published",
    },
  },
];

/** Glass cloths, 2/2 twill; weights and roll width as one European range is sold. */
export const DEFAULT_CLOTHS: readonly Cloth[] = [160, 200, 280].map((gramsPerM2) => ({
  id: `glass-${gramsPerM2}`,
  name: `Glass twill ${gramsPerM2} g/m²`,
  arealKgPerM2: gramsPerM2 / 1000,
  rollWidthMm: 1000,
  origins: { arealKgPerM2: "published", rollWidthMm: "published" },
}));

/** Laminating epoxies at 22 °C, pot life for 100 g. */
export const DEFAULT_RESINS: readonly Resin[] = [
  {
    id: "epoxy-slow",
    name: "Epoxy, slow hardener",
    potLifeMinutes: 22,
    filmMinutes: 90,
    solidHours: 12,
    densityKgPerM3: 1100,
    origins: {
      potLifeMinutes: "memory",
      filmMinutes: "memory",
      solidHours: "memory",
      densityKgPerM3: "common-practice",
    },
  },
  {
    id: "epoxy-fast",
    name: "Epoxy, fast hardener",
    potLifeMinutes: 10,
    filmMinutes: 65,
    solidHours: 7,
    densityKgPerM3: 1100,
    origins: {
      potLifeMinutes: "published",
      filmMinutes: "published",
      solidHours: "published",
      densityKgPerM3: "common-practice",
    },
  },
];

/** Glues for foam edges at 20 °C. */
export const DEFAULT_GLUES: readonly Glue[] = [
  {
    id: "pu-glue",
    name: "One-part PU glue",
    openMinutes: 20,
    clampHours: 6,
    loadHours: 24,
    gapLimitMm: 1,
    spreadKgPerM2: 0.15,
    hazard: "isocyanate",
    origins: {
      openMinutes: "published-weak",
      clampHours: "published-weak",
      loadHours: "published-weak",
      gapLimitMm: "published-weak",
      spreadKgPerM2: "common-practice",
    },
  },
  {
    id: "epoxy-glue",
    name: "Thickened epoxy",
    openMinutes: 20,
    clampHours: 12,
    loadHours: 24,
    gapLimitMm: 3,
    spreadKgPerM2: 0.3,
    hazard: "epoxy",
    origins: {
      openMinutes: "memory",
      clampHours: "memory",
      loadHours: "published",
      gapLimitMm: "common-practice",
      spreadKgPerM2: "common-practice",
    },
  },
];

const boardOrigins = {
  thicknessMm: "common-practice",
  lengthMm: "memory",
  widthMm: "memory",
  densityKgPerM3: "memory",
} as const;

/** Boards that ribs are cut from. */
export const DEFAULT_BOARDS: readonly Board[] = [
  {
    id: "ply-12",
    name: "Birch ply 12 mm",
    thicknessMm: 12,
    lengthMm: 2440,
    widthMm: 1220,
    densityKgPerM3: 680,
    origins: boardOrigins,
  },
  {
    id: "mdf-12",
    name: "MDF 12 mm",
    thicknessMm: 12,
    lengthMm: 2440,
    widthMm: 1220,
    densityKgPerM3: 750,
    origins: boardOrigins,
  },
  {
    id: "hardboard-6",
    name: "Hardboard 6 mm",
    thicknessMm: 6,
    lengthMm: 2440,
    widthMm: 1220,
    densityKgPerM3: 900,
    origins: boardOrigins,
  },
];

/**
 * Sheet metals for folded plates, as sold. K factors after Machinery's Handbook's allowances for right-angle bends
 * (0.64 t + 1.57 R for half-hard metal: K = 0.64 / (π / 2); from memory); least radii are common practice.
 */
export const DEFAULT_METALS: readonly Metal[] = [
  {
    id: "aluminium-soft",
    name: "Aluminium 5754 H22",
    densityKgPerM3: 2670,
    kFactor: 0.407,
    leastRadiusRatio: 1.5,
    origins: { densityKgPerM3: "memory", kFactor: "memory", leastRadiusRatio: "common-practice" },
  },
  {
    id: "steel-mild",
    name: "Mild steel sheet",
    densityKgPerM3: 7850,
    kFactor: 0.407,
    leastRadiusRatio: 1,
    origins: { densityKgPerM3: "memory", kFactor: "memory", leastRadiusRatio: "common-practice" },
  },
];

/** One foam sheet of the usual European size. The size is published for XPS; 10 mm is what thin trays use. */
export const DEFAULT_STOCK: readonly Stock[] = [
  { id: "stock-1", foamId: "xps", thicknessMm: 10, lengthMm: 1250, widthMm: 600 },
];
