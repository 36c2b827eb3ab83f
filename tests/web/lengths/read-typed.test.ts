import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readLengthMm, readNumber } from "../../../web/lengths/index.ts";

/** Rounding noise of a few operations on numbers of a tray. */
const NOISE = 1e-9;

describe("lengths as people type them", () => {
  it.each([
    ["128.4", 128.4],
    [" 128,4 ", 128.4],
    [".5", 0.5],
    ["\u221212,5", -12.5],
    ["1 200", 1200],
    ["1 200/2", 600],
    ["12 345,5", 12345.5],
    ["1250/2-18", 607],
    ["2*(30+4.5)", 69],
    ["3 × 4", 12],
    ["100 - 20 - 30", 50],
    ["300 mm", 300],
    ["2 cm", 20],
    ["1 m", 1000],
    ["1,2 m - 15", 1185],
    ["3 5/16 in", 84.1375],
    ['3 5/16"', 84.1375],
    ["3 5/16 in + 20 mm", 104.1375],
    ["3 in / 2", 38.1],
    ["1e3", 1000],
  ])("in mm, %j is %d mm", (text, lengthMm) => {
    expect(readLengthMm(text, "mm")).toBe(lengthMm);
  });

  it.each([
    ["3 5/16", 84.1375],
    ["-3 5/16", -84.1375],
    ["5/16", 7.9375],
    ["3.3125", 84.1375],
    ["3½", 88.9],
    ["≈ 3 5/16", 84.1375],
    ["20 mm", 20],
    ["2 cm", 20],
    ["3 + 5/16 - 1 1/8", 55.5625],
    ["48/2 - 3/4", 590.55],
    ["1250/2-18 mm", 607],
    ["10 in + 2.6 mm", 256.6],
    ["3 + 4 mm + 1 in", 105.6],
  ])("in inches, %j is %d mm", (text, lengthMm) => {
    expect(readLengthMm(text, "inch")).toBe(lengthMm);
  });

  it("takes a dash between whole and fraction for a minus: sums come first", () => {
    expect(readLengthMm("3-5/16", "inch")).toBe(readLengthMm("2 11/16", "inch"));
  });

  it.each([
    "",
    " ",
    "-",
    "twelve",
    "12 13",
    "1.2.3",
    "1..2",
    "1/0",
    "(3",
    "3)",
    "--",
    "12 mm x",
    "NaN",
    "Infinity",
  ])("%j is no length", (text) => {
    expect(readLengthMm(text, "mm")).toBeUndefined();
    expect(readLengthMm(text, "inch")).toBeUndefined();
  });

  it.each(["2 mm * 3 mm", "4 / 2 mm / 3 mm", "3 mm in", "3 in mm"])(
    "%j is no length: units do not fit",
    (text) => {
      expect(readLengthMm(text, "mm")).toBeUndefined();
    },
  );

  it("reads any sum as arithmetic reads it", () => {
    const number = fc.integer({ min: 1, max: 4000 }).map((tenths) => String(tenths / 10));
    const sum = fc.letrec<{ sum: string; term: string }>((tie) => ({
      term: fc.oneof(
        { weight: 3, arbitrary: number },
        { weight: 1, arbitrary: tie("sum").map((s) => `(${s})`) },
      ),
      sum: fc
        .array(fc.tuple(fc.constantFrom("+", "-", "*", "/"), tie("term")), { minLength: 1, maxLength: 4 })
        .map((parts) => parts.reduce((text, [sign, term]) => `${text}${sign}${term}`, "7")),
    })).sum;
    fc.assert(
      fc.property(sum, (text) => {
        // The language's own arithmetic is the judge.
        const judged: number = new Function(`return ${text}`)();
        const read = readLengthMm(text, "mm");
        if (Number.isFinite(judged))
          expect(Math.abs((read ?? Number.NaN) - judged)).toBeLessThanOrEqual(
            NOISE * Math.max(1, Math.abs(judged)),
          );
        else expect(read).toBeUndefined();
      }),
      { seed: 4, numRuns: 300 },
    );
  });
});

describe("numbers that are no lengths", () => {
  it.each([
    ["90°", 90],
    ["90-12,5", 77.5],
    ["-1 1/2", -1.5],
    ["35 %", 35],
    ["1e9", 1e9],
  ])("%j is %d", (text, value) => {
    expect(readNumber(text)).toBe(value);
  });

  it("have no units of length", () => {
    expect(readNumber("12 mm")).toBeUndefined();
  });
});
