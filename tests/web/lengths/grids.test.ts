import { describe, expect, it } from "vitest";
import { gridIn, lengthsIn, stepFor, widerGrid, wordGrid } from "../../../web/lengths/index.ts";

describe("steps of rulers and grids", () => {
  it("are round in the units that are read", () => {
    expect(stepFor("mm", 0.35, 56)).toBe(200);
    expect(stepFor("inch", 0.35, 56)).toBeCloseTo(12 * 25.4, 9);
    expect(stepFor("inch", 40, 56)).toBeCloseTo(25.4 / 16, 9);
  });

  it("a grid of 10 mm is one of half an inch", () => {
    expect(gridIn("inch", 10)).toBe(12.7);
    expect(gridIn("mm", 10)).toBe(10);
  });

  it("a grid too fine for the hand gives way to the next round one", () => {
    expect(widerGrid("mm", 10)).toBe(100);
    expect(widerGrid("inch", 12.7)).toBe(25.4);
  });

  it("says its step without needless decimals", () => {
    expect(wordGrid(lengthsIn("mm"), 10)).toBe("10");
    expect(wordGrid(lengthsIn("inch"), 12.7)).toBe("1/2");
    expect(wordGrid(lengthsIn("mm"), -200)).toBe("\u2212200");
  });
});
