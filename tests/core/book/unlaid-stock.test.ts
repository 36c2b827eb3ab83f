import { describe, expect, it } from "vitest";
import { drawBook } from "../../../core/book/index.ts";
import { designTray, layOutStock } from "../../../core/design.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";

const design = designTray(readExample("practice-piece"));
const words = (laid: typeof design) =>
  drawBook(laid, readFonts())
    .pages.flatMap(({ marks }) => marks)
    .flatMap((mark) => (mark.kind === "text" ? [mark.text] : []))
    .join(" ");

describe("a book before its pieces are laid out", () => {
  it("names what has no place on a sheet, and what to do", () => {
    const text = words(design);
    expect(text).toContain("Not laid out on stock");
    for (const id of [...design.strips, ...design.jig.ribs].map((piece) => piece.id))
      expect(text).toContain(id);
  });

  it("has no such page when all is laid out", () => {
    expect(words(layOutStock(design))).not.toContain("Not laid out on stock");
  });
});
