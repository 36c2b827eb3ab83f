import { type Label, RANGES, type Range } from "./limits.ts";
import type { Project } from "./schema.ts";

type TypedZone = NonNullable<NonNullable<Project["laminate"]>["zones"]>[number];
type CheckNumber = (value: number, label: Label, range: Range, fallback: number) => number;

/** A zone of reinforcement with nothing left open. */
export type ReinforcementZone = Omit<TypedZone, "stepMm"> & { readonly stepMm: number };

/** Each ply so much smaller on every side than the one below, mm (published, weak, as 6 on a light edge; 10 is common practice). */
const STEP_MM = 10;
/** What stands for a size or a number of plies that cannot be. */
const [SIZE_MM, PLIES] = [100, 1] as const;

/** Zones with their steps, whole numbers of plies. */
export const zonesOf = (zones: readonly TypedZone[]): readonly ReinforcementZone[] =>
  zones.map((zone) => ({
    ...zone,
    plies: Math.max(0, Math.round(zone.plies)),
    stepMm: zone.stepMm ?? STEP_MM,
  }));

/** A zone with every number that is out of its range replaced; `zones.2` is the third. */
export function soundZone(zone: TypedZone, index: number, number: CheckNumber): TypedZone {
  const setting = `laminate.zones.${index}`;
  const of = `zone ${index + 1}`;
  const size = (value: number, key: string, word: string) =>
    number(value, [`${setting}.${key}`, word, of], RANGES.zoneMm, SIZE_MM);
  const { shape } = zone;
  const sound = (): TypedZone["shape"] => {
    switch (shape.kind) {
      case "spot":
        return { ...shape, radiusMm: size(shape.radiusMm, "radiusMm", "Radius") };
      case "band":
        return { ...shape, widthMm: size(shape.widthMm, "widthMm", "Width") };
      case "rectangle":
        return {
          ...shape,
          lengthMm: size(shape.lengthMm, "lengthMm", "Length"),
          widthMm: size(shape.widthMm, "widthMm", "Width"),
        };
    }
  };
  return {
    ...zone,
    shape: sound(),
    plies: number(zone.plies, [`${setting}.plies`, "Number of plies", of], RANGES.zonePlies, PLIES),
    ...(zone.stepMm !== undefined && {
      stepMm: number(zone.stepMm, [`${setting}.stepMm`, "Step", of], RANGES.plyStepMm, STEP_MM),
    }),
  };
}
