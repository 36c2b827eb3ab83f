import { at } from "../foundation/index.ts";
import type { Bin, Spot } from "./field.ts";
import { prepareShape, type Shape, UNITS_PER_MM } from "./shapes.ts";
import type { PackingLoop, PackingProblem, Placement, SheetSize } from "./types.ts";

/** A problem made ready for the search; it never changes while one runs. */
export interface Prepared {
  readonly problem: PackingProblem;
  /** One for each piece of the problem that fits the stock. */
  readonly pieceIds: readonly string[];
  readonly shapes: readonly Shape[];
  /** Where each has to lie; undefined where it is free. */
  readonly locked: readonly (Spot | undefined)[];
  /** Sheets in the order in which they are taken: the largest first. Empty on a roll. */
  readonly sizes: readonly SheetSize[];
  readonly tooLarge: readonly string[];
  /** What is added to a place in a bin to give its place on the sheet, units. */
  readonly inset: number;
}

/** Rounding may take this much of the margin, units; without it a piece of just the right size would not fit. */
const MARGIN_SLACK = 4;

/** Pieces with the same outline and angles share one shape. Pieces that fit no sheet at any of their angles are named. */
export function prepareProblem(problem: PackingProblem): Prepared {
  const slack = problem.marginMm > 0 ? MARGIN_SLACK : 0;
  const inset = Math.round((problem.marginMm - problem.clearanceMm / 2) * UNITS_PER_MM) - slack;
  const { stock } = problem;
  const sizes =
    stock.kind === "sheets"
      ? stock.sizes
          .filter(({ quantity }) => quantity !== 0)
          .toSorted((a, b) => b.lengthMm * b.widthMm - a.lengthMm * a.widthMm)
      : [];
  const bins =
    stock.kind === "roll"
      ? [{ length: Number.POSITIVE_INFINITY, width: innerSize(stock.widthMm, inset) }]
      : sizes.map((size) => binOf(size, inset));
  const made = new Map<PackingLoop, Shape>();
  const prepared = problem.pieces.map((typed) => {
    const { lockedAt } = typed;
    const piece = lockedAt === undefined ? typed : { ...typed, anglesRad: [lockedAt.angleRad] };
    const known = lockedAt === undefined ? made.get(piece.outline) : undefined;
    const shape = known ?? prepareShape(piece, problem.clearanceMm);
    if (lockedAt === undefined) made.set(piece.outline, shape);
    const locked = lockedAt === undefined ? undefined : lockedSpot(lockedAt, shape, inset);
    return {
      id: piece.id,
      shape,
      locked,
      fits: locked !== undefined || bins.some((bin) => fits(shape, bin)),
    };
  });
  const fitting = prepared.filter((piece) => piece.fits);
  return {
    problem,
    pieceIds: fitting.map(({ id }) => id),
    shapes: fitting.map(({ shape }) => shape),
    locked: fitting.map(({ locked }) => locked),
    sizes,
    tooLarge: prepared.filter((piece) => !piece.fits).map(({ id }) => id),
    inset,
  };
}

function lockedSpot({ sheet, x, y }: Omit<Placement, "pieceId">, shape: Shape, inset: number): Spot {
  const { shiftX, shiftY } = at(shape.variants, 0);
  return {
    bin: sheet,
    variant: 0,
    x: Math.round(x * UNITS_PER_MM) - inset - shiftX,
    y: Math.round(y * UNITS_PER_MM) - inset - shiftY,
  };
}

const fits = ({ variants }: Shape, { length, width }: Bin): boolean =>
  variants.some((variant) => variant.width <= length && variant.height <= width);

export const binOf = ({ lengthMm, widthMm }: SheetSize, inset: number): Bin => ({
  length: innerSize(lengthMm, inset),
  width: innerSize(widthMm, inset),
});

/** The width of the roll that pieces may take, units. */
export function rollWidth({ problem, inset }: Prepared): number {
  return problem.stock.kind === "roll" ? innerSize(problem.stock.widthMm, inset) : 0;
}

const innerSize = (sizeMm: number, inset: number): number => Math.floor(sizeMm * UNITS_PER_MM) - 2 * inset;

/** The size of the sheet that is taken at an index; undefined once the stock is used up. */
export function sizeAt({ sizes }: Prepared, index: number): SheetSize | undefined {
  let before = 0;
  for (const size of sizes) {
    before += size.quantity ?? Number.POSITIVE_INFINITY;
    if (index < before) return size;
  }
  return undefined;
}
