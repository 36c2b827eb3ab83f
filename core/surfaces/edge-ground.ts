import type { SpacePoint } from "../foundation/index.ts";
import type { Project, ResolvedLines } from "../project/index.ts";
import { pivotOf } from "./section-sheets.ts";
import { type EdgeGround, wholeChart } from "./transition-edges.ts";
import type { CylinderChart } from "./types.ts";

/** The free edge of a plate's wing in space, from its start to its end; undefined where there is none. */
export type WingEdge = (itemId: string, wingId: string) => readonly SpacePoint[] | undefined;

/** What the edges of transitions may lie on, but for other transitions, which are put in as they are made. */
export function edgeGround(
  project: Project,
  lines: ResolvedLines,
  wingEdge: WingEdge,
): Omit<EdgeGround, "surfaces"> {
  const charts = new Map<string, CylinderChart>();
  for (const item of project.items) {
    if (item.kind !== "section") continue;
    const outline = lines.plan[item.id];
    const profile = lines.profiles[item.profileId];
    if (outline?.closed && profile) charts.set(item.id, wholeChart(item, profile, pivotOf(item, outline)));
  }
  return { project, charts, wingEdge };
}
