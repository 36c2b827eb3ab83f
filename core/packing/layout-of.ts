import { at } from "../foundation/index.ts";
import { type Prepared, sizeAt } from "./prepare.ts";
import type { Incumbent } from "./search-state.ts";
import { UNITS_PER_MM } from "./shapes.ts";
import type { LaidSheet, Layout, Placement } from "./types.ts";

/**
 * The best lie so far as a layout, mm; prepared pieces that are not in it are named as without a place. Undefined where
 * there is none yet.
 */
export function layoutOf(prepared: Prepared, incumbent: Incumbent | undefined): Layout | undefined {
  const pieces = incumbent?.pieces ?? [];
  const unplaced = [
    ...prepared.tooLarge.map((pieceId) => ({ pieceId, why: "larger-than-stock" as const })),
    ...prepared.pieceIds
      .filter((_, index) => !pieces.includes(index))
      .map((pieceId) => ({ pieceId, why: "stock-full" as const })),
  ];
  if (prepared.shapes.length === 0) return { sheets: [], placements: [], unplaced };
  if (incumbent === undefined) return undefined;
  const { lie } = incumbent;
  const placements = pieces.map((piece, index): Placement => {
    const turned = at(at(prepared.shapes, piece).variants, lie.variants[index] ?? 0);
    const x = (lie.xs[index] ?? 0) + turned.shiftX + prepared.inset;
    const y = (lie.ys[index] ?? 0) + turned.shiftY + prepared.inset;
    return {
      pieceId: at(prepared.pieceIds, piece),
      sheet: lie.bins[index] ?? 0,
      angleRad: turned.angleRad,
      x: x / UNITS_PER_MM,
      y: y / UNITS_PER_MM,
    };
  });
  const used = incumbent.bins.map(() => 0);
  for (const [index, piece] of pieces.entries()) {
    const bin = lie.bins[index] ?? 0;
    const { width } = at(at(prepared.shapes, piece).variants, lie.variants[index] ?? 0);
    used[bin] = Math.max(used[bin] ?? 0, (lie.xs[index] ?? 0) + width + 2 * prepared.inset);
  }
  return {
    sheets: used.map((units, index) => laidSheet(prepared, index, units / UNITS_PER_MM)),
    placements,
    unplaced,
  };
}

function laidSheet(prepared: Prepared, index: number, usedMm: number): LaidSheet {
  const { stock } = prepared.problem;
  if (stock.kind === "roll") return { sizeId: undefined, lengthMm: usedMm, widthMm: stock.widthMm, usedMm };
  const { id, lengthMm, widthMm } = at(
    [sizeAt(prepared, index)].flatMap((size) => size ?? []),
    0,
  );
  return { sizeId: id, lengthMm, widthMm, usedMm };
}
