import type { Strip } from "../cutting/index.ts";
import { faceTable, hasBevels, type MarkingTable, type ShownFace } from "../marking/index.ts";
import type { Design } from "./design.ts";

/**
 * The marking-out table as it is printed: of the lines on the face shown, where the builder marks and the blade enters;
 * without bevels the strip's own.
 */
export function printedTable(design: Design, strip: Strip, face: ShownFace): MarkingTable | undefined {
  const table = design.marking.find((candidate) => candidate.stripId === strip.id);
  if (table === undefined || !hasBevels(strip)) return table;
  return faceTable(table, face, design.project);
}
