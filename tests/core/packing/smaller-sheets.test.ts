import { describe, expect, it } from "vitest";
import {
  type Layout,
  type PackingPiece,
  type PackingProblem,
  packWithin,
  type SheetSize,
  verifyLayout,
} from "../../../core/packing/index.ts";
import { piece, rectangle, triangle } from "./pieces.ts";

const whole: SheetSize = { id: "whole", lengthMm: 1000, widthMm: 500, quantity: undefined };
const offcut = (
  id: string,
  lengthMm: number,
  widthMm: number,
  quantity: number | undefined = 1,
): SheetSize => ({
  id,
  lengthMm,
  widthMm,
  quantity,
});

/** Right-angled, 400 by 230 mm: two make a rectangle, and eight are all that a whole sheet takes. */
const wedges = (count: number): readonly PackingPiece[] =>
  Array.from({ length: count }, (_, k) => piece(`w${k}`, triangle(400, 230)));

const onStock = (pieces: readonly PackingPiece[], sizes: readonly SheetSize[]): PackingProblem => ({
  pieces,
  stock: { kind: "sheets", sizes },
  clearanceMm: 2,
  marginMm: 2,
});

/** The layout after a run, and its sheets by name; sound, complete and with no more sheets than there are. */
function laidOn(problem: PackingProblem): readonly string[] {
  const layout = packWithin(problem, 1, { kind: "sweeps", sweeps: 400 });
  expect(layout && verifyLayout(problem, layout)).toEqual([]);
  expect(layout?.unplaced).toEqual([]);
  const names = layout?.sheets.map(({ sizeId }) => sizeId ?? "") ?? [];
  const sizes = problem.stock.kind === "sheets" ? problem.stock.sizes : [];
  for (const { id, quantity = Number.POSITIVE_INFINITY } of sizes)
    expect(names.filter((name) => name === id).length).toBeLessThanOrEqual(quantity);
  expectSizes(layout, sizes);
  return names;
}

/** Every sheet of the layout is as large as the stock it is named after. */
function expectSizes(layout: Layout | undefined, sizes: readonly SheetSize[]): void {
  for (const { sizeId, lengthMm, widthMm } of layout?.sheets ?? [])
    expect(sizes.find(({ id }) => id === sizeId)).toMatchObject({ lengthMm, widthMm });
}

describe("stock of several sizes", () => {
  it("lays what is left over on the smallest sheet that takes it", () => {
    const sizes = [whole, offcut("half", 500, 500), offcut("rest", 430, 260), offcut("chip", 300, 200)];
    expect(laidOn(onStock(wedges(9), sizes))).toEqual(["whole", "rest"]);
  });

  it("takes two offcuts rather than one more whole sheet", () => {
    const sizes = [whole, offcut("rest", 430, 260, 2)];
    expect(laidOn(onStock(wedges(12), sizes))).toEqual(["whole", "rest", "rest"]);
  });

  it("keeps the whole sheet where the offcuts are too small, or together larger than it", () => {
    expect(laidOn(onStock(wedges(9), [whole, offcut("chip", 390, 400)]))).toEqual(["whole", "whole"]);
    const rows = Array.from({ length: 3 }, (_, k) =>
      piece(`r${k}`, [...rectangle(600, 150), { x: -5, y: 75 }]),
    );
    expect(laidOn(onStock(rows, [whole, offcut("row", 640, 280, 3)]))).toEqual(["whole"]);
  });

  it("spares a whole sheet by moving pieces of the other sheets onto an offcut", () => {
    // A sheet is full with eight wedges, and no offcut takes one: the bar has to go there, though alone on a whole
    // sheet it would leave less of it than two wedges do.
    const bar = piece("bar", [...rectangle(650, 80), { x: -5, y: 40 }]);
    expect(laidOn(onStock([...wedges(8), bar], [whole, offcut("lath", 700, 100)]))).toEqual([
      "whole",
      "lath",
    ]);
  });

  it("leaves a locked piece of the last sheet where it is", () => {
    const lockedAt = { sheet: 1, angleRad: 0, x: 500, y: 100 };
    const pieces = wedges(9).map((wedge, k) => (k === 8 ? { ...wedge, lockedAt } : wedge));
    const problem = onStock(pieces, [whole, offcut("rest", 430, 260)]);
    const layout = packWithin(problem, 1, { kind: "sweeps", sweeps: 200 });
    expect(layout?.sheets.map(({ sizeId }) => sizeId)).toEqual(["whole", "whole"]);
    expect(layout?.placements.find(({ pieceId }) => pieceId === "w8")).toEqual({
      pieceId: "w8",
      ...lockedAt,
    });
  });
});
