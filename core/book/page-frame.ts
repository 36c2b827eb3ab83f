import type { Project } from "../project/index.ts";
import type { Box } from "./boxes.ts";
import type { Lettering } from "./lettering.ts";
import { boxMark, lineMark, paper, textMark } from "./marks.ts";
import { shorten } from "./shorten.ts";
import type { DrawingPage, Mark } from "./types.ts";

/** A page of the book before it is framed and numbered. */
export interface SheetBody {
  /** What the page shows; 25 signs are customary. */
  readonly title: string;
  /** The kind of document: `strip`, `jig`, `glue-up` … */
  readonly documentType: string;
  /** `1:5`, or a dash where nothing is to scale. */
  readonly scale: string;
  /** A4 upright unless the drawing needs A3 on its side. */
  readonly format?: PaperFormat;
  readonly marks: readonly Mark[];
}

/** A4 upright, or A3 on its side. */
export type PaperFormat = "A4" | "A3";

const PAGES: Readonly<Record<PaperFormat, { readonly widthMm: number; readonly heightMm: number }>> = {
  A4: { widthMm: 210, heightMm: 297 },
  A3: { widthMm: 420, heightMm: 297 },
};

/** ISO 5457: 20 mm at the left for filing, 10 mm on the other sides. */
const frameOf = (format: PaperFormat): Box => ({
  left: 20,
  bottom: 10,
  right: PAGES[format].widthMm - 10,
  top: PAGES[format].heightMm - 10,
});
const BLOCK_WIDTH_MM = 180;
/** ISO 7200: the title block is 180 mm wide. */
const BLOCK_HEIGHT_MM = 27;

/** Where a sheet's content goes: inside the frame and above the title block. */
export function contentOf(format: PaperFormat): Box {
  const frame = frameOf(format);
  return {
    left: frame.left + 3,
    right: frame.right - 3,
    bottom: frame.bottom + BLOCK_HEIGHT_MM + 4,
    top: frame.top - 6,
  };
}

/** The content of an A4 sheet. */
export const CONTENT: Box = contentOf("A4");
export const CONTENT_WIDTH_MM = CONTENT.right - CONTENT.left;

/** The bodies as A4 pages with frame, centring marks and a title block in the lower right corner. */
export function framePages(
  bodies: readonly SheetBody[],
  project: Project,
  lettering: Lettering,
): readonly DrawingPage[] {
  return bodies.map((body, i) => {
    const format = body.format ?? "A4";
    return {
      name: body.title,
      ...PAGES[format],
      marks: [
        ...frameMarks(format),
        ...titleBlock(body, project, { number: i + 1, count: bodies.length, lettering }),
        ...body.marks,
      ],
    };
  });
}

function frameMarks(format: PaperFormat): readonly Mark[] {
  const { left, right, bottom, top } = frameOf(format);
  const { widthMm, heightMm } = PAGES[format];
  const [x, y] = [(left + right) / 2, (bottom + top) / 2];
  return [
    boxMark(paper(left, bottom), right - left, top - bottom, "frame"),
    lineMark([paper(x, top - 3), paper(x, heightMm - 4)], "frame"),
    lineMark([paper(x, 4), paper(x, bottom)], "frame"),
    lineMark([paper(6, y), paper(left, y)], "frame"),
    lineMark([paper(right, y), paper(widthMm - 4, y)], "frame"),
  ];
}

interface BlockContext {
  readonly number: number;
  readonly count: number;
  readonly lettering: Lettering;
}

interface Field {
  readonly label: string;
  readonly text: string;
  readonly box: Box;
  readonly large?: true;
}

/** The fields of ISO 7200, in three rows. */
function titleBlock(body: SheetBody, project: Project, context: BlockContext): readonly Mark[] {
  const { titleBlock: given } = project;
  const { right, bottom } = frameOf(body.format ?? "A4");
  const left = right - BLOCK_WIDTH_MM;
  const rowMm = BLOCK_HEIGHT_MM / 3;
  const at = (row: number, from: number, to: number): Box => ({
    left: left + from,
    right: left + to,
    bottom: bottom + row * rowMm,
    top: bottom + (row + 1) * rowMm,
  });
  const fields: readonly Field[] = [
    { label: "Owner", text: given.owner, box: at(2, 0, 60) },
    { label: "Created by", text: given.creator, box: at(2, 60, 105) },
    { label: "Approved by", text: given.approver, box: at(2, 105, 150) },
    { label: "Scale", text: body.scale, box: at(2, 150, 180) },
    { label: "Title", text: project.title, box: at(1, 0, 105), large: true },
    { label: "Document type", text: body.documentType, box: at(1, 105, 150) },
    { label: "Date of issue", text: given.issuedOn, box: at(1, 150, 180) },
    { label: "Supplementary title", text: body.title, box: at(0, 0, 105), large: true },
    { label: "Identification number", text: project.id.slice(0, 16), box: at(0, 105, 150) },
    { label: "Rev.", text: given.revision, box: at(0, 150, 160) },
    { label: "Sheet", text: `${context.number} / ${context.count}`, box: at(0, 160, 180) },
  ];
  return [
    boxMark(paper(left, bottom), BLOCK_WIDTH_MM, BLOCK_HEIGHT_MM, "frame"),
    ...fields.flatMap((field) => drawField(field, context.lettering)),
  ];
}

function drawField(field: Field, lettering: Lettering): readonly Mark[] {
  const { box, label, text } = field;
  const roomMm = box.right - box.left - 3;
  const sizes = field.large === true ? [3.5, 2.5] : [2.5];
  const heightMm = sizes.find((size) => lettering.widthMm(text, "sans", size) <= roomMm) ?? 2.5;
  const shown = shorten(text, "sans", heightMm, { lettering, roomMm });
  return [
    boxMark(paper(box.left, box.bottom), box.right - box.left, box.top - box.bottom, "thin"),
    textMark(paper(box.left + 1.5, box.top - 3.4), label, { heightMm: 2.5 }),
    textMark(paper(box.left + 1.5, box.bottom + 1.4), shown, { heightMm }),
  ];
}
