import type { Design } from "./book/index.ts";
import { cutStrips } from "./cutting/index.ts";
import type { Jig } from "./jig/index.ts";
import { findJoints } from "./joints/index.ts";
import { layParts } from "./patterns/index.ts";
import { checkDocument, type Project, resolveLines, soundProject } from "./project/index.ts";
import { buildSheets } from "./surfaces/index.ts";

export type { Design } from "./book/index.ts";

/**
 * The stages in order. Never throws for what a builder drew or typed: what cannot be made has a problem that
 * names it, and everything else is there.
 */
export function designTray(typed: Project): Design {
  const project = soundProject(typed);
  const lines = resolveLines(project);
  const surfaces = buildSheets(project, lines);
  const joining = findJoints(project, lines, surfaces.sheets, surfaces.folds);
  const patterns = layParts(project, surfaces.sheets, joining.setBacks);
  const cutting = cutStrips(patterns.parts, project);
  const jig: Jig = {
    ribs: [],
    baseboard: {
      attitude: project.jig.attitude,
      levelZMm: 0,
      corners: [
        { x: 0, y: 0 },
        { x: 0, y: 0 },
      ],
      lines: [],
    },
  };
  return {
    project,
    sheets: surfaces.sheets,
    joints: joining.joints,
    parts: patterns.parts,
    seams: cutting.seams,
    strips: cutting.strips,
    marking: [],
    jig,
    glueUp: [],
    totals: {
      partCount: patterns.parts.length,
      stripCount: cutting.strips.length,
      foamAreaMm2: 0,
      foamMassKg: 0,
      glueMassKg: 0,
      jointLengthMm: 0,
      stock: [],
      ribBoardAreaMm2: 0,
      ribBoardsAtLeast: 0,
      ribBoardMassKg: 0,
      handsOnHours: 0,
    },
    problems: [
      ...checkDocument(typed),
      ...lines.problems,
      ...surfaces.problems,
      ...joining.problems,
      ...patterns.problems,
      ...cutting.problems,
    ],
  };
}
