import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fromInches, lengthsIn, readLengthMm } from "../../../web/lengths/index.ts";

const MINUS = "\u2212";
/** Half a sixteenth of an inch: as far as a shown fraction may lie from its length. */
const HALF_A_SIXTEENTH_MM = 25.4 / 32;
const SIXTEENTHS = Array.from({ length: 1601 }, (_, index) => index - 800);
const inches = lengthsIn("inch");
const mm = lengthsIn("mm");

describe("lengths in inches", () => {
  it.each([
    [84.1375, "3 5/16"],
    [-7.9375, `${MINUS}5/16`],
    [25.4, "1"],
    [12.7, "1/2"],
    [0, "0"],
    [84, "≈3 5/16"],
    [0.2, "≈0"],
    [-0.2, "≈0"],
    [100, "≈3 15/16"],
    [Number.NaN, "NaN"],
  ])("%d mm stands as %j", (lengthMm, shown) => {
    expect(inches.show(lengthMm)).toBe(shown);
  });

  it("finer things stand in thousandths", () => {
    expect(inches.showFine(1.5)).toBe("0.059");
    expect(inches.showFine(-25.4)).toBe(`${MINUS}1.000`);
    expect(mm.showFine(0.25)).toBe("0.25");
    expect(mm.showFine(1.5)).toBe("1.5");
    expect(mm.showFine(-0.001)).toBe("0.0");
  });

  it("every sixteenth of an inch is shown exactly and read back as the same number of mm", () => {
    const wrong = SIXTEENTHS.map((sixteenths) => fromInches(sixteenths / 16)).filter(
      (lengthMm) => inches.show(lengthMm).includes("≈") || inches.read(inches.show(lengthMm)) !== lengthMm,
    );
    expect(wrong).toEqual([]);
  });

  it("a sixteenth typed in inches is the very number that its decimal mm are", () => {
    const wrong = SIXTEENTHS.filter((sixteenths) => sixteenths >= 0).filter((sixteenths) => {
      const asMm = (sixteenths * 15_875) / 10_000;
      const typed = `${Math.floor(sixteenths / 16)} ${sixteenths % 16}/16`;
      return inches.read(typed) !== asMm || readLengthMm(String(asMm), "mm") !== asMm;
    });
    expect(wrong).toEqual([]);
  });

  it("what is shown lies within half a sixteenth, and says so unless it is exact", () => {
    fc.assert(
      fc.property(fc.double({ min: -5000, max: 5000, noNaN: true }), (lengthMm) => {
        const shown = inches.show(lengthMm);
        const missMm = Math.abs((inches.read(shown) ?? Number.NaN) - lengthMm);
        expect(missMm).toBeLessThanOrEqual(HALF_A_SIXTEENTH_MM + 1e-9);
        expect(shown.startsWith("≈")).toBe(missMm > 0.001);
      }),
      { seed: 5 },
    );
  });
});
