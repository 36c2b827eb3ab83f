import {
  type Design,
  type DrawingPage,
  drawPiecePages,
  type Fonts,
  type Lettering,
  type Mark,
  type PaperPoint,
  type PaperWork,
  readLettering,
  type TextFace,
} from "../book/index.ts";
import { roundTo, toDegrees } from "../foundation/index.ts";
import { PENS } from "./line-styles.ts";
import type { NamedText } from "./named-text.ts";

/** Coordinates keep this many places, mm. */
const PLACES = 4;

/**
 * One page as SVG in mm, true to size: width and height in mm, one user unit a millimetre, each layer a group of
 * its name. Texts stay texts, in the faces of the pages or the reader's own.
 */
export function writeSvg(page: DrawingPage, lettering: Lettering): string {
  const { widthMm, heightMm } = page;
  const layers = new Map<string, string[]>();
  for (const mark of page.marks) {
    const name = mark.layer ?? "drawing";
    const layer = layers.get(name) ?? [];
    layer.push(element(mark, heightMm, lettering));
    layers.set(name, layer);
  }
  const groups = [...layers].map(
    ([name, elements]) =>
      `<g id="${xmlWords(name)}" fill="none" stroke="#000000">\n${elements.join("\n")}\n</g>`,
  );
  const [width, height] = [number(widthMm), number(heightMm)];
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" stroke-linecap="round" stroke-linejoin="round">`,
    `<title>${xmlWords(page.name)}</title>`,
    ...groups,
    "</svg>",
    "",
  ].join("\n");
}

/** Every strip and every rib that needs a template as an SVG file of its own. */
export function writeSvgFiles(design: Design, fonts: Fonts, work?: PaperWork): readonly NamedText[] {
  const lettering = readLettering(fonts);
  return drawPiecePages(design, fonts, work).map((page) => ({
    name: `${page.name}.svg`,
    text: writeSvg(page, lettering),
  }));
}

function element(mark: Mark, heightMm: number, lettering: Lettering): string {
  switch (mark.kind) {
    case "line":
      return path(mark, heightMm);
    case "circle": {
      const [x, y] = xy(mark.centre, heightMm);
      return `<circle cx="${x}" cy="${y}" r="${number(mark.radiusMm)}" ${pen(mark.style)}/>`;
    }
    case "text":
      return text(mark, heightMm, lettering);
  }
}

function path(mark: Extract<Mark, { kind: "line" }>, heightMm: number): string {
  const points = mark.points.map((p) => xy(p, heightMm).join(" "));
  const fill = mark.fill === undefined ? "" : ` fill="${mark.fill === "ink" ? "#000000" : "#ffffff"}"`;
  return `<path d="M${points.join("L")}${mark.closed ? "Z" : ""}" ${pen(mark.style)}${fill}/>`;
}

function pen(style: keyof typeof PENS): string {
  const { widthMm, dashMm } = PENS[style];
  const dash = dashMm.length === 0 ? "" : ` stroke-dasharray="${dashMm.join(" ")}"`;
  return `class="${style}" stroke-width="${widthMm}"${dash}`;
}

const FAMILIES: Readonly<Record<TextFace, string>> = {
  sans: `font-family="IBM Plex Sans, Helvetica, Arial, sans-serif"`,
  bold: `font-family="IBM Plex Sans, Helvetica, Arial, sans-serif" font-weight="700"`,
  mono: `font-family="JetBrains Mono, Courier New, monospace"`,
};

function text(mark: Extract<Mark, { kind: "text" }>, heightMm: number, lettering: Lettering): string {
  const [x, y] = xy(mark.at, heightMm);
  const turn = mark.turnRad === 0 ? "" : ` transform="rotate(${number(-toDegrees(mark.turnRad))} ${x} ${y})"`;
  const size = number(lettering.emMm(mark.face, mark.heightMm));
  const words = xmlWords(lettering.legible(mark.text, mark.face));
  return `<text x="${x}" y="${y}" ${FAMILIES[mark.face]} font-size="${size}" text-anchor="${mark.anchor}" fill="#000000" stroke="none"${turn}>${words}</text>`;
}

const xy = (p: PaperPoint, heightMm: number): readonly [string, string] => [
  number(p.x),
  number(heightMm - p.y),
];

const number = (value: number): string => String(roundTo(value, PLACES));

const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
/** Signs that XML cannot hold are left out. */
const xmlWords = (words: string): string =>
  Array.from(words)
    .filter((c) => c >= " ")
    .map((c) => ENTITIES[c] ?? c)
    .join("");
