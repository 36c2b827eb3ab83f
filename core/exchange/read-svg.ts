import { type SaxesAttributePlain, SaxesParser } from "saxes";
import { type Affine, after } from "./affine.ts";
import type { Complaint } from "./complaint.ts";
import { type Contour, changedContour } from "./contour.ts";
import { numbersIn } from "./numbers-in.ts";
import { parseTransform } from "./parse-transform.ts";
import { elementContours, type SvgElement } from "./shape-contours.ts";
import { MM_PER_PX, svgLengthMm } from "./svg-length.ts";

/** Lines of a file from elsewhere, mm, the second axis upward; and what of it could not be read. */
export interface Drawn {
  readonly contours: readonly Contour[];
  readonly complaints: readonly Complaint[];
}

/**
 * Every path and basic shape of an SVG file: transforms nested in groups, sizes in mm, cm, in or px (96 to the
 * inch). `unitMm` says what one unit of the drawing is, whatever the file says of its size. What is not drawn
 * directly (definitions, clips, hidden groups) is left out; text and pictures are named. A damaged file is read up
 * to the damage. The XML is read by saxes, which checks that it is well formed and counts lines.
 */
export function readSvg(text: string, unitMm?: number): Drawn {
  if (!/<(?:\w+:)?svg[\s>/]/i.test(text)) return { contours: [], complaints: [{ kind: "no-svg" }] };
  const walk: Walk = { open: [], contours: [], complaints: [], isDamaged: false };
  const parser = new SaxesParser({});
  parser.on("error", (error) => {
    if (!walk.isDamaged) {
      const why = error.message.replace(/^[\d:\s]+/, "").replace(/\.$/, "");
      walk.complaints.push({ kind: "damaged", line: parser.line, why });
    }
    walk.isDamaged = true;
  });
  // An element's own line is that of its “<”; the parser stands at its end when it reports it.
  let line = 1;
  parser.on("opentagstart", () => {
    line = parser.line;
  });
  parser.on("opentag", ({ name, attributes }) => {
    if (!walk.isDamaged) openElement(walk, elementOf(name, attributes, line), unitMm);
  });
  parser.on("closetag", () => {
    walk.open.pop();
  });
  parser.write(text.replace(/^\uFEFF/, "").trimStart()).close();
  return { contours: walk.contours, complaints: walk.complaints };
}

interface Walk {
  /** From user units to mm for every open element; undefined inside what is not drawn. */
  readonly open: (Affine | undefined)[];
  readonly contours: Contour[];
  readonly complaints: Complaint[];
  isDamaged: boolean;
}

function elementOf(
  name: string,
  attributes: Readonly<Record<string, SaxesAttributePlain | string>>,
  line: number,
): SvgElement {
  const tag = name.replace(/^.*:/, "");
  const plain = Object.fromEntries(
    Object.entries(attributes).map(([key, value]) => [
      key,
      typeof value === "string" ? value : String(value),
    ]),
  );
  return { tag, line, attributes: plain, name: plain.id ? `${tag} “${plain.id}”` : tag };
}

/** Elements whose contents are drawn only where something else asks for them. */
const NOT_DRAWN = [
  "defs",
  "clipPath",
  "mask",
  "symbol",
  "pattern",
  "marker",
  "metadata",
  "style",
  "script",
  "title",
  "desc",
];
const NO_OUTLINES = ["text", "image", "use", "foreignObject"];

function openElement(walk: Walk, element: SvgElement, unitMm: number | undefined): void {
  const outer = walk.open.length === 0 ? ROOT : walk.open.at(-1);
  const inner = outer && isDrawn(element) ? changeOf(walk, outer, element, unitMm) : undefined;
  walk.open.push(inner);
  if (!inner) return;
  const { line, name, tag } = element;
  if (NO_OUTLINES.includes(tag)) {
    walk.complaints.push({ kind: "not-drawn", line, name });
    return;
  }
  const drawn = elementContours(element);
  walk.complaints.push(...(drawn?.complaints ?? []));
  for (const contour of drawn?.contours ?? []) {
    walk.contours.push(changedContour({ ...contour, name, line }, inner));
  }
}

const isDrawn = ({ tag, attributes }: SvgElement): boolean =>
  !NOT_DRAWN.includes(tag) &&
  attributes.display !== "none" &&
  !/display\s*:\s*none/.test(attributes.style ?? "");

/** px to mm, with the second axis upward. */
const ROOT: Affine = [MM_PER_PX, 0, 0, -MM_PER_PX, 0, 0];

function changeOf(walk: Walk, outer: Affine, element: SvgElement, unitMm: number | undefined): Affine {
  const { attributes, line, name, tag } = element;
  const own = attributes.transform === undefined ? undefined : parseTransform(attributes.transform);
  if (attributes.transform !== undefined && own === undefined) {
    const value = attributes.transform.slice(0, 40);
    walk.complaints.push({ kind: "element-value", line, name, attribute: "transform", value });
  }
  const changed = own ? after(outer, own) : outer;
  if (tag !== "svg") return changed;
  const isRoot = walk.open.length === 0;
  if (isRoot && unitMm !== undefined) return [unitMm, 0, 0, -unitMm, 0, 0];
  return after(changed, viewBoxChange(attributes, isRoot));
}

/** From the units of a viewBox to px: scaled alike in both axes, and in the middle unless it says `none` (SVG 1.1 §7.8). */
function viewBoxChange(attributes: SvgElement["attributes"], isRoot: boolean): Affine {
  const px = (name: string): number | undefined => {
    const lengthMm = svgLengthMm(attributes[name] ?? "");
    return lengthMm === undefined ? undefined : lengthMm / MM_PER_PX;
  };
  const at = isRoot ? [0, 0] : [px("x") ?? 0, px("y") ?? 0];
  const [left, top, width, height] = numbersIn(attributes.viewBox ?? "") ?? [];
  const isUsable =
    left !== undefined &&
    top !== undefined &&
    width !== undefined &&
    height !== undefined &&
    width > 0 &&
    height > 0;
  if (!isUsable) return [1, 0, 0, 1, at[0] ?? 0, at[1] ?? 0];
  const [wide, high] = [px("width"), px("height")];
  const scales = [
    (wide ?? width * ((high ?? height) / height)) / width,
    (high ?? height * ((wide ?? width) / width)) / height,
  ] as const;
  const isStretched = (attributes.preserveAspectRatio ?? "").trim().startsWith("none");
  const least = Math.min(...scales);
  const [sx, sy] = isStretched ? scales : [least, least];
  const spare = [(scales[0] - sx) * width, (scales[1] - sy) * height] as const;
  return [sx, 0, 0, sy, (at[0] ?? 0) - left * sx + spare[0] / 2, (at[1] ?? 0) - top * sy + spare[1] / 2];
}
