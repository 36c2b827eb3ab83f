import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

/** What a PDF viewer would see: each page's size in mm and its text. */
export interface ReadPdf {
  readonly pages: readonly { readonly widthMm: number; readonly heightMm: number; readonly text: string }[];
}

const MM_PER_POINT = 25.4 / 72;

/** Reads a PDF file by a library that did not write it. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0 });
  const document = await task.promise;
  const pages = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
    const { items } = await page.getTextContent();
    const text = items.map((item) => ("str" in item ? item.str : "")).join(" ");
    pages.push({ widthMm: (right - left) * MM_PER_POINT, heightMm: (top - bottom) * MM_PER_POINT, text });
  }
  await task.destroy();
  return { pages };
}
