import { jsPDF } from "jspdf";
import {
  type DrawingPage,
  type DrawingSet,
  type Fonts,
  type Lettering,
  type Mark,
  readLettering,
  type TextFace,
} from "../book/index.ts";
import { assert, at } from "../foundation/index.ts";
import { PENS } from "./line-styles.ts";
import { packStreamsInBlocks, toLatin } from "./packed-streams.ts";

/** How a long piece of writing is watched and stopped. */
export interface PdfWatch {
  /** Called after each page with the pages done and the pages in all. */
  readonly onPage?: (done: number, all: number) => void;
  /** Asked before each page; true ends the work. */
  readonly isCancelled?: () => boolean;
}

/**
 * The pages as one PDF, true to size: page boxes and coordinates to 1e-5 units, print scaling none, letters
 * embedded. The same set gives the same bytes. Empty when cancelled.
 */
export function writePdf(set: DrawingSet, fonts: Fonts, watch: PdfWatch = {}): Uint8Array {
  const steps = writePdfByPage(set, fonts);
  for (;;) {
    if (watch.isCancelled?.() === true) return new Uint8Array(0);
    const step = steps.next();
    if (step.done === true) return step.value;
    watch.onPage?.(step.value, set.pages.length);
  }
}

/** The same page by page, so that a caller can breathe between pages: yields the pages done, returns the file. */
export function* writePdfByPage(set: DrawingSet, fonts: Fonts): Generator<number, Uint8Array, void> {
  const lettering = readLettering(fonts);
  const doc = openDocument(set, fonts);
  for (let i = 0; i < set.pages.length; i++) {
    const page = at(set.pages, i);
    if (i > 0) doc.addPage([page.widthMm, page.heightMm], orientationOf(page));
    drawPage(doc, page, lettering);
    yield i + 1;
  }
  return new Uint8Array(doc.output("arraybuffer"));
}

/** Coordinates are written to this many places of 1/72 inch: 4e-6 mm. */
const PRECISION = 5;
/** Longest side of a PDF page without scaled units, which readers do not honour, mm. */
const LONGEST_SIDE_MM = 5080;

function openDocument(set: DrawingSet, fonts: Fonts): jsPDF {
  for (const { widthMm, heightMm, name } of set.pages) {
    const isSound = widthMm > 0 && heightMm > 0 && Math.max(widthMm, heightMm) <= LONGEST_SIDE_MM;
    assert(isSound, `page ${name} of ${widthMm} by ${heightMm} mm can be written`);
  }
  packStreamsInBlocks();
  const first = set.pages[0] ?? { name: "", widthMm: 210, heightMm: 297, marks: [] };
  const doc = new jsPDF({
    unit: "mm",
    format: [first.widthMm, first.heightMm],
    orientation: orientationOf(first),
    compress: true,
    precision: PRECISION,
    putOnlyUsedFonts: true,
  });
  doc.setProperties({ title: set.title, creator: "Traywright" });
  doc.setCreationDate(`D:${set.issuedOn.replaceAll("-", "")}000000+00'00'`);
  doc.setFileId(fileId(`${set.projectId}\n${set.title}`));
  doc.viewerPreferences({ PrintScaling: "None" });
  for (const face of ["sans", "bold", "mono"] as const) {
    doc.addFileToVFS(`${face}.ttf`, toLatin(fonts[face]));
    doc.addFont(`${face}.ttf`, face, "normal");
  }
  doc.setLineCap("round");
  doc.setLineJoin("round");
  return doc;
}

const orientationOf = (page: DrawingPage): "l" | "p" => (page.widthMm > page.heightMm ? "l" : "p");

/** 32 hexadecimal digits that depend on nothing but the text (FNV-1a with four seeds). */
function fileId(text: string): string {
  const word = (seed: number): string => {
    let hash = (2166136261 ^ seed) >>> 0;
    for (const character of text) hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 16777619) >>> 0;
    return hash.toString(16).padStart(8, "0");
  };
  return [0, 1, 2, 3].map(word).join("").toUpperCase();
}

/** What the page's graphics are set to, so that only changes are written. */
interface Pens {
  style: Mark extends { style: infer S } ? S : string;
  face: TextFace | "";
  sizePt: number;
}

function drawPage(doc: jsPDF, page: DrawingPage, lettering: Lettering): void {
  const pens: Pens = { style: "", face: "", sizePt: 0 };
  for (const mark of page.marks) drawMark(doc, mark, { page, lettering, pens });
}

interface PageContext {
  readonly page: DrawingPage;
  readonly lettering: Lettering;
  readonly pens: Pens;
}

function drawMark(doc: jsPDF, mark: Mark, context: PageContext): void {
  switch (mark.kind) {
    case "line":
      drawLine(doc, mark, context);
      return;
    case "circle":
      setPen(doc, mark.style, context.pens);
      doc.circle(mark.centre.x, context.page.heightMm - mark.centre.y, mark.radiusMm, "S");
      return;
    case "text":
      drawText(doc, mark, context);
      return;
  }
}

function setPen(doc: jsPDF, style: keyof typeof PENS, pens: Pens): void {
  if (pens.style === style) return;
  const { widthMm, dashMm } = PENS[style];
  doc.setLineWidth(widthMm);
  doc.setLineDashPattern([...dashMm], 0);
  pens.style = style;
}

function drawLine(doc: jsPDF, mark: Extract<Mark, { kind: "line" }>, context: PageContext): void {
  const { page, pens } = context;
  const [first, ...rest] = mark.points;
  if (first === undefined) return;
  setPen(doc, mark.style, pens);
  doc.moveTo(first.x, page.heightMm - first.y);
  for (const point of rest) doc.lineTo(point.x, page.heightMm - point.y);
  if (mark.closed) doc.close();
  if (mark.fill === undefined) {
    doc.stroke();
    return;
  }
  doc.setFillColor(mark.fill === "ink" ? "#000000" : "#ffffff");
  if (mark.fill === "ink") doc.fillStroke();
  else doc.fill();
  doc.setFillColor("#000000");
}

const POINTS_PER_MM = 72 / 25.4;

function drawText(doc: jsPDF, mark: Extract<Mark, { kind: "text" }>, context: PageContext): void {
  const { page, lettering, pens } = context;
  const text = lettering.legible(mark.text, mark.face);
  if (text.trim() === "") return;
  const sizePt = lettering.emMm(mark.face, mark.heightMm) * POINTS_PER_MM;
  if (pens.face !== mark.face) doc.setFont(mark.face, "normal");
  if (pens.sizePt !== sizePt) doc.setFontSize(sizePt);
  pens.face = mark.face;
  pens.sizePt = sizePt;
  const width = lettering.widthMm(mark.text, mark.face, mark.heightMm);
  const back = mark.anchor === "start" ? 0 : mark.anchor === "middle" ? width / 2 : width;
  const x = mark.at.x - back * Math.cos(mark.turnRad);
  const y = page.heightMm - (mark.at.y - back * Math.sin(mark.turnRad));
  if (mark.turnRad === 0) doc.text(text, x, y);
  else doc.text(text, x, y, { angle: (mark.turnRad * 180) / Math.PI });
}
