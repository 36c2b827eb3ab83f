import { expect, it } from "vitest";
import { readLettering } from "../../../core/book/index.ts";
import { shoppingSheets } from "../../../core/book/shopping-sheets.ts";
import { type Design, designTray } from "../../../core/design.ts";
import { readFonts } from "../../read-fonts.ts";
import { panelFence, panelTray } from "../panels/panel-trays.ts";

const lettering = readLettering(readFonts());
const wordsOf = (design: Design) =>
  shoppingSheets(design, lettering)
    .flatMap(({ marks }) => marks)
    .flatMap((mark) => (mark.kind === "text" ? [mark.text] : []));
const isTape = (words: string) => words.includes("on the bias");

it("tape is bought by its cloth: each a row with its own area, none for a fence without fillets", () => {
  const design = designTray(panelTray([panelFence(1, 200), panelFence(2, 400), panelFence(3, 500)]));
  const [plain, light, heavy] = design.panels.bonds;
  if (!plain || !light || !heavy) throw new Error("no bonds");
  const bonds = [
    { ...plain, tapeMm2: 0, tapeWidthMm: 0, tapeName: "" },
    { ...light, tapeMm2: 100_000, tapeName: "Light cloth" },
    { ...heavy, tapeMm2: 300_000, tapeName: "Heavy cloth" },
  ];
  const words = wordsOf({ ...design, panels: { ...design.panels, bonds } });
  expect(words.filter(isTape)).toEqual([
    "Light cloth, on the bias, for tape",
    "Heavy cloth, on the bias, for tape",
  ]);
  const areas = words.flatMap((word, i) => (isTape(word) ? [words[i + 1]] : []));
  expect(areas).toEqual(["0.10 m²", "0.30 m²"]);
});
