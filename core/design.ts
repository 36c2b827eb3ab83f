import type { Design } from "./book/index.ts";
import { cutStrips, leaveSpare } from "./cutting/index.ts";
import { type Memory, NO_MEMORY } from "./foundation/index.ts";
import { planGlueUp } from "./glue-up/index.ts";
import { allRibs, buildJig, holdBends } from "./jig/index.ts";
import { findJoints } from "./joints/index.ts";
import { markingTables } from "./marking/index.ts";
import { layParts } from "./patterns/index.ts";
import { foldPlates, wingFreeEdge } from "./plates/index.ts";
import { checkDocument, type Project, resolveLines, soundProject } from "./project/index.ts";
import { acceptedPlan, isAboutLayout, laidPlan } from "./stock/index.ts";
import { buildSheets } from "./surfaces/index.ts";
import { totalTray } from "./totals/index.ts";

export type { Design } from "./book/index.ts";

/** What the first stages give: every sheet and part, before anything is cut, held or glued. */
export type Shapes = Pick<
  Design,
  "project" | "plates" | "sheets" | "joints" | "jointOffers" | "parts" | "problems"
>;

/** What the later stages add; the problems are those of all stages. */
export type Work = Omit<Design, Exclude<keyof Shapes, "problems">>;

/**
 * The stages in order. Never throws for what a builder drew or typed: what cannot be made has a problem that
 * names it, and everything else is there. With a memory, what has not changed since the last design is taken from it;
 * what comes out is the same.
 */
export function designTray(typed: Project, memory: Memory = NO_MEMORY): Design {
  const shapes = shapeTray(typed, memory);
  return { ...shapes, ...planWork(shapes, memory) };
}

/** The stages from the sketch to the flat parts. */
export function shapeTray(typed: Project, memory: Memory = NO_MEMORY): Shapes {
  memory.turn();
  const project = memory.keep("project", soundProject(typed));
  const lines = memory.keep("lines", resolveLines(project));
  const folding = memory.keep("plates", foldPlates(project, lines));
  const { plates } = folding;
  const wingEdge = (itemId: string, wingId: string) => wingFreeEdge(plates, itemId, wingId);
  const surfaces = buildSheets(project, lines, wingEdge, memory);
  const joining = findJoints(project, lines, surfaces.sheets, surfaces.folds, memory);
  const setBacks = memory.keep("set-backs", joining.setBacks);
  const patterns = layParts(project, surfaces.sheets, setBacks, memory);
  return {
    project,
    plates,
    sheets: surfaces.sheets,
    joints: joining.joints,
    jointOffers: joining.offers,
    parts: patterns.parts,
    problems: [
      ...checkDocument(typed),
      ...lines.problems,
      ...folding.problems,
      ...surfaces.problems,
      ...joining.problems,
      ...patterns.problems,
    ],
  };
}

/** The stages from the flat parts to the work on the bench; `memory` is the one that shaped them, or one of its own. */
export function planWork(shapes: Shapes, memory: Memory = NO_MEMORY): Work {
  const { project, plates, sheets, joints, parts } = shapes;
  const cutting = cutStrips(parts, project, memory);
  const { seams } = cutting;
  const jigging = buildJig(sheets, project, memory, { parts, seams, plates });
  const { jig } = jigging;
  const gluing = planGlueUp({ sheets, parts, strips: cutting.strips, seams, joints, jig }, project);
  const sparing = leaveSpare(cutting.strips, gluing.closings, { parts, project, memory });
  const { strips } = sparing;
  const laying = memory.recall(
    "stock",
    [...strips, ...allRibs(jig), ...STOCK_GROUND.map((field) => project[field])],
    () => acceptedPlan({ parts, strips, jig }, project, memory),
  );
  return {
    seams,
    strips,
    marking: markingTables(strips, project, memory),
    jig,
    holds: holdBends(parts, seams, project),
    glueUp: gluing.steps,
    stock: laying.groups,
    totals: totalTray({ parts, strips, seams, joints, jig, plates }, project),
    problems: [
      ...shapes.problems,
      ...cutting.problems,
      ...jigging.problems,
      ...gluing.problems,
      ...sparing.problems,
      ...laying.problems,
    ],
  };
}

/** What layouts follow from, besides strips and ribs. */
const STOCK_GROUND = ["stock", "laying", "layouts", "cutting", "materials", "jig"] as const;

/** The design with every piece laid on stock, also where the builder accepted no layout: takes seconds, and is the same each time. */
export function layOutStock(design: Design): Design {
  const { groups, problems } = laidPlan(design, design.project);
  const others = design.problems.filter(({ place }) => !isAboutLayout(place));
  return { ...design, stock: groups, problems: [...others, ...problems] };
}
