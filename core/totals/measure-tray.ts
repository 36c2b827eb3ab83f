import { roundTo } from "../foundation/index.ts";
import type { FlatLoop, Part } from "../patterns/index.ts";
import type { FoldedPlate } from "../plates/index.ts";
import type { Project } from "../project/index.ts";
import { foamMassKg } from "./total-tray.ts";
import type { Totals } from "./types.ts";

/** A part in figures: how long it is laid flat along its bend, how wide across, and its mass without skins. */
export interface PartMeasure {
  readonly id: string;
  readonly name: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly massKg: number;
}

/** A tray in figures, small enough to be compared with another. */
export interface TrayMeasures {
  readonly parts: readonly PartMeasure[];
  readonly totals: Totals;
}

/** What of a design is measured. */
interface Designed {
  readonly project: Project;
  readonly parts: readonly Part[];
  readonly plates: readonly FoldedPlate[];
  readonly totals: Totals;
}

/** The parts of a design and its sums in figures; lengths in mm, masses in kg. Parts in the order of the design. */
export function measureTray({ project, parts, plates, totals }: Designed): TrayMeasures {
  return {
    totals,
    parts: [
      ...parts.map((part) => ({
        id: part.id,
        name: part.name,
        ...extentOf(part.loops),
        massKg: foamMassKg(part, project),
      })),
      ...plates.flatMap(({ name, massKg, parts: hands }) =>
        hands.map((part) => ({
          id: part.id,
          name,
          lengthMm: part.lengthMm,
          widthMm: part.widthMm,
          massKg,
        })),
      ),
    ],
  };
}

function extentOf(loops: readonly FlatLoop[]): Pick<PartMeasure, "lengthMm" | "widthMm"> {
  const points = loops.flatMap(({ edges }) => edges.flatMap((edge) => edge.points));
  const span = (values: readonly number[]) =>
    values.length > 0 ? values.reduce((a, b) => Math.max(a, b)) - values.reduce((a, b) => Math.min(a, b)) : 0;
  return {
    lengthMm: roundTo(span(points.map(({ u }) => u)), 6),
    widthMm: roundTo(span(points.map(({ v }) => v)), 6),
  };
}
