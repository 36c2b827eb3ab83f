import type { Design } from "./book/index.ts";
import { cutStrips, leaveSpare, runPast, type Strip } from "./cutting/index.ts";
import { type Memory, NO_MEMORY } from "./foundation/index.ts";
import { planGlueUp } from "./glue-up/index.ts";
import {
  allRibs,
  buildJig,
  findOverBend,
  holdBends,
  isOverBent,
  laidFoam,
  layFoam,
  lyingFoam,
  obstaclesOf,
  overBendProblem,
  placeRibs,
} from "./jig/index.ts";
import { findJoints, type SetBack } from "./joints/index.ts";
import { markingTables } from "./marking/index.ts";
import { planPanels } from "./panels/index.ts";
import { layOutlines, layParts, type Part, type PartOutline } from "./patterns/index.ts";
import { foldPlates, wingFreeEdge } from "./plates/index.ts";
import { checkDocument, type Item, type Project, resolveLines, soundProject } from "./project/index.ts";
import { planSchedule } from "./schedule/index.ts";
import { layCloth, patchMaps, planSkins } from "./skins/index.ts";
import { acceptedPlan, isAboutLayout, laidPlan } from "./stock/index.ts";
import { buildSheets } from "./surfaces/index.ts";
import { totalTray, weighTray } from "./totals/index.ts";

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

/**
 * Ahead of a new design: the flat outlines of what was edited since the tray was shaped, each edge set back as its joint
 * asked then. Nothing that follows from the edit in other items is among them, and no problem is told; both come
 * with the shapes. The memory is the one that shaped the tray.
 */
export function outlinesAhead(typed: Project, shaped: Shapes, memory: Memory): readonly PartOutline[] {
  const project = memory.keep("project", soundProject(typed));
  const edited = editedItems(project, shaped.project);
  if (edited.length === 0) return [];
  const ground = groundOf(edited, project);
  const fineness = ground.length === 0 ? "for a screen" : "for cutting";
  const { lines, wingEdge } = drawnLines(project, memory);
  const seen = { ...project, items: [...ground, ...edited], fineness } as const;
  const { sheets } = buildSheets(seen, lines, wingEdge, memory);
  const isEdited = new Set(edited.map(({ id }) => id));
  const setBacks = memory.last<readonly SetBack[]>("set-backs") ?? [];
  return layOutlines(
    project,
    sheets.filter(({ itemId }) => isEdited.has(itemId)),
    setBacks,
  );
}

/** Sections, transitions and fences that are not as they were. */
function editedItems(project: Project, before: Project): readonly Item[] {
  const known = new Set<unknown>([...before.items, ...before.profiles]);
  const isKnown = (profileId: string) =>
    project.profiles.some((one) => one.id === profileId && known.has(one));
  return project.items.filter(
    (item) =>
      item.kind !== "plate" && !(known.has(item) && (item.kind !== "section" || isKnown(item.profileId))),
  );
}

/** What edited items stand on: sections on nothing, transitions and fences on all that lies. */
const groundOf = (edited: readonly Item[], { items }: Project): readonly Item[] =>
  edited.every(({ kind }) => kind === "section")
    ? []
    : items.filter((item) => item.kind !== "fence" && !edited.includes(item));

/** The drawn lines as curves, and the plates folded from them. */
function drawnLines(project: Project, memory: Memory) {
  const lines = memory.keep("lines", resolveLines(project, memory));
  const folding = memory.keep("plates", foldPlates(project, lines, memory));
  const wingEdge = (itemId: string, wingId: string) => wingFreeEdge(folding.plates, itemId, wingId);
  return { lines, folding, wingEdge };
}

