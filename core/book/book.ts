import { traySolids } from "../solids/index.ts";
import { arrangementSheet } from "./arrangement-sheet.ts";
import { calendarSheets } from "./calendar-sheets.ts";
import { clothSheets } from "./cloth-sheets.ts";
import { coverSheets } from "./cover-sheets.ts";
import type { Design } from "./design.ts";
import { glueSheets } from "./glue-sheets.ts";
import { jigSheets } from "./jig-sheets.ts";
import { type Fonts, readLettering } from "./lettering.ts";
import { lieSheets } from "./lie-sheets.ts";
import { logSheets } from "./log-sheets.ts";
import { notesSheets } from "./notes-on-paper.ts";
import { framePages, type SheetBody } from "./page-frame.ts";
import { panelSheets } from "./panel-sheets.ts";
import { type PaperWork, paperWork } from "./paper-work.ts";
import { partsSheets } from "./parts-sheets.ts";
import { patchMapSheets } from "./patch-map-sheets.ts";
import { pictureSheets } from "./picture-sheets.ts";
import { partShapes } from "./plan-shapes.ts";
import { plateSheets } from "./plate-sheets.ts";
import { sectionSheets } from "./section-sheets.ts";
import { shoppingSheets } from "./shopping-sheets.ts";
import { skinSheets } from "./skin-sheets.ts";
import { slotTrialSheets } from "./slot-trial-sheet.ts";
import { stockSheets } from "./stock-sheets.ts";
import { stripSheets } from "./strip-sheets.ts";
import { templateSheets } from "./template-sheets.ts";
import type { DrawingSet } from "./types.ts";

/** The build book: every sheet in the order of the work, framed, numbered and dated from the document. */
export function drawBook(design: Design, fonts: Fonts, work: PaperWork = paperWork(design)): DrawingSet {
  const { project } = design;
  const lettering = readLettering(fonts);
  const solids = traySolids(design);
  const parts = partShapes(design);
  const { marks, pieces } = work;
  const sheets: readonly SheetBody[] = [
    ...arrangementSheet(design, { solids, parts }, lettering),
    ...sectionSheets(design, solids, lettering),
    ...pictureSheets(design, solids, lettering),
    ...notesSheets(design, lettering),
    ...shoppingSheets(design, work, lettering),
    ...calendarSheets(design, lettering),
    ...partsSheets(design, lettering),
    ...templateSheets(design, work, lettering),
    ...slotTrialSheets(design, lettering),
    ...stockSheets(design, lettering),
    ...design.strips.flatMap((strip) => {
      const part = design.parts.find((candidate) => candidate.id === strip.partId);
      const own = marks.filter(({ stripId }) => stripId === strip.id);
      const piece = pieces.find(({ id }) => id === strip.id);
      if (part === undefined || piece === undefined) return [];
      return stripSheets(design, strip, part, { lettering, marks: own, piece });
    }),
    ...design.plates.flatMap((plate) => plateSheets(design, plate, lettering)),
    ...jigSheets(design, parts, lettering),
    ...lieSheets(design, lettering),
    ...glueSheets(design, lettering),
    ...panelSheets(design, lettering),
    ...skinSheets(design, lettering),
    ...patchMapSheets(design, lettering),
    ...clothSheets(design, lettering),
    ...logSheets(design, lettering),
  ];
  return {
    title: `${project.title}: build book`,
    issuedOn: project.titleBlock.issuedOn,
    projectId: project.id,
    pages: framePages([...coverSheets(design, sheets, lettering), ...sheets], project, lettering),
  };
}
