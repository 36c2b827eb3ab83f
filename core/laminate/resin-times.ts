/** Resin whose times a supplier gives at one temperature, the pot life for one mass. */
export interface ResinTimes {
  readonly potLifeMinutes: number;
  readonly filmMinutes: number;
  readonly solidHours: number;
}

/** The temperature that suppliers' times are taken at here, °C, and the mass in the pot, kg. */
const TIMES_AT_CELSIUS = 22;
const POT_KG = 0.1;
/** All times halve with so many degrees more (published by three suppliers). */
const HALVES_BY_CELSIUS = 10;
/** A larger pot warms itself: its life goes with the mass to this power (common practice, 100 to 500 g). */
const MASS_POWER = 0.4;

const slowdown = (celsius: number): number => 2 ** ((TIMES_AT_CELSIUS - celsius) / HALVES_BY_CELSIUS);

/** How long a pot of mixed resin can be worked, minutes; a pot under 100 g counts as one of 100 g. */
export const potLifeMinutes = (resin: ResinTimes, celsius: number, potKg: number): number =>
  resin.potLifeMinutes * slowdown(celsius) * (POT_KG / Math.max(POT_KG, potKg)) ** MASS_POWER;

/** How long resin that is spread thin can be worked, minutes. */
export const filmMinutes = (resin: ResinTimes, celsius: number): number =>
  resin.filmMinutes * slowdown(celsius);

/** When resin that is spread thin is solid, hours. */
export const solidHours = (resin: ResinTimes, celsius: number): number =>
  resin.solidHours * slowdown(celsius);