/** The stages from the sketch to the flat parts. */
export function shapeTray(typed: Project, memory: Memory = NO_MEMORY): Shapes {
  memory.turn();
  const project = memory.keep("project", soundProject(typed));
  const { lines, folding, wingEdge } = drawnLines(project, memory);
  const { plates } = folding;
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
  const running = runPast(cutting.strips, { parts, sheets, project, memory });
  const { pasts } = running;
  // Of fences it matters here only whether there are any.
  const flats = [...sheets, ...parts].filter(({ kind }) => kind !== "fence");
  const hasFences = sheets.some(({ kind }) => kind === "fence");
  const overBend = memory.recall(
    "over-bend",
    [...flats, ...pasts, hasFences, ...OVER_BEND_GROUND.map((field) => project[field])],
    () => findOverBend({ sheets, parts, pasts, project }),
  );
  const bent = isOverBent(overBend, project) ? overBend : undefined;
  const laid = memory.recall("laid foam", [...flats, ...pasts, bent], () => laidFoam(parts, pasts, bent));
  const foam = lyingFoam({ sheets, parts, seams, laid });
  const { jig: typed, materials, skins } = project;
  const lies = [...foam.sheets, ...foam.parts, ...foam.seams, laid, typed, materials, skins];
  const obstacles = memory.keep("obstacles", obstaclesOf({ sheets, parts }, project));
  const places = memory.recall("rib places", [...lies, obstacles], () => placeRibs(foam, project, obstacles));
  const stand = memory.recall("stand", [places, typed], () => ({ ...typed, ...places }));
  const jigging = buildJig(sheets, { ...project, jig: stand }, memory, {
    parts,
    seams,
    plates,
    laid,
    overBend,
  });
  const { jig } = jigging;
  const lying = memory.recall("lie", [jig, project.asBuilt, ...lies], () => layFoam(jig, foam, project));
  const isPanel = partsOfPanels(parts);
  const glued = {
    parts: parts.filter(({ id }) => !isPanel.has(id)),
    seams: seams.filter(({ partId }) => !isPanel.has(partId)),
    joints: joints.filter(({ partIds }) => !partIds.some((id) => isPanel.has(id))),
  };
  const isGlued = ({ partId }: Strip) => !isPanel.has(partId);
  const holds = holdBends(parts, seams, project, lying.lie);
  const gluing = planGlueUp(
    { sheets, ...glued, strips: running.strips.filter(isGlued), jig, holds },
    project,
  );
  const sparing = leaveSpare(running.strips, gluing.closings, { parts, project, memory });
  const { strips } = sparing;
  const skinning = planSkins({ sheets, parts, joints, seams }, project, memory);
  const { plan: panels, problems: panelProblems } = planPanels(
    { parts, strips, joints, jig, skins: skinning.plan },
    project,
    memory,
  );
  const laying = memory.recall(
    "stock",
    [...strips, panels, ...allRibs(jig), ...STOCK_GROUND.map((field) => project[field])],
    () => acceptedPlan({ parts, strips, panels, jig }, project, memory),
  );
  const scheduling = planSchedule(
    {
      ...glued,
      parts,
      strips: strips.filter(isGlued),
      jig,
      glueUp: gluing.steps,
      skins: skinning.plan,
      panels,
    },
    project,
    memory,
  );
  return {
    seams,
    strips,
    marking: markingTables(strips, project, memory),
    jig,
    lie: lying.lie,
    holds,
    glueUp: gluing.steps,
    skins: skinning.plan,
    panels,
    cloth: [],
    patchMaps: [],
    stock: laying.groups,
    schedule: scheduling.schedule,
    totals: totalTray({ parts, strips, seams, joints, jig, plates, panels }, project),
    weight: memory.recall(
      "weight",
      [
        ...[...parts, ...strips, ...joints, ...seams, ...plates, ...skinning.plan.faces, panels],
        ...[project.laminate, project.materials, project.glue],
      ],
      () =>
        weighTray(
          { sheets, parts, strips, seams, joints, jig, plates, skins: skinning.plan, panels },
          project,
        ),
    ),
    problems: [
      ...shapes.problems,
      ...cutting.problems,
      ...running.problems,
      ...overBendProblem(overBend, project),
      ...jigging.problems,
      ...lying.problems,
      ...gluing.problems,
      ...sparing.problems,
      ...skinning.problems,
      ...panelProblems,
      ...laying.problems,
      ...scheduling.problems,
    ],
  };
}

/** Parts that are cut from a panel, by id. */
const partsOfPanels = (parts: readonly Part[]): ReadonlySet<string> =>
  new Set(parts.filter(({ panel }) => panel !== undefined).map(({ id }) => id));

/** What over-bending follows from, besides sheets and parts. */
const OVER_BEND_GROUND = ["jig", "skins", "materials", "bending"] as const;

/** What layouts follow from, besides strips and ribs. */
const STOCK_GROUND = ["stock", "laying", "layouts", "cutting", "materials", "jig"] as const;

/** The design with every piece laid on stock, also where the builder accepted no layout: takes seconds, and is the same each time. */
export function layOutStock(design: Design): Design {
  const { groups, problems } = laidPlan(design, design.project);
  const others = design.problems.filter(({ place }) => !isAboutLayout(place));
  return { ...design, stock: groups, problems: [...others, ...problems] };
}

/** The design with every patch of cloth laid on its roll, and shown where it lies: takes some seconds, and is the same each time. */
export const layOutCloth = (design: Design): Design => ({
  ...mapPatches(design),
  cloth: layCloth(design.skins, design.project),
});

/** The design with the pictures of where every patch lies. */
export const mapPatches = (design: Design): Design => ({
  ...design,
  patchMaps: patchMaps(design, design.skins),
});
