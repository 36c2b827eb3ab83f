export { reportOf } from "../book/index.ts";
export { writeCsv, writeCsvFiles } from "./csv.ts";
export { writeCalendarFile, writeICalendar } from "./icalendar.ts";
export { PENS, type Pen } from "./line-styles.ts";
export type { NamedText } from "./named-text.ts";
export { type PackFile, packFiles } from "./pack-files.ts";
export { type PdfWatch, writePdf, writePdfByPage } from "./pdf.ts";
export { writeSvg, writeSvgFiles } from "./svg.ts";
export { writeZip } from "./zip.ts";
