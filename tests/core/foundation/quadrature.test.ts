import { describe, expect, it } from "vitest";
import { integrate, integrateWithOpenEnds } from "../../../core/foundation/index.ts";

/** What rounding leaves of a closed form. */
const ROUNDING = 1e-14;

describe("an integral by quadrature", () => {
  it.each([0, 1, 7, 13, 14, 22])(
    "of t to the power of %i is that of the closed form, with one rule",
    (power) => {
      let looks = 0;
      const integral = integrate(
        (t) => {
          looks++;
          return t ** power;
        },
        0,
        1,
        1e6,
      );
      expect(looks).toBe(15);
      expect(Math.abs(integral - 1 / (power + 1))).toBeLessThan(ROUNDING);
    },
  );

  it("is halved where one rule is too coarse: e^-t sin 40 t", () => {
    const integral = integrate((t) => Math.exp(-t) * Math.sin(40 * t), 0, 5);
    // CLOSED FORM: -e^-t (sin kt + k cos kt) / (1 + k²)
    const upTo = (t: number) => (-Math.exp(-t) * (Math.sin(40 * t) + 40 * Math.cos(40 * t))) / 1601;
    expect(Math.abs(integral - (upTo(5) - upTo(0)))).toBeLessThan(1e-11);
  });

  it("is right where the function runs off like 1 / √distance at an end", () => {
    // CLOSED FORM: the quarter circle's arc length over x is π / 2.
    const integral = integrateWithOpenEnds((x) => 1 / Math.sqrt(1 - x * x), -1, 0);
    expect(Math.abs(integral - Math.PI / 2)).toBeLessThan(1e-9);
  });
});
