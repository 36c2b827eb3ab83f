import { toDegrees, toRadians } from "../foundation/index.ts";
import { type Label, RANGES, type Range } from "./limits.ts";
import type { Project } from "./schema.ts";

type Bending = Project["bending"];

/** The number itself where it lies in its range, else the fallback and a problem. */
type CheckNumber = (value: number, label: Label, range: Range, fallback: number) => number;

/** What each number of the bending is called, and its range. */
const NUMBERS = [
  ["slotKerfMm", "Kerf", "relief slots", RANGES.slotMm],
  ["slotWebMm", "Web", "relief slots", RANGES.slotMm],
  ["fillingKgPerM3", "Density", "the filling of slots", RANGES.densityKgPerM3],
  ["sagittaMm", "Deviation", "slots and planks", RANGES.sagittaMm],
  ["skinModulusMPa", "Stiffness", "the skins", RANGES.modulusMPa],
  ["sandbagKg", "Mass", "a sandbag", RANGES.sandbagKg],
  ["strapN", "Force", "a strap", RANGES.forceN],
  ["washerMm", "Width", "the washers", RANGES.washerMm],
  ["crushMPa", "Pressure", "washers on the foam", RANGES.crushMPa],
  ["pinN", "Force", "a pin", RANGES.forceN],
] as const;

/** The settings of bending with every number out of its range replaced by its default. */
export function soundBending(bending: Bending, number: CheckNumber, defaults: Bending): Bending {
  const { slotTest, ...rest } = bending;
  const sound = Object.fromEntries(
    NUMBERS.map(([key, field, of, range]) => [
      key,
      number(bending[key], [`bending.${key}`, field, of], range, defaults[key]),
    ]),
  );
  return { ...rest, ...sound, ...(slotTest && soundTest(slotTest, number)) };
}

/** A test out of its range is taken at the nearest sensible value until it is typed anew. */
function soundTest(
  { depthMm, closedRad }: NonNullable<Bending["slotTest"]>,
  number: CheckNumber,
): Pick<Bending, "slotTest"> {
  const within = (value: number, label: Label, range: Range) =>
    number(value, label, range, value > range.most ? range.most : range.least);
  const closed = within(
    toDegrees(closedRad),
    ["bending.slotTest.closedRad", "Closing", "the test slots"],
    RANGES.slotTestDegrees,
  );
  return {
    slotTest: {
      depthMm: within(depthMm, ["bending.slotTest.depthMm", "Depth", "the test slots"], RANGES.slotDepthMm),
      closedRad: closed === toDegrees(closedRad) ? closedRad : toRadians(closed),
    },
  };
}
