import { describe, expect, it } from "vitest";
import { type LaidGroup, layoutRank } from "../../../core/stock/index.ts";

/** Whole sheets of 1250 by 600 mm; the stock's area is said where the last one is smaller. */
const laid = (
  sheets: number,
  unplaced: number,
  offcutAreaMm2: number,
  sheetAreaMm2 = sheets * 750_000,
): LaidGroup => ({
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
    sheetAreaMm2,
    pieceAreaMm2: 0,
    offcutAreaMm2,
    wasteShare: 0,
    price: undefined,
    wastePrice: undefined,
  },
});

/** Whether one rank comes before another, by its first figure that differs. */
const isBefore = (one: LaidGroup, other: LaidGroup): boolean => {
  const [a, b] = [layoutRank(one), layoutRank(other)];
  const index = a.findIndex((figure, i) => figure !== b[i]);
  return (a[index] ?? 0) < (b[index] ?? 0);
};

describe("the rank of a layout", () => {
  it.each([
    ["that places more pieces comes first, whatever it takes", laid(5, 0, 0), laid(1, 1, 9)],
    ["that takes fewer sheets comes first", laid(3, 0, 0), laid(4, 0, 9)],
    ["that takes two offcuts for a whole sheet comes first", laid(4, 0, 0, 2_100_000), laid(3, 0, 9)],
    ["that takes one sheet for two as large comes first", laid(2, 0, 0), laid(3, 0, 9, 1_500_000)],
    ["that leaves the larger offcut comes first", laid(3, 0, 2), laid(3, 0, 1)],
  ])("%s", (_words, better, worse) => {
    expect(isBefore(better, worse)).toBe(true);
    expect(isBefore(worse, better)).toBe(false);
  });
});
