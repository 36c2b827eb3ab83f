import { at } from "../foundation/index.ts";
import type { Bin } from "./field.ts";
import { layoutOf } from "./layout-of.ts";
import { binOf, type Prepared, prepareProblem, rollWidth, sizeAt } from "./prepare.ts";
import { type RectanglePiece, type RectangleSearch, startRectangles, stepRectangles } from "./rectangles.ts";
import { type StepBudget, startSearch, stepSearch } from "./search.ts";
import type { Search } from "./search-state.ts";
import { type Shape, turnBy } from "./shapes.ts";
import type { Layout, PackingPiece, PackingProblem } from "./types.ts";

/**
 * A search for a layout as it stands after some steps: plain data that can be kept, sent to a worker and taken up
 * again. Rectangles have a rule of their own, which finds exact fits; everything else is laid by its outline.
 */
export type Packing =
  | { readonly kind: "outlines"; readonly search: Search }
  | { readonly kind: "rectangles"; readonly prepared: Prepared; readonly search: RectangleSearch };

/** Orders of rectangles that count as one sweep. */
const ORDERS_PER_SWEEP = 50;

/** A search at its beginning. The same problem, seed and steps give the same layout everywhere. */
export function startPacking(problem: PackingProblem, seed: number): Packing {
  const prepared = prepareProblem(problem);
  if (!problem.pieces.every(isRectangle)) return { kind: "outlines", search: startSearch(prepared, seed) };
  const pieces = prepared.shapes.map(rectangleOf);
  return { kind: "rectangles", prepared, search: startRectangles(pieces, rectangleBins(prepared), seed) };
}

/** The search some sweeps later; the one given stays as it was. */
export function stepPacking(packing: Packing, budget: StepBudget): Packing {
  return packing.kind === "outlines"
    ? { ...packing, search: stepSearch(packing.search, budget) }
    : { ...packing, search: stepRectangles(packing.search, budget.sweeps * ORDERS_PER_SWEEP) };
}

/** The best layout so far; undefined before the first one is found. */
export function bestLayout(packing: Packing): Layout | undefined {
  if (packing.kind === "outlines") {
    return layoutOf(packing.search.prepared, packing.search.incumbent);
  }
  const { prepared, search } = packing;
  const laid = search.best.spots.flatMap((spot, piece) => (spot === undefined ? [] : [{ spot, piece }]));
  return layoutOf(prepared, {
    pieces: laid.map(({ piece }) => piece),
    bins: search.bins.slice(0, search.best.binsUsed),
    lie: {
      bins: Int32Array.from(laid, ({ spot }) => spot.bin),
      variants: Int32Array.from(laid, ({ spot }) => spot.turn),
      xs: Float64Array.from(laid, ({ spot }) => spot.x),
      ys: Float64Array.from(laid, ({ spot }) => spot.y),
    },
  });
}

/** Whether nothing is left to try. */
export const isPackingDone = (packing: Packing): boolean =>
  packing.kind === "outlines" && packing.search.phase === "done";

/** Corners square to this share of the sides. */
const SQUARE = 1e-9;

/** Whether a piece is a free rectangle that lies along the sheet at each of its angles. */
function isRectangle({ outline, holes, anglesRad, lockedAt }: PackingPiece): boolean {
  if (outline.length !== 4 || holes.length > 0 || lockedAt !== undefined) return false;
  return anglesRad.every((angleRad) => {
    const corners = outline.map(turnBy(angleRad));
    return corners.every((corner, index) => {
      const next = at(corners, (index + 1) % 4);
      const [dx, dy] = [Math.abs(next.x - corner.x), Math.abs(next.y - corner.y)];
      return Math.min(dx, dy) <= SQUARE * Math.max(dx, dy);
    });
  });
}

const rectangleOf = ({ variants }: Shape): RectanglePiece => ({
  turns: variants.map(({ width, height }) => ({ width, height })),
});

/** One endless bin of a roll; of sheets as many as there are, at most one for each piece. */
function rectangleBins(prepared: Prepared): readonly Bin[] {
  const { stock } = prepared.problem;
  if (stock.kind === "roll") return [{ length: Number.POSITIVE_INFINITY, width: rollWidth(prepared) }];
  return prepared.shapes.flatMap((_, index) => {
    const size = sizeAt(prepared, index);
    return size === undefined ? [] : [binOf(size, prepared.inset)];
  });
}
