import { LARGEST_COORDINATE_MM, type Problem } from "../foundation/index.ts";
import { isWithin, type Label, RANGES, type Range } from "./limits.ts";
import { MAKING_DEFAULTS, PADDING_MM, type TypedMaking } from "./making.ts";

type CheckNumber = (value: number, label: Label, range: Range, fallback: number) => number;

/** What each number is called, and its range. */
const NUMBERS = [
  ["slotClearanceMm", "Clearance", "the half-lap slots", RANGES.slotClearanceMm],
  ["holeMm", "Diameter", "the holes in ribs", RANGES.holeMm],
  ["reliefMm", "Width", "the reliefs under joints", RANGES.reliefMm],
  ["filletMm", "Radius", "the fillets at fences", RANGES.filletMm],
  ["baseThicknessMm", "Thickness", "the baseboard", RANGES.boardThicknessMm],
  ["baseLengthMm", "Length", "a sheet of the baseboard", RANGES.stockSideMm],
  ["baseWidthMm", "Width", "a sheet of the baseboard", RANGES.stockSideMm],
] as const;

/** How ribs are made, with every number out of its range replaced by its default; a measured height out of range is left out. */
export function soundMaking(
  making: TypedMaking | undefined,
  number: CheckNumber,
  problems: Problem[],
): { readonly making?: TypedMaking } {
  if (making === undefined) return {};
  const { cradle, boardHeights, baseZMm, ...others } = making;
  const sound = NUMBERS.flatMap(([key, field, of, range]) => {
    const value = making[key];
    if (value === undefined) return [];
    return [[key, number(value, [`jig.making.${key}`, field, of], range, MAKING_DEFAULTS[key])] as const];
  });
  const label: Label = ["jig.making.cradle.paddingMm", "Padding", "the cradle"];
  return {
    making: {
      ...others,
      ...Object.fromEntries(sound),
      ...(cradle && {
        cradle: { paddingMm: number(cradle.paddingMm, label, RANGES.paddingMm, PADDING_MM) },
      }),
      ...soundBase(baseZMm, problems),
      ...(boardHeights && { boardHeights: soundHeights(boardHeights, problems) }),
    },
  };
}

type Heights = NonNullable<TypedMaking["boardHeights"]>;

const PLACE = { least: -LARGEST_COORDINATE_MM, most: LARGEST_COORDINATE_MM };

/** A height out of range is left out: the lowest rib sets the board then. */
function soundBase(baseZMm: number | undefined, problems: Problem[]): Pick<TypedMaking, "baseZMm"> {
  if (baseZMm === undefined) return {};
  if (isWithin(baseZMm, PLACE)) return { baseZMm };
  const place = { setting: "jig.making.baseZMm" };
  problems.push({
    kind: "number-out-of-range",
    place,
    name: "the baseboard",
    field: "Height",
    value: baseZMm,
    ...PLACE,
  });
  return {};
}

function soundHeights(heights: Heights, problems: Problem[]): Heights {
  return heights.filter(({ x, y, heightMm }, i) => {
    const wrong = [
      { field: `x of point ${i + 1}`, value: x, ...PLACE },
      { field: `y of point ${i + 1}`, value: y, ...PLACE },
      { field: `Height of point ${i + 1}`, value: heightMm, ...RANGES.boardHeightMm },
    ].find(({ value, least, most }) => !isWithin(value, { least, most }));
    if (wrong === undefined) return true;
    const place = { setting: `jig.making.boardHeights.${i}` };
    problems.push({ kind: "number-out-of-range", place, name: "the measured baseboard", ...wrong });
    return false;
  });
}
