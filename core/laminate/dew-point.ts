/**
 * Constants of the Magnus formula over water, −45 to 60 °C: es = 6.112 hPa · exp(17.62 t / (243.12 + t)) (World
 * Meteorological Organization, WMO-No. 8, Guide to Instruments and Methods of Observation, part I, annex 4.B).
 */
const [SLOPE, ZERO_CELSIUS] = [17.62, 243.12];

/** The temperature at which air of this temperature and relative humidity (0 to 1) gives off water, °C. */
export function dewPointCelsius(celsius: number, humidityShare: number): number {
  const power = Math.log(humidityShare) + (SLOPE * celsius) / (ZERO_CELSIUS + celsius);
  return (ZERO_CELSIUS * power) / (SLOPE - power);
}
