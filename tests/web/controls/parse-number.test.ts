import { describe, expect, it } from "vitest";
import { parseLengthMm, parseNumber, showNumber } from "../../../web/controls/index.ts";

describe("numbers as people type them", () => {
  it.each([
    ["12", 12],
    [" 12.5 ", 12.5],
    ["12,5", 12.5],
    ["\u221212,5", -12.5],
    ["1 200", 1200],
    [".5", 0.5],
    ["3/8", 0.375],
    ["-1 1/2", -1.5],
    ["1e9", 1e9],
  ])("reads %j as %d", (text, value) => {
    expect(parseNumber(text)).toBe(value);
  });

  it.each(["", "-", "abc", "1.2.3", "1/0", "12 mm x", "NaN", "Infinity"])("finds no number in %j", (text) => {
    expect(parseNumber(text)).toBeUndefined();
  });

  it("reads inches as 25.4 mm each", () => {
    expect(parseLengthMm('1 1/2"')).toBeCloseTo(38.1, 9);
    expect(parseLengthMm("2 in")).toBeCloseTo(50.8, 9);
    expect(parseLengthMm("20 mm")).toBe(20);
  });

  it("shows no more decimals than a number has, and a true minus sign", () => {
    expect(showNumber(10, 2)).toBe("10");
    expect(showNumber(-0.806, 2)).toBe("\u22120.81");
    expect(showNumber(Number.NaN, 2)).toBe("NaN");
  });

  it("reads back what it shows", () => {
    for (const value of [0, -3.25, 1250, 0.01]) expect(parseNumber(showNumber(value, 2))).toBe(value);
  });
});
