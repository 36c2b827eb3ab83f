import type { Complaint } from "./complaint.ts";
import { readPoints } from "./read-points.ts";
import { type Drawn, readSvg } from "./read-svg.ts";

/** More text than this is not read: it would hold the device up for long. */
const MOST_LETTERS = 20_000_000;
const MEGABYTE = 1_000_000;

/**
 * The lines of a file from elsewhere: an SVG, or a table of points (CSV, or cells of a spreadsheet). `unitMm` is what
 * one unit of it is; an SVG may say that itself. Nothing throws, whatever the text holds.
 */
export function readDrawing(text: string, unitMm: number | undefined): Drawn {
  const refused = refusal(text);
  if (refused) return { contours: [], complaints: [refused] };
  const drawn = isSvg(text) ? readSvg(text, unitMm) : readPoints(text, unitMm ?? 1);
  if (drawn.contours.length > 0 || drawn.complaints.length > 0) return drawn;
  return { contours: [], complaints: [{ kind: "no-lines" }] };
}

/** Whether a text is an SVG rather than a table. */
export const isSvg = (text: string): boolean => /^\uFEFF?\s*</.test(text);

function refusal(text: string): Complaint | undefined {
  if (text.trim().replace("\uFEFF", "") === "") return { kind: "nothing-in-it" };
  if (text.length > MOST_LETTERS) return { kind: "too-long", megabytes: Math.round(text.length / MEGABYTE) };
  return text.includes("\u0000") || text.includes("\uFFFD") ? { kind: "no-text" } : undefined;
}
