import { type LetIn, letInAt, type Project } from "../project/index.ts";
import type { Sheet } from "../surfaces/index.ts";

/** What is let in along each edge of a sheet, by its id; edges that foam runs out to are not in it. */
export type LetInEdges = ReadonlyMap<string, LetIn>;

const NONE: LetInEdges = new Map();

/** What is let in along the free edges of a sheet. A fence that is cut from a panel is skinned before: nothing is let into it. */
export function letInOf(
  project: Pick<Project, "laminate" | "materials" | "items">,
  sheet: Sheet,
): LetInEdges {
  if (sheet.kind === "fence" && sheet.panel) return NONE;
  const at = letInAt(project, sheet.itemId);
  const free = sheet.loops
    .flatMap(({ edges }) => edges)
    .filter(({ role, isApex }) => role === "free" && !isApex);
  return new Map(
    free.flatMap(({ edgeId }) => {
      const letIn = at(edgeId);
      return letIn ? [[edgeId, letIn] as const] : [];
    }),
  );
}
