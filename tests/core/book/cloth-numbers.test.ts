import { expect, it } from "vitest";
import { clothSheets } from "../../../core/book/cloth-sheets.ts";
import { readLettering } from "../../../core/book/index.ts";
import { designTray, layOutCloth } from "../../../core/design.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";

const design = layOutCloth(designTray(readExample("hill-climb-floor")));

it("every piece of cloth stands in its length by its code, or by a number that is listed under it", () => {
  const texts = clothSheets(design, readLettering(readFonts()))
    .flatMap(({ marks }) => marks)
    .flatMap((mark) => (mark.kind === "text" ? [mark] : []));
  const starts = texts.flatMap(({ text }, i) => (/^Length \d+: cut off/.test(text) ? [i] : []));
  const lengths = design.cloth.flatMap((cloth) => cloth.lengths);
  expect(starts.length).toBe(lengths.length);
  let numbered = 0;
  lengths.forEach(({ pieces }, i) => {
    const own = texts.slice(starts[i], starts[i + 1]);
    // Codes are drawn in the face of figures, words under the drawing are not.
    const inDrawing = own.flatMap(({ face, text }) => (face === "mono" ? [text] : []));
    const listed = own
      .map(({ text }) => text)
      .join(" ")
      .matchAll(/(\d+)\u00a0is\u00a0([\w.-]*\w)/g);
    const numberOf = new Map([...listed].map(([, number, code]) => [code, number]));
    for (const { patchId } of pieces) {
      const number = numberOf.get(patchId);
      expect(inDrawing.filter((text) => text === (number ?? patchId)).length, patchId).toBe(1);
      if (number !== undefined) numbered += 1;
    }
    expect(new Set(numberOf.values()).size).toBe(numberOf.size);
  });
  expect(numbered).toBeGreaterThan(0);
});
