import type { Problem } from "../foundation/index.ts";
import type { Checked } from "./check-settings.ts";
import { withSoundCold } from "./gluing.ts";
import { isWithin, RANGES, type Range } from "./limits.ts";
import {
  DEFAULT_BOARDS,
  DEFAULT_CLOTHS,
  DEFAULT_FOAMS,
  DEFAULT_GLUES,
  DEFAULT_METALS,
  DEFAULT_RESINS,
} from "./materials.ts";
import type { Board, Foam, Project, Stock } from "./schema.ts";

/**
 * The materials and the stock of a project: a number out of its range is replaced by that of the default
 * material of the same name, or of the first; a material whose id is taken, and a stock sheet with a fault, is
 * left out. A list that the settings draw on and that is empty gets the defaults. A problem for each fault.
 */
export function checkMaterials(project: Project): Checked<Project> {
  const problems: Problem[] = [];
  const { foams, cloths, resins, glues, boards, metals } = project.materials;
  const materials: Project["materials"] = {
    foams: checkList(orDefaults(foams, DEFAULT_FOAMS), "foams", DEFAULT_FOAMS, FOAM_FIELDS, problems).map(
      (foam) => withSoundTest(foam, problems),
    ),
    cloths: checkList(cloths, "cloths", DEFAULT_CLOTHS, CLOTH_FIELDS, problems),
    resins: checkList(resins, "resins", DEFAULT_RESINS, RESIN_FIELDS, problems),
    glues: checkList(orDefaults(glues, DEFAULT_GLUES), "glues", DEFAULT_GLUES, GLUE_FIELDS, problems).map(
      (glue) => withSoundCold(glue, problems),
    ),
    boards: checkList(
      orDefaults(boards, DEFAULT_BOARDS),
      "boards",
      DEFAULT_BOARDS,
      BOARD_FIELDS,
      problems,
    ).map((board) => withSoundStore(board, problems)),
    metals: checkList(metals, "metals", DEFAULT_METALS, METAL_FIELDS, problems),
  };
  const stock = checkStock(project.stock, materials.foams, problems);
  return { sound: { ...project, materials, stock }, problems };
}

/** A number of a material: what it is called, its range, how it is read and put back. */
interface Field<T> {
  readonly key: string;
  readonly label: string;
  readonly range: Range;
  readonly read: (material: T) => number;
  readonly put: (material: T, value: number) => T;
}

type NumberKey<T> = { [Key in keyof T]: T[Key] extends number ? Key : never }[keyof T] & string;

function field<T>(key: NumberKey<T>, label: string, range: Range, read: (material: T) => number): Field<T> {
  return { key, label, range, read, put: (material, value) => ({ ...material, [key]: value }) };
}

type Materials = Project["materials"];

const FOAM_FIELDS = [
  field<Materials["foams"][number]>(
    "densityKgPerM3",
    "Density",
    RANGES.densityKgPerM3,
    (m) => m.densityKgPerM3,
  ),
  field<Materials["foams"][number]>(
    "leastBendRatio",
    "Least bend ratio",
    RANGES.bendRatio,
    (m) => m.leastBendRatio,
  ),
  field<Materials["foams"][number]>("modulusMPa", "Modulus", RANGES.modulusMPa, (m) => m.modulusMPa),
  field<Materials["foams"][number]>(
    "mostCelsius",
    "Highest temperature",
    RANGES.celsius,
    (m) => m.mostCelsius,
  ),
];
const CLOTH_FIELDS = [
  field<Materials["cloths"][number]>("arealKgPerM2", "Weight", RANGES.arealKgPerM2, (m) => m.arealKgPerM2),
  field<Materials["cloths"][number]>("rollWidthMm", "Roll width", RANGES.stockSideMm, (m) => m.rollWidthMm),
];
const RESIN_FIELDS = [
  field<Materials["resins"][number]>("potLifeMinutes", "Pot life", RANGES.minutes, (m) => m.potLifeMinutes),
  field<Materials["resins"][number]>("filmMinutes", "Working time", RANGES.minutes, (m) => m.filmMinutes),
  field<Materials["resins"][number]>("solidHours", "Time to solid", RANGES.hours, (m) => m.solidHours),
  field<Materials["resins"][number]>(
    "densityKgPerM3",
    "Density",
    RANGES.densityKgPerM3,
    (m) => m.densityKgPerM3,
  ),
];
const GLUE_FIELDS = [
  field<Materials["glues"][number]>("openMinutes", "Open time", RANGES.minutes, (m) => m.openMinutes),
  field<Materials["glues"][number]>("clampHours", "Clamp time", RANGES.hours, (m) => m.clampHours),
  field<Materials["glues"][number]>("loadHours", "Time before load", RANGES.hours, (m) => m.loadHours),
  field<Materials["glues"][number]>("gapLimitMm", "Gap limit", RANGES.glueGapMm, (m) => m.gapLimitMm),
  field<Materials["glues"][number]>("spreadKgPerM2", "Spread", RANGES.spreadKgPerM2, (m) => m.spreadKgPerM2),
];
const BOARD_FIELDS = [
  field<Materials["boards"][number]>(
    "thicknessMm",
    "Thickness",
    RANGES.boardThicknessMm,
    (m) => m.thicknessMm,
  ),
  field<Materials["boards"][number]>("lengthMm", "Length", RANGES.stockSideMm, (m) => m.lengthMm),
  field<Materials["boards"][number]>("widthMm", "Width", RANGES.stockSideMm, (m) => m.widthMm),
  field<Materials["boards"][number]>(
    "densityKgPerM3",
    "Density",
    RANGES.densityKgPerM3,
    (m) => m.densityKgPerM3,
  ),
];

