import { describe, expect, it } from "vitest";
import { isBetterLayout, type LaidGroup } from "../../../core/stock/index.ts";

const laid = (sheets: number, unplaced: number, offcutAreaMm2: number): LaidGroup => ({
  groupId: "xps-10",
  name: "XPS",
  standing: "laid here",
  pieceIds: [],
  sheets: Array.from({ length: sheets }, () => ({
    stockId: "a",
    lengthMm: 1250,
    widthMm: 600,
    usedMm: 1000,
    pieces: [],
    cuts: [],
  })),
  unplaced: Array.from({ length: unplaced }, (_, i) => `S${i}`),
  figures: {
    sheetAreaMm2: 0,
    pieceAreaMm2: 0,
    offcutAreaMm2,
    wasteShare: 0,
    price: undefined,
    wastePrice: undefined,
  },
});

describe("the better of two layouts", () => {
  it.each([
    ["places more pieces, whatever it takes", laid(5, 0, 0), laid(1, 1, 9)],
    ["takes fewer sheets", laid(3, 0, 0), laid(4, 0, 9)],
    ["leaves the larger offcut", laid(3, 0, 2), laid(3, 0, 1)],
  ])("%s", (_words, better, worse) => {
    expect(isBetterLayout(better, worse)).toBe(true);
    expect(isBetterLayout(worse, better)).toBe(false);
  });

  it("is neither of two that are alike", () => {
    expect(isBetterLayout(laid(2, 0, 1), laid(2, 0, 1))).toBe(false);
  });
});
