import { roundTo } from "../foundation/index.ts";
import { calendarRows } from "./calendar-events.ts";
import { type DataTable, degrees, mm } from "./data-table.ts";
import type { Design } from "./design.ts";

export const glueUpTable = (design: Design): DataTable => ({
  name: "glue-up",
  header: [
    "step",
    "place",
    "title",
    "adds",
    "joins",
    "why",
    "glue length mm",
    "glue kg",
    "pins",
    "pin spacing mm",
    "wait h",
    "kind",
    "work min",
    "goes",
    "longest go min",
    "open min",
    "held h",
    "after step (h)",
  ],
  rows: design.glueUp.map((step) => [
    step.step,
    step.place,
    step.title,
    step.adds.join(" "),
    step.joins.join(" "),
    step.why,
    mm(step.glueLengthMm),
    roundTo(step.glueMassKg, 4),
    step.pins,
    mm(step.pinSpacingMm),
    roundTo(step.waitHours, 2),
    step.kind,
    roundTo(step.workMinutes, 1),
    step.rounds.length,
    roundTo(Math.max(0, ...step.rounds.map(({ wetMinutes }) => wetMinutes)), 1),
    roundTo(step.openMinutes, 1),
    roundTo(step.clampHours, 2),
    step.after.map((wait) => `${wait.step} (${roundTo(wait.waitHours, 2)})`).join(" "),
  ]),
});

export const calendarTable = (design: Design): DataTable => ({
  name: "calendar",
  header: ["from date", "from", "to date", "to", "what", "title", "end hangs on it", "id"],
  rows: calendarRows(design),
});

/** Every piece of every panel, with the panel that it is cut from. */
export const panelsTable = ({ panels }: Design): DataTable => ({
  name: "panels",
  header: [
    "panel",
    "foam",
    "foam mm",
    "thickness mm",
    "length mm",
    "width mm",
    "strip",
    "turned deg",
    "x mm",
    "y mm",
  ],
  rows: panels.panels.flatMap(({ id, foamName, foamMm, thicknessMm, lengthMm, widthMm, pieces }) =>
    pieces.map(({ stripId, angleRad, x, y }) => [
      id,
      foamName,
      foamMm,
      mm(thicknessMm),
      lengthMm,
      widthMm,
      stripId,
      degrees(angleRad),
      mm(x),
      mm(y),
    ]),
  ),
});

export const stockTable = (design: Design): DataTable => ({
  name: "stock",
  header: ["stock", "name", "area mm2", "sheets at least"],
  rows: design.totals.stock.map((line) => [line.stockId, line.name, mm(line.areaMm2), line.sheetsAtLeast]),
});
