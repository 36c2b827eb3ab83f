import { describe, expect, it } from "vitest";
import { dewPointCelsius } from "../../core/laminate/index.ts";

/**
 * Dew points as tables for buildings print them, to a tenth of a degree (DIN 4108-3, table of dew point temperatures; the
 * figures are from memory). The formula's constants are those of WMO-No. 8, part I, annex 4.B.
 */
const TABLE: readonly (readonly [celsius: number, humidity: number, dewPoint: number])[] = [
  [18, 0.6, 10.1],
  [20, 0.3, 1.9],
  [20, 0.5, 9.3],
  [20, 0.6, 12],
  [20, 0.7, 14.4],
  [20, 0.8, 16.4],
  [25, 0.5, 13.9],
  [25, 0.6, 16.7],
  [25, 0.7, 19.1],
  [30, 0.6, 21.4],
  [30, 0.7, 23.9],
];

describe("dew point of the shop's air", () => {
  it.each(TABLE)(
    "air of %d °C at %d of what it can hold gives off water at %d °C",
    (celsius, humidity, dewPoint) => {
      expect(Math.abs(dewPointCelsius(celsius, humidity) - dewPoint)).toBeLessThan(0.1);
    },
  );

  it("full air gives off water at its own temperature; half the water is 10 to 12 °C below it", () => {
    for (const celsius of [10, 20, 30]) {
      expect(dewPointCelsius(celsius, 1)).toBeCloseTo(celsius, 9);
      expect(celsius - dewPointCelsius(celsius, 0.5)).toBeGreaterThan(9.5);
      expect(celsius - dewPointCelsius(celsius, 0.5)).toBeLessThan(12);
    }
  });
});
