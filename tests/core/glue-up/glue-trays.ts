import { cutStrips } from "../../../core/cutting/index.ts";
import { type GlueStep, planGlueUp } from "../../../core/glue-up/index.ts";
import { buildJig } from "../../../core/jig/index.ts";
import { findJoints } from "../../../core/joints/index.ts";
import { layParts } from "../../../core/patterns/index.ts";
import { type Fence, type Item, type Project, resolveLines } from "../../../core/project/index.ts";
import { buildSheets } from "../../../core/surfaces/index.ts";
import { plainProject } from "../cutting/plain-project.ts";
import { box, boxBeside, section, straightProfile } from "../jig/jig-trays.ts";

/** Everything up to the glue-up, as the stages make it. */
export function planOf(changes: Partial<Project>) {
  const project = plainProject(changes);
  const lines = resolveLines(project);
  const { sheets, folds } = buildSheets(project, lines);
  const { joints, setBacks } = findJoints(project, lines, sheets, folds);
  const { parts } = layParts(project, sheets, setBacks);
  const { strips, seams } = cutStrips(parts, project);
  const { jig } = buildJig(sheets, project);
  const sources = { sheets, parts, strips, seams, joints, jig };
  return { project, sources, ...planGlueUp(sources, project) };
}

export const level = straightProfile("level", [
  [-100, 150],
  [4000, 150],
]);
export const { jig: plainJig, glue: plainGlue, materials } = plainProject();
export const withJig = (changes: Partial<Project["jig"]>): Pick<Project, "jig"> => ({
  jig: { ...plainJig, ...changes },
});

export const centre = section("centre", 1, box(0, 1200, 0, 250), "level");
export const outer = section(
  "outer",
  2,
  boxBeside({ itemId: "centre", edge: ["n3", "n4"] }, "y", [0, 1200, 250, 500]),
  "level",
);
export const fence = (seat: Fence["seat"], standsFirst: boolean): Fence => ({
  kind: "fence",
  id: "fence",
  number: 1,
  name: "Fence",
  line: {
    closed: false,
    elements: [
      { kind: "node", id: "f1", x: 100, y: 400, next: "line" },
      { kind: "node", id: "f2", x: 1100, y: 400, next: "line" },
    ],
  },
  lowerEdge: {
    kind: "heights",
    nodes: [
      { kind: "node", id: "h1", x: 0, z: 100, next: "line" },
      { kind: "node", id: "h2", x: 1200, z: 100, next: "line" },
    ],
  },
  seat,
  standsFirst,
});

export const addsOf = (steps: readonly GlueStep[]) => steps.map(({ adds }) => adds.join("+"));

/** A tray of level sheets as it is glued, and its steps without the dry fit. */
export function tray(items: readonly Item[], changes: Partial<Project> = {}) {
  const plan = planOf({ profiles: [level], items, ...changes });
  return { ...plan, all: plan.steps, steps: plan.steps.filter(({ kind }) => kind !== "dry fit") };
}
