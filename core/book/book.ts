import type { Design } from "./design.ts";
import { type Fonts, readLettering } from "./lettering.ts";
import { framePages, type SheetBody } from "./page-frame.ts";
import { stripSheets } from "./strip-sheets.ts";
import type { DrawingSet } from "./types.ts";

/** The build book: every sheet in the order of the work, framed, numbered and dated from the document. */
export function drawBook(design: Design, fonts: Fonts): DrawingSet {
  const { project } = design;
  const lettering = readLettering(fonts);
  const bodies: readonly SheetBody[] = [
    ...design.strips.flatMap((strip) => {
      const part = design.parts.find((candidate) => candidate.id === strip.partId);
      return part === undefined ? [] : stripSheets(design, strip, part, lettering);
    }),
  ];
  return {
    title: `${project.title}: build book`,
    issuedOn: project.titleBlock.issuedOn,
    projectId: project.id,
    pages: framePages(bodies, project, lettering),
  };
}
