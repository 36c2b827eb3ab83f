export { PENS, type Pen } from "./line-styles.ts";
export { type PdfWatch, writePdf, writePdfByPage } from "./pdf.ts";
