import { describe, expect, it } from "vitest";
import { designTray, layOutStock } from "../../../core/design.ts";
import { seenLengthMm } from "../../../core/stock/index.ts";
import { readExample } from "../../read-example.ts";

describe("foam from a roll", () => {
  const piece = readExample("practice-piece");
  const roll = piece.stock.map((sheet) => ({ ...sheet, lengthMm: 12_000, widthMm: 700 }));
  const laid = layOutStock(designTray({ ...piece, stock: roll }));
  const foam = laid.stock.filter(({ groupId }) => groupId.startsWith(piece.core.foamId));

  it("is a sheet as long as what is left on it: pieces are cut from its beginning, and the rest stays one offcut", () => {
    expect(laid.problems).toEqual([]);
    const sheets = foam.flatMap((group) => group.sheets);
    expect(sheets).toHaveLength(1);
    for (const { usedMm, pieces } of sheets) {
      expect(pieces.map(({ pieceId }) => pieceId)).toEqual(laid.strips.map(({ id }) => id));
      expect(usedMm).toBeLessThan(700);
    }
  });

  it("is shown as far as pieces are taken from it, and a sheet whole", () => {
    const [sheet] = foam.flatMap((group) => group.sheets);
    if (sheet === undefined) throw new Error("nothing laid");
    expect(seenLengthMm(sheet)).toBe(2800);
    expect(seenLengthMm({ ...sheet, usedMm: 5000 })).toBe(5200);
    expect(seenLengthMm({ ...sheet, lengthMm: 1250, widthMm: 600, usedMm: 300 })).toBe(1250);
  });
});
