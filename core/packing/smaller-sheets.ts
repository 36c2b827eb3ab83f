import { ringArea } from "./rings.ts";
import type { LaidSheet, Layout, PackingPiece, PackingProblem, SheetSize } from "./types.ts";
import { verifyLayout } from "./verify-layout.ts";

/** Lays a problem anew, for as long as the caller sees fit. */
export type LayAnew = (problem: PackingProblem) => Layout | undefined;

/** Pieces that would fill more than this share of the sheets' area are not tried on them. */
const FULLEST = 0.95;

/**
 * The same pieces on less stock, where sheets have several sizes. First the last sheet is given up and all pieces are
 * tried on the others with smaller sheets beside them; then those on the last sheet are tried on the smallest sheet
 * that may take them, and on several. A new layout is taken only with every piece placed, on less area of stock, and
 * with nothing found wrong by the exact verdict.
 */
export function onSmallerSheets(problem: PackingProblem, layout: Layout, layAnew: LayAnew): Layout {
  const { stock } = problem;
  if (stock.kind !== "sheets" || stock.sizes.length < 2 || layout.unplaced.length > 0) return layout;
  const spared = withoutLast(problem, stock.sizes, layout, layAnew) ?? layout;
  return withLastExchanged(problem, stock.sizes, spared, layAnew) ?? spared;
}

/** All pieces laid on the sheets before the last one, and on smaller ones in its place. */
function withoutLast(
  problem: PackingProblem,
  sizes: readonly SheetSize[],
  layout: Layout,
  layAnew: LayAnew,
): Layout | undefined {
  const before = layout.sheets.slice(0, -1);
  const kept = sizes.map((size) => ({ ...size, quantity: countOf(size, before) }));
  const kit = [...kept, ...smallerThanLast(sizes, layout)];
  const laid = tried(problem, kit, layAnew);
  return laid !== undefined && areaOfSheets(laid.sheets) < areaOfSheets(layout.sheets) ? laid : undefined;
}

/** The pieces of the last sheet laid on one smaller sheet, the smallest first, or on several. */
function withLastExchanged(
  problem: PackingProblem,
  sizes: readonly SheetSize[],
  layout: Layout,
  layAnew: LayAnew,
): Layout | undefined {
  const index = layout.sheets.length - 1;
  const smaller = smallerThanLast(sizes, layout);
  const kits = [...smaller.map((size) => [{ ...size, quantity: 1 }]), smaller];
  const others = layout.placements.filter(({ sheet }) => sheet !== index);
  const pieces = problem.pieces.flatMap((piece) =>
    others.some(({ pieceId }) => pieceId === piece.id) ? [] : [onFirstSheet(piece)],
  );
  for (const kit of kits) {
    const laid = tried({ ...problem, pieces }, kit, layAnew);
    if (laid === undefined) continue;
    const sheets = [...layout.sheets.slice(0, -1), ...laid.sheets];
    if (areaOfSheets(sheets) >= areaOfSheets(layout.sheets)) continue;
    const moved = laid.placements.map((placement) => ({ ...placement, sheet: placement.sheet + index }));
    return { sheets, placements: [...others, ...moved], unplaced: [] };
  }
  return undefined;
}

const onFirstSheet = ({ lockedAt, ...piece }: PackingPiece): PackingPiece =>
  lockedAt === undefined ? piece : { ...piece, lockedAt: { ...lockedAt, sheet: 0 } };

/** A sound layout with every piece on these sheets; undefined where there is none, or plainly cannot be one. */
function tried(problem: PackingProblem, sizes: readonly SheetSize[], layAnew: LayAnew): Layout | undefined {
  const room = sizes.reduce(
    (sum, size) => sum + areaOf(size) * (size.quantity ?? Number.POSITIVE_INFINITY),
    0,
  );
  const needed = problem.pieces.reduce((sum, piece) => sum + areaOfPiece(piece), 0);
  if (needed > room * FULLEST) return undefined;
  const asked: PackingProblem = { ...problem, stock: { kind: "sheets", sizes } };
  const laid = layAnew(asked);
  if (laid === undefined || laid.unplaced.length > 0) return undefined;
  return verifyLayout(asked, laid).length === 0 ? laid : undefined;
}

/** What is left of sizes smaller than the last sheet, the smallest first. */
function smallerThanLast(sizes: readonly SheetSize[], { sheets }: Layout): readonly SheetSize[] {
  const last = sheets.at(-1);
  if (last === undefined) return [];
  return sizes
    .map((size) => ({
      ...size,
      quantity: size.quantity === undefined ? undefined : size.quantity - countOf(size, sheets),
    }))
    .filter((size) => size.quantity !== 0 && areaOf(size) < areaOf(last))
    .toSorted((a, b) => areaOf(a) - areaOf(b));
}

const countOf = ({ id }: SheetSize, sheets: readonly LaidSheet[]): number =>
  sheets.filter(({ sizeId }) => sizeId === id).length;

const areaOf = ({ lengthMm, widthMm }: Pick<SheetSize, "lengthMm" | "widthMm">): number => lengthMm * widthMm;

const areaOfSheets = (sheets: readonly LaidSheet[]): number =>
  sheets.reduce((sum, sheet) => sum + areaOf(sheet), 0);

const areaOfPiece = ({ outline, holes }: PackingPiece): number =>
  holes.reduce((sum, hole) => sum - Math.abs(ringArea(hole)), Math.abs(ringArea(outline)));
