import { foldPlates, wingFreeEdge } from "../../core/plates/index.ts";
import { type Project, resolveLines, soundProject } from "../../core/project/index.ts";
import { type EaseLimits, type Easing, easeTransition } from "../../core/surfaces/index.ts";

/** How the free edge of a transition can be eased in the tray as it stands; undefined where it cannot be. */
export function easeIn(typed: Project, itemId: string, limits: EaseLimits): Easing | undefined {
  const project = soundProject(typed);
  const { plates } = foldPlates(project, resolveLines(project));
  return easeTransition(project, itemId, limits, (plateId, wingId) => wingFreeEdge(plates, plateId, wingId));
}
