import { expect, it } from "vitest";
import type { Block } from "../../../core/book/blocks.ts";
import { flowEvenly } from "../../../core/book/flow-evenly.ts";
import { circleMark } from "../../../core/book/marks.ts";

const block = (heightMm: number): Block => ({
  heightMm,
  draw: (corner) => [circleMark(corner, 1, "thin")],
});
const area = { left: 0, right: 100, bottom: 0, top: 200 };
const counts = (heights: readonly number[]) =>
  flowEvenly(heights.map(block), area).map((page) => page.length);

it("a last page is not left with one block where its neighbour can give it some", () => {
  expect(counts([50, 50, 50, 50, 50])).toEqual([3, 2]);
  expect(counts([60, 60, 60, 60])).toEqual([2, 2]);
  expect(counts([50, 50, 50, 50, 50, 50, 50, 50, 50])).toEqual([3, 3, 3]);
});

it("no page more is taken than the blocks need, and none runs over its foot", () => {
  expect(counts([50, 50, 50, 50])).toEqual([4]);
  expect(counts([150, 150, 40])).toEqual([1, 2]);
  for (const page of flowEvenly([70, 70, 70, 70, 70].map(block), area))
    for (const mark of page) if (mark.kind === "circle") expect(mark.centre.y).toBeGreaterThanOrEqual(70);
});