const METAL_FIELDS = [
  field<Materials["metals"][number]>(
    "densityKgPerM3",
    "Density",
    RANGES.metalDensityKgPerM3,
    (m) => m.densityKgPerM3,
  ),
  field<Materials["metals"][number]>("kFactor", "K factor", RANGES.kFactor, (m) => m.kFactor),
  field<Materials["metals"][number]>(
    "leastRadiusRatio",
    "Least radius ratio",
    RANGES.radiusRatio,
    (m) => m.leastRadiusRatio,
  ),
];

const orDefaults = <T>(list: readonly T[], defaults: readonly T[]): readonly T[] =>
  list.length === 0 ? defaults : list;

function checkList<T extends { readonly id: string; readonly name: string }>(
  list: readonly T[],
  listName: keyof Materials,
  defaults: readonly T[],
  fields: readonly Field<T>[],
  problems: Problem[],
): readonly T[] {
  const seen = new Set<string>();
  const sound: T[] = [];
  for (const material of list) {
    const setting = `materials.${listName}.${material.id}`;
    if (seen.has(material.id)) {
      problems.push({
        kind: "duplicate-id",
        place: { setting },
        name: material.name,
        field: "id",
        id: material.id,
      });
      continue;
    }
    seen.add(material.id);
    const standard = defaults.find((candidate) => candidate.id === material.id) ?? defaults[0];
    sound.push(
      fields.reduce((kept, entry) => checkField(kept, entry, standard, setting, problems), material),
    );
  }
  return sound;
}

function checkField<T extends { readonly name: string }>(
  material: T,
  entry: Field<T>,
  standard: T | undefined,
  setting: string,
  problems: Problem[],
): T {
  const value = entry.read(material);
  if (isWithin(value, entry.range)) return material;
  const used = standard ? entry.read(standard) : entry.range.least;
  problems.push({
    kind: "number-out-of-range",
    place: { setting: `${setting}.${entry.key}` },
    name: material.name,
    field: entry.label,
    value,
    ...entry.range,
    used,
  });
  return entry.put(material, used);
}

/** A foam whose test on scrap has a figure out of its range goes by its ratio. */
function withSoundTest(foam: Foam, problems: Problem[]): Foam {
  const { bendTest, ...untested } = foam;
  if (!bendTest) return foam;
  const faults = (
    [
      ["thicknessMm", "Thickness of the bent scrap", RANGES.thicknessMm],
      ["radiusMm", "Radius that a scrap was bent to", RANGES.bendRadiusMm],
    ] as const
  ).flatMap(([key, field, range]): Problem[] =>
    isWithin(bendTest[key], range)
      ? []
      : [
          {
            kind: "number-out-of-range",
            place: { setting: `materials.foams.${foam.id}.bendTest.${key}` },
            name: foam.name,
            field,
            value: bendTest[key],
            ...range,
          },
        ],
  );
  problems.push(...faults);
  return faults.length > 0 ? untested : foam;
}

/** A board whose number or price is out of its range is one that there is as much of as it takes, at no price. */
function withSoundStore(board: Board, problems: Problem[]): Board {
  const { quantity, priceEach, ...rest } = board;
  const fault = (key: string, field: string, value: number, range: Range): Problem => ({
    kind: "number-out-of-range",
    place: { setting: `materials.boards.${board.id}.${key}` },
    name: board.name,
    field,
    value,
    ...range,
  });
  const isNumberSound = quantity === undefined || isWithin(quantity, RANGES.sheetCount);
  const isPriceSound = priceEach === undefined || isWithin(priceEach, RANGES.price);
  if (!isNumberSound) problems.push(fault("quantity", "Number", quantity, RANGES.sheetCount));
  if (!isPriceSound) problems.push(fault("priceEach", "Price", priceEach, RANGES.price));
  return {
    ...rest,
    ...(isNumberSound && quantity !== undefined ? { quantity } : {}),
    ...(isPriceSound && priceEach !== undefined ? { priceEach } : {}),
  };
}

function checkStock(
  stock: readonly Stock[],
  foams: readonly { readonly id: string }[],
  problems: Problem[],
): readonly Stock[] {
  const seen = new Set<string>();
  return stock.filter((sheet, index) => {
    const name = `stock sheet ${index + 1}`;
    const setting = `stock.${sheet.id}`;
    const faults: Problem[] = [];
    if (seen.has(sheet.id))
      faults.push({ kind: "duplicate-id", place: { setting }, name, field: "id", id: sheet.id });
    seen.add(sheet.id);
    if (!foams.some((foam) => foam.id === sheet.foamId))
      faults.push({
        kind: "unknown-reference",
        place: { setting: `${setting}.foamId` },
        name,
        field: "foam",
        missingId: sheet.foamId,
      });
    for (const [key, label, value, range] of [
      ["thicknessMm", "Thickness", sheet.thicknessMm, RANGES.thicknessMm],
      ["lengthMm", "Length", sheet.lengthMm, RANGES.stockLengthMm],
      ["widthMm", "Width", sheet.widthMm, RANGES.stockSideMm],
      ["quantity", "Number", sheet.quantity ?? 0, RANGES.sheetCount],
      ["priceEach", "Price", sheet.priceEach ?? 0, RANGES.price],
    ] as const) {
      if (isWithin(value, range)) continue;
      faults.push({
        kind: "number-out-of-range",
        place: { setting: `${setting}.${key}` },
        name,
        field: label,
        value,
        ...range,
      });
    }
    problems.push(...faults);
    return faults.length === 0;
  });
}
