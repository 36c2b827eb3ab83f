import type { Design } from "./book/index.ts";
import { cutStrips } from "./cutting/index.ts";
import { planGlueUp } from "./glue-up/index.ts";
import { buildJig } from "./jig/index.ts";
import { findJoints } from "./joints/index.ts";
import { markingTables } from "./marking/index.ts";
import { layParts } from "./patterns/index.ts";
import { foldPlates, wingFreeEdge } from "./plates/index.ts";
import { checkDocument, type Project, resolveLines, soundProject } from "./project/index.ts";
import { buildSheets } from "./surfaces/index.ts";
import { totalTray } from "./totals/index.ts";

export type { Design } from "./book/index.ts";

/**
 * The stages in order. Never throws for what a builder drew or typed: what cannot be made has a problem that
 * names it, and everything else is there.
 */
export function designTray(typed: Project): Design {
  const project = soundProject(typed);
  const lines = resolveLines(project);
  const folding = foldPlates(project, lines);
  const { plates } = folding;
  const surfaces = buildSheets(project, lines, (itemId, wingId) => wingFreeEdge(plates, itemId, wingId));
  const joining = findJoints(project, lines, surfaces.sheets, surfaces.folds);
  const patterns = layParts(project, surfaces.sheets, joining.setBacks);
  const cutting = cutStrips(patterns.parts, project);
  const marking = markingTables(cutting.strips, project);
  const jigging = buildJig(surfaces.sheets, project);
  const { sheets } = surfaces;
  const { parts } = patterns;
  const { strips, seams } = cutting;
  const { joints } = joining;
  const { jig } = jigging;
  const gluing = planGlueUp({ sheets, parts, strips, seams, joints, jig }, project);
  const totals = totalTray({ parts, strips, seams, joints, jig, plates }, project);
  return {
    project,
    plates,
    sheets,
    joints,
    jointOffers: joining.offers,
    parts,
    seams,
    strips,
    marking,
    jig,
    glueUp: gluing.steps,
    totals,
    problems: [
      ...checkDocument(typed),
      ...lines.problems,
      ...folding.problems,
      ...surfaces.problems,
      ...joining.problems,
      ...patterns.problems,
      ...cutting.problems,
      ...jigging.problems,
      ...gluing.problems,
    ],
  };
}
