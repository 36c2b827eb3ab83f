import { type DrawingSet, drawBook, drawTemplates } from "../../../core/book/index.ts";
import { type Design, designTray, layOutCloth, layOutStock } from "../../../core/design.ts";
import type { Project } from "../../../core/project/index.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";

/** A tray as it is printed: with everything laid out on its stock, else there are no pages of stock and cloth to look at. */
export const asPrinted = (project: Project): Design => layOutCloth(layOutStock(designTray(project)));

/** The demo tray as it is printed; made once for all files of tests that one worker runs. */
export const printedDemo = once(() => asPrinted(readExample("hill-climb-floor")));

/** Book and A4 templates of the demo tray, made once. */
export const printedSets = once((): Readonly<Record<"book" | "templates", DrawingSet>> => {
  const fonts = readFonts();
  return { book: drawBook(printedDemo(), fonts), templates: drawTemplates(printedDemo(), fonts).set };
});

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
