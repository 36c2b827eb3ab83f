import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";

/** A line as a PDF viewer draws it: mm from the page's lower left corner, y up. */
export interface ReadLine {
  readonly widthMm: number;
  readonly dashMm: readonly number[];
  readonly points: readonly { readonly x: number; readonly y: number }[];
  readonly closed: boolean;
}

/** A text with its start and the width that the viewer gives it, mm; turn in rad. */
export interface ReadText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly widthMm: number;
  /** Size of the em square. */
  readonly emMm: number;
  readonly turnRad: number;
}

export interface ReadPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly lines: readonly ReadLine[];
  readonly texts: readonly ReadText[];
}

const MM = 25.4 / 72;

/** Every page's size, lines and texts, by a library that did not write them. */
export async function readPages(bytes: Uint8Array): Promise<readonly ReadPage[]> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0 });
  const document = await task.promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
    const operators = await page.getOperatorList();
    const { items } = await page.getTextContent();
    pages.push({
      widthMm: (right - left) * MM,
      heightMm: (top - bottom) * MM,
      lines: linesOf(operators.fnArray, operators.argsArray),
      texts: items.flatMap((item) => ("str" in item && item.str.trim() !== "" ? [textOf(item)] : [])),
    });
  }
  await task.destroy();
  return pages;
}

function textOf(item: {
  readonly str: string;
  readonly transform: readonly number[];
  readonly width: number;
}): ReadText {
  const [a = 0, b = 0, c = 0, d = 0, x = 0, y = 0] = item.transform;
  const emMm = Math.hypot(c, d) * MM;
  return { text: item.str, x: x * MM, y: y * MM, widthMm: item.width * MM, emMm, turnRad: Math.atan2(b, a) };
}

function linesOf(names: readonly number[], given: readonly unknown[]): readonly ReadLine[] {
  const lines: ReadLine[] = [];
  let widthMm = 0;
  let dashMm: readonly number[] = [];
  names.forEach((name, i) => {
    const list: unknown = given[i];
    if (!Array.isArray(list)) return;
    const args: readonly unknown[] = list;
    if (name === OPS.setLineWidth && typeof args[0] === "number") widthMm = args[0] * MM;
    if (name === OPS.setDash) dashMm = numbers(args[0]).map((one) => one * MM);
    if (name === OPS.constructPath && Array.isArray(args[1])) {
      for (const path of pathsOf(numbers(args[1][0]))) lines.push({ widthMm, dashMm, ...path });
    }
  });
  return lines;
}

/** Numbers of a plain list, a typed array or nothing. */
function numbers(value: unknown): readonly number[] {
  if (value instanceof Float32Array) return [...value];
  return Array.isArray(value) ? value.filter((one): one is number => typeof one === "number") : [];
}

/** The path codes of the reader: 0 move, 1 line, 2 curve, 4 close. */
function pathsOf(codes: readonly number[]): Pick<ReadLine, "points" | "closed">[] {
  const paths: { points: { x: number; y: number }[]; closed: boolean }[] = [];
  const point = (i: number) => ({ x: (codes[i] ?? 0) * MM, y: (codes[i + 1] ?? 0) * MM });
  for (let i = 0; i < codes.length; ) {
    const code = codes[i];
    if (code === 0) paths.push({ points: [point(i + 1)], closed: false });
    if (code === 1) paths.at(-1)?.points.push(point(i + 1));
    if (code === 2) paths.at(-1)?.points.push(point(i + 5));
    const last = paths.at(-1);
    if (code === 4 && last !== undefined) last.closed = true;
    i += code === 2 ? 7 : code === 4 ? 1 : 3;
  }
  return paths;
}
