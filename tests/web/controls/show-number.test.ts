import { expect, it } from "vitest";
import { showNumber } from "../../../web/controls/index.ts";
import { readNumber } from "../../../web/lengths/index.ts";

it("a number is shown with no more decimals than it has, and a true minus sign", () => {
  expect(showNumber(10, 2)).toBe("10");
  expect(showNumber(-0.806, 2)).toBe("\u22120.81");
  expect(showNumber(Number.NaN, 2)).toBe("NaN");
});

it("a number reads back as it is shown", () => {
  for (const value of [0, -3.25, 1250, 0.01]) expect(readNumber(showNumber(value, 2))).toBe(value);
});
