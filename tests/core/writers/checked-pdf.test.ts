import { describe, expect, it } from "vitest";
import { drawBook, drawTemplates, paperWork } from "../../../core/book/index.ts";
import { designTray } from "../../../core/design.ts";
import { writePdf } from "../../../core/writers/index.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";
import { faultsOf, hasChecker } from "./check-pdf.ts";

/** The files are checked by qpdf where it is installed; without it this check is left out, and says so. */
describe.skipIf(!hasChecker)(
  "PDF files, checked by qpdf (left out where it is not installed)",
  { timeout: 120_000 },
  () => {
    const fonts = readFonts();
    const design = designTray(readExample("hill-climb-floor"));
    const work = paperWork(design);

    it("finds no fault in the book or in the templates", () => {
      for (const set of [drawBook(design, fonts, work), drawTemplates(design, fonts, work).set])
        expect(faultsOf(writePdf(set, fonts)), set.title).toBe("");
    });

    it("finds the fault in a file whose streams are spoiled", () => {
      const spoiled = writePdf(drawTemplates(design, fonts, work).set, fonts);
      spoiled.fill(0x20, spoiled.length / 2, spoiled.length / 2 + 2000);
      expect(faultsOf(spoiled)).not.toBe("");
    });
  },
);
