import { at } from "../foundation/index.ts";
import {
  type Layout,
  type LayoutFault,
  type PackingLoop,
  type PackingPiece,
  type Placement,
  verifyLayout,
} from "../packing/index.ts";
import { cutOrder } from "./cut-order.ts";
import type { LaidGroup, LaidPiece, LaidStockSheet, StockFigures, StockGroup } from "./types.ts";

/** A layout of a group with what a builder needs of it, and what the exact verdict finds wrong with it. */
export interface JudgedGroup {
  readonly laid: LaidGroup;
  readonly faults: readonly LayoutFault[];
}

/** The group laid as `layout` says, judged by the exact verifier; `locked` names the pieces that are to stay. */
export function judgeLayout(
  group: StockGroup,
  layout: Layout,
  standing: LaidGroup["standing"],
  locked: ReadonlySet<string>,
): JudgedGroup {
  const { problem } = group;
  const faults = verifyLayout(problem, layout);
  const wrong = new Set(faults.flatMap((fault) => ("pieceIds" in fault ? fault.pieceIds : [fault.pieceId])));
  const pieceOf = (id: string) => problem.pieces.find((piece) => piece.id === id);
  const sheets = layout.sheets.map(({ sizeId, lengthMm, widthMm }, index): LaidStockSheet => {
    const pieces = layout.placements
      .filter(({ sheet }) => sheet === index)
      .flatMap((placement): readonly LaidPiece[] => {
        const piece = pieceOf(placement.pieceId);
        if (piece === undefined) return [];
        const { pieceId, angleRad, x, y } = placement;
        const linesMm = placedLines(piece, placement);
        return [
          { pieceId, angleRad, x, y, locked: locked.has(pieceId), isWrong: wrong.has(pieceId), linesMm },
        ];
      });
    const usedMm = Math.max(
      0,
      ...pieces.flatMap(({ linesMm }) => linesMm.flatMap((loop) => loop.map(({ x }) => x))),
    );
    return {
      stockId: sizeId ?? "",
      lengthMm,
      widthMm,
      usedMm,
      pieces,
      cuts: cutOrder(pieces, lengthMm, widthMm),
    };
  });
  const placed = new Set(layout.placements.map(({ pieceId }) => pieceId));
  const unplaced = problem.pieces.filter(({ id }) => !placed.has(id)).map(({ id }) => id);
  const laid: LaidGroup = {
    groupId: group.id,
    name: group.name,
    standing,
    pieceIds: problem.pieces.map(({ id }) => id),
    sheets,
    unplaced,
    figures: figuresOf(group.prices, sheets),
  };
  return { laid, faults };
}

/** A group that nothing has been laid of. */
export const unlaidGroup = (
  group: { readonly id: string; readonly name: string; readonly pieceIds: readonly string[] },
  standing: "not laid" | "out of date",
): LaidGroup => ({
  groupId: group.id,
  name: group.name,
  standing,
  pieceIds: group.pieceIds,
  sheets: [],
  unplaced: [],
  figures: figuresOf([], []),
});

/** Outline and holes of a piece where it lies, in the sheet's frame. */
export function placedLines(
  { outline, holes }: PackingPiece,
  { angleRad, x, y }: Pick<Placement, "angleRad" | "x" | "y">,
): readonly PackingLoop[] {
  const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
  return [outline, ...holes].map((loop) =>
    loop.map((p) => ({ x: p.x * cos - p.y * sin + x, y: p.x * sin + p.y * cos + y })),
  );
}

function figuresOf(prices: StockGroup["prices"], sheets: readonly LaidStockSheet[]): StockFigures {
  const sheetAreaMm2 = sum(sheets.map(({ lengthMm, widthMm }) => lengthMm * widthMm));
  const pieceAreaMm2 = sum(sheets.flatMap(({ pieces }) => pieces.map(({ linesMm }) => areaOf(linesMm))));
  const last = sheets.at(-1);
  const offcutAreaMm2 = last === undefined ? 0 : Math.max(0, last.lengthMm - last.usedMm) * last.widthMm;
  const takenMm2 = sheetAreaMm2 - offcutAreaMm2;
  const wasteMm2 = takenMm2 - pieceAreaMm2;
  const each = sheets.map(({ stockId }) => prices.find((price) => price.stockId === stockId)?.priceEach);
  const price = each.some((one) => one === undefined) ? undefined : sum(each.map((one) => one ?? 0));
  return {
    sheetAreaMm2,
    pieceAreaMm2,
    offcutAreaMm2,
    wasteShare: takenMm2 > 0 ? wasteMm2 / takenMm2 : 0,
    price,
    wastePrice: price === undefined || sheetAreaMm2 === 0 ? undefined : (price * wasteMm2) / sheetAreaMm2,
  };
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Area of a piece without its holes, mm². */
const areaOf = ([outline = [], ...holes]: readonly PackingLoop[]): number =>
  loopArea(outline) - sum(holes.map(loopArea));

const loopArea = (loop: PackingLoop): number =>
  Math.abs(
    loop.reduce((total, a, index) => {
      const b = at(loop, (index + 1) % loop.length);
      return total + (a.x * b.y - b.x * a.y) / 2;
    }, 0),
  );
