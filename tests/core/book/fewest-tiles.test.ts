import { describe, expect, it } from "vitest";
import { fewestTiles } from "../../../core/book/fewest-tiles.ts";
import { lineMark, paper } from "../../../core/book/marks.ts";

/** Pages of 100 by 100 mm, edge to edge. */
const pages = (columns: number, rows: number) =>
  Array.from({ length: columns * rows }, (_, i) => {
    const [left, bottom] = [100 * (i % columns), 100 * Math.floor(i / columns)];
    return { left, bottom, right: left + 100, top: bottom + 100 };
  });

describe("a rib on pages with room to spare", () => {
  it("is moved so that it crosses the fewest of them", () => {
    // Two uprights 60 apart and a step: at the lower left it lies on three pages, moved right on two.
    const step = lineMark([paper(70, 5), paper(70, 90), paper(130, 90), paper(130, 150)], "cut");
    const { right, up } = fewestTiles([step], pages(2, 2), { right: 65, up: 40 });
    const onPages = pages(2, 2).filter(({ left, bottom, right: r, top }) =>
      // Judged by points a millimetre apart along the line.
      [
        ...Array.from({ length: 86 }, (_, i) => [70, 5 + i]),
        ...Array.from({ length: 61 }, (_, i) => [70 + i, 90]),
        ...Array.from({ length: 61 }, (_, i) => [130, 90 + i]),
      ].some(([x = 0, y = 0]) => x + right > left && x + right < r && y + up > bottom && y + up < top),
    );
    expect(onPages).toHaveLength(2);
  });

  it("stays where it is where no move saves a page", () => {
    const level = lineMark([paper(10, 10), paper(190, 10)], "cut");
    expect(fewestTiles([level], pages(2, 1), { right: 5, up: 80 })).toEqual({ right: 0, up: 0 });
  });
});
