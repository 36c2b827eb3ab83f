import { describe, expect, it } from "vitest";
import { rowsInView, scrollToRow } from "../../../web/history/rows-in-view.ts";

describe("a long list", () => {
  it("draws the rows that are seen and a few to spare, however many there are", () => {
    expect(rowsInView(5000, 32, { topPx: 32_000, heightPx: 640 })).toEqual({ first: 994, end: 1026 });
    expect(rowsInView(5000, 32, { topPx: 0, heightPx: 640 })).toEqual({ first: 0, end: 26 });
    expect(rowsInView(5000, 32, { topPx: 5000 * 32 - 640, heightPx: 640 })).toEqual({
      first: 4974,
      end: 5000,
    });
  });

  it("draws nothing where there is nothing, and stays in bounds when it was scrolled farther", () => {
    expect(rowsInView(0, 32, { topPx: 0, heightPx: 640 })).toEqual({ first: 0, end: 0 });
    expect(rowsInView(3, 32, { topPx: 9000, heightPx: 640 })).toEqual({ first: 0, end: 3 });
  });

  it("scrolls no farther than it takes to see a row with one beside it", () => {
    const seen = { topPx: 320, heightPx: 320 };
    expect(scrollToRow(15, 32, seen)).toBe(320);
    expect(scrollToRow(19, 32, seen)).toBe(352);
    expect(scrollToRow(10, 32, seen)).toBe(288);
    expect(scrollToRow(0, 32, seen)).toBe(0);
  });
});
