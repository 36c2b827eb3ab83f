/** The sensible range of a typed number, both ends included. */
export interface Range {
  readonly least: number;
  readonly most: number;
}

const range = (least: number, most: number): Range => ({ least, most });

/**
 * What a builder can mean by each kind of number. Outside these it is a slip of the keyboard or cannot be
 * built; all are common practice, set wide.
 */
export const RANGES = {
  thicknessMm: range(1, 200),
  boardThicknessMm: range(1, 60),
  skinMm: range(0, 10),
  /** Stock from an offcut to the largest board that is sold; a roll of thin foam is longer. */
  stockSideMm: range(50, 6000),
  stockLengthMm: range(50, 30_000),
  kerfMm: range(0, 10),
  scarfRatio: range(0, 20),
  closerSpareMm: range(0, 50),
  clearanceMm: range(0, 50),
  fibreMassShare: range(0.2, 0.75),
  wasteShare: range(0, 0.5),
  uptakeKgPerM2: range(0, 1),
  potKg: range(0.02, 1),
  /** A hard stop: more spoils the resin (common practice). */
  pigmentShare: range(0, 0.05),
  shopCelsius: range(0, 40),
  hourOfDay: range(0, 24),
  loggedHours: range(0.1, 500),
  doneShare: range(0.05, 1),
  carriedMm: range(300, 10_000),
  hands: range(1, 6),
  hardenerPer100: range(1, 200),
  /** Dry air is never: the dew point needs some water. */
  humidityShare: range(0.01, 1),
  selvedgeMm: range(0, 50),
  /** Less than 15 mm is no lap. */
  clothOverlapMm: range(15, 150),
  patchMm: range(300, 10_000),
  /** A smaller zone is no reinforcement; more plies than ten no hand wets through. */
  zoneMm: range(10, 5000),
  zonePlies: range(1, 10),
  plyStepMm: range(0, 100),
  reachMm: range(300, 2000),
  sheetCount: range(0, 1000),
  price: range(0, 100_000),
  inStore: range(0, 100_000),
  packOf: range(0.01, 10_000),
  trimMm: range(0, 200),
  stockEdgeMm: range(0, 100),
  staggerMm: range(0, 1000),
  intervalMm: range(5, 1000),
  markingToleranceMm: range(0.01, 10),
  ribSpacingMm: range(20, 2000),
  ribHeightMm: range(0, 2000),
  proudMm: range(0, 10),
  slotClearanceMm: range(0, 3),
  holeMm: range(0, 1000),
  reliefMm: range(0, 60),
  filletMm: range(0, 50),
  skinFilletMm: range(0, 30),
  /** Narrower than 5 mm nothing is let in or left solid; a strip wider than 100 mm is a part of its own. */
  edgeStripMm: range(5, 100),
  chamferRun: range(1, 10),
  paddingMm: range(0, 50),
  boardHeightMm: range(-50, 50),
  formToleranceMm: range(0.05, 20),
  measuredMm: range(0, 5000),
  pushN: range(0, 300),
  wetKgPerM2: range(0, 20),
  runPastMm: range(0, 400),
  glueGapMm: range(0, 5),
  pinSpacingMm: range(10, 1000),
  rollWidthMm: range(200, 2000),
  marginMm: range(0, 40),
  overlapMm: range(0, 40),
  printCorrection: range(0.98, 1.02),
  /** A sheet that leans more than this is drawn as another kind of thing. */
  turnDegrees: range(-60, 60),
  tangentDegrees: range(-360, 360),
  densityKgPerM3: range(5, 3000),
  bendRatio: range(1, 2000),
  modulusMPa: range(0.1, 100_000),
  celsius: range(20, 400),
  arealKgPerM2: range(0.01, 5),
  minutes: range(0.5, 3000),
  hours: range(0.1, 500),
  spreadKgPerM2: range(0.01, 3),
  fenceDepthMm: range(0, 2000),
  metalMm: range(0.3, 6),
  bondLineMm: range(0, 5),
  wingDegrees: range(-170, 170),
  wingRadiusMm: range(0, 500),
  wingMm: range(0, 3000),
  metalDensityKgPerM3: range(500, 25_000),
  kFactor: range(0.2, 0.6),
  radiusRatio: range(0, 20),
  webMm: range(0, 500),
  slotMm: range(0.3, 20),
  slotDepthMm: range(1, 200),
  slotTestDegrees: range(0.1, 120),
  bendRadiusMm: range(1, 20_000),
  sagittaMm: range(0.02, 10),
  sandbagKg: range(0.1, 50),
  forceN: range(0, 5000),
  washerMm: range(4, 200),
  crushMPa: range(0.001, 20),
  meetingMm: range(0.01, 20),
  noteWidthMm: range(15, 200),
  picturePx: range(1, 10_000),
  mmPerPx: range(0.0001, 10_000),
  opacity: range(0.05, 1),
  itemNumber: range(1, 999),
} as const;

/** Where a number of the settings stands, what it is called, and of what it is. */
export type Label = readonly [setting: string, field: string, of: string];

/** Whether a number lies in its range; NaN never does. */
export const isWithin = (value: number, { least, most }: Range): boolean => value >= least && value <= most;
