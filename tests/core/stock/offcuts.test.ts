import { expect, it } from "vitest";
import { designTray, layOutStock } from "../../../core/design.ts";
import { readExample } from "../../read-example.ts";

it("what is left for the last sheet goes onto an offcut that is there, and no further sheet is begun", () => {
  const demo = readExample("hill-climb-floor");
  const [sheet] = demo.stock;
  if (!sheet) throw new Error("The demo has a sheet.");
  const offcut = { ...sheet, id: "offcut", name: "Offcut", lengthMm: sheet.lengthMm / 2, quantity: 1 };
  const [foam] = layOutStock(designTray({ ...demo, stock: [...demo.stock, offcut] })).stock;
  const taken = foam?.sheets.map(({ stockId }) => stockId) ?? [];
  expect(taken.filter((id) => id === "offcut")).toHaveLength(1);
  expect(taken.at(-1)).toBe("offcut");
  expect(foam?.unplaced).toEqual([]);
  expect(foam?.sheets.flatMap(({ pieces }) => pieces.filter(({ isWrong }) => isWrong))).toEqual([]);
});
