import type { Glue } from "../project/index.ts";

/** The temperature that the glues' times are taken at, °C. */
const TIMES_AT_CELSIUS = 20;
/** As resins' do, a glue's times halve with so many degrees more (published for epoxies by three suppliers). */
const HALVES_BY_CELSIUS = 10;

/** How long a glue can be worked, how long it is held, and when it may be loaded. */
export interface GlueTimes {
  readonly openMinutes: number;
  readonly clampHours: number;
  readonly loadHours: number;
}

/** A glue's times in a shop of some temperature; whether it may be used there at all is asked elsewhere. */
export function glueTimes(glue: Glue | undefined, celsius: number): GlueTimes {
  const slowdown = 2 ** ((TIMES_AT_CELSIUS - celsius) / HALVES_BY_CELSIUS);
  return {
    openMinutes: (glue?.openMinutes ?? 0) * slowdown,
    clampHours: (glue?.clampHours ?? 0) * slowdown,
    loadHours: (glue?.loadHours ?? 0) * slowdown,
  };
}
