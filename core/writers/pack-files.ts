import { type Design, drawBook, drawTemplates, type Fonts, paperWork, reportOf } from "../book/index.ts";
import type { Problem } from "../foundation/index.ts";
import { writeProject } from "../project/index.ts";
import { writeCsvFiles } from "./csv.ts";
import { writeCalendarFile } from "./icalendar.ts";
import { type PdfWatch, writePdf } from "./pdf.ts";
import { writeSvgFiles } from "./svg.ts";

/** One file of the pack: its path, folders with `/`, and what it holds. */
export interface PackFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/**
 * Every file that is made of a design, in the order of writing: build book, templates, report, calendar, one SVG a piece, the
 * tables, and the project itself. Problems: those of the design and of the paper. The watch is told of the pages of both
 * PDFs as one row.
 */
export function packFiles(
  design: Design,
  fonts: Fonts,
  watch: Pick<PdfWatch, "onPage"> = {},
): { readonly files: readonly PackFile[]; readonly problems: readonly Problem[] } {
  const work = paperWork(design);
  const book = drawBook(design, fonts, work);
  const templates = drawTemplates(design, fonts, work);
  const bookCount = book.pages.length;
  const all = bookCount + templates.set.pages.length;
  watch.onPage?.(0, all);
  const bookPdf = writePdf(book, fonts, { onPage: (done) => watch.onPage?.(done, all) });
  const templatesPdf = writePdf(templates.set, fonts, {
    onPage: (done) => watch.onPage?.(bookCount + done, all),
  });
  const files = [
    { path: "build-book.pdf", content: bookPdf },
    { path: "templates.pdf", content: templatesPdf },
    // A calendar with nothing on it is none (RFC 5545 §3.6).
    ...(design.schedule.tasks.length > 0
      ? [{ path: "calendar.ics", content: writeCalendarFile(design) }]
      : []),
    { path: "report.json", content: `${JSON.stringify(reportOf(design, work), null, 2)}\n` },
    ...writeSvgFiles(design, fonts, work).map(({ name, text }) => ({ path: `svg/${name}`, content: text })),
    ...writeCsvFiles(design).map(({ name, text }) => ({ path: `csv/${name}`, content: text })),
    { path: "project.json", content: writeProject(design.project) },
  ];
  return { files, problems: [...design.problems, ...templates.problems] };
}
