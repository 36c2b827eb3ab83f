import {
  type Design,
  type DrawingSet,
  drawBook,
  drawTemplates,
  type Fonts,
  paperWork,
  reportOf,
} from "../book/index.ts";
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
 * PDFs and of all other files as one row.
 */
export function packFiles(
  design: Design,
  fonts: Fonts,
  watch: Pick<PdfWatch, "onPage"> = {},
): { readonly files: readonly PackFile[]; readonly problems: readonly Problem[] } {
  const work = paperWork(design);
  const book = drawBook(design, fonts, work);
  const templates = drawTemplates(design, fonts, work);
  const tables = writeCsvFiles(design, work);
  // A calendar with nothing on it is none (RFC 5545 §3.6).
  const calendars = design.schedule.tasks.length > 0 ? [writeCalendarFile(design)] : [];
  const pageCount = book.pages.length + templates.set.pages.length;
  const all = pageCount + calendars.length + 1 + work.pieces.length + tables.length + 1;
  let done = 0;
  const tell = (more: number) => {
    done += more;
    watch.onPage?.(done, all);
  };
  const told = (files: readonly PackFile[]) => {
    tell(files.length);
    return files;
  };
  tell(0);
  const pdf = (path: string, set: DrawingSet): PackFile => ({
    path,
    content: writePdf(set, fonts, { onPage: () => tell(1) }),
  });
  const files = [
    pdf("build-book.pdf", book),
    pdf("templates.pdf", templates.set),
    ...told(calendars.map((content) => ({ path: "calendar.ics", content }))),
    ...told([{ path: "report.json", content: `${JSON.stringify(reportOf(design, work), null, 2)}\n` }]),
    ...told(
      writeSvgFiles(design, fonts, work).map(({ name, text }) => ({ path: `svg/${name}`, content: text })),
    ),
    ...told(tables.map(({ name, text }) => ({ path: `csv/${name}`, content: text }))),
    ...told([{ path: "project.json", content: writeProject(design.project) }]),
  ];
  return { files, problems: [...design.problems, ...templates.problems] };
}
