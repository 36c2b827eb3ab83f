import { describe, expect, it } from "vitest";
import { evaluateSum } from "../../../web/tools/index.ts";

describe("typed sums", () => {
  it.each([
    ["128.4", 128.4],
    ["128,4", 128.4],
    ["1250/2-18", 607],
    ["−12", -12],
    ["2*(30+4.5)", 69],
    ["100 - 20 - 30", 50],
    ["90°", 90],
    ["300 mm", 300],
    ["3 × 4", 12],
  ])("%s is %d", (text, value) => {
    expect(evaluateSum(text)).toBeCloseTo(value, 12);
  });

  it.each(["", "twelve", "12 13", "1/0", "(3", "3)", "1..2", "--"])("%s is no number", (text) => {
    expect(evaluateSum(text)).toBeUndefined();
  });
});
