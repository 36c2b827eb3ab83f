import type { GlueStep } from "../glue-up/index.ts";
import type { PanelPlan } from "../panels/index.ts";
import type { Part } from "../patterns/index.ts";
import { gluingOf, type Project } from "../project/index.ts";
import type { SkinPlan } from "../skins/index.ts";
import { type GlueTasks, glueTasks, waitsFor } from "./glue-tasks.ts";
import { insertTasks } from "./insert-tasks.ts";
import { type PanelTasks, panelTasks } from "./panel-tasks.ts";
import { skinningTasks } from "./skinning-tasks.ts";
import { taskOf } from "./task-of.ts";
import type { Task } from "./types.ts";
import { type Workpieces, workMinutes } from "./work-minutes.ts";

/** What the calendar is made from. */
export interface ScheduleSources extends Workpieces {
  readonly parts: readonly Part[];
  readonly glueUp: readonly GlueStep[];
  readonly skins: Pick<SkinPlan, "tasks" | "edges" | "faces">;
  readonly panels: Pick<PanelPlan, "tasks">;
}

/** Trimming cured edges, minutes of one person a metre (common practice). */
const TRIM_PER_M = 6;

/** The glue-up with the fences that are bonded on beside those that are glued on the finished skin. */
const withBonds = (gluing: GlueTasks, { bonding }: PanelTasks): GlueTasks => ({
  ...gluing,
  onSkin: [...gluing.onSkin, ...bonding],
});

/**
 * All the work from the first template to the last cut, for the hands in the shop: foam and ribs are made in any order, the
 * tray is glued as the glue-up says, its joints are faired once they bear load, and it is skinned as the skins say. None
 * where there is no glue-up; where no session can be planned the work ends at bare foam, as what follows stands on the skins.
 */
export function trayTasks(sources: ScheduleSources, project: Project): readonly Task[] {
  if (sources.glueUp.length === 0) return [];
  const { hands } = gluingOf(project);
  const minutes = workMinutes(sources, project);
  const shared = (kind: Task["kind"], title: string, personMinutes: number, afterIds: readonly string[]) =>
    taskOf({
      id: kind,
      kind,
      title,
      hands,
      workMinutes: personMinutes / hands,
      after: afterIds.map((taskId) => ({ taskId, waitMinutes: 0 })),
      pauses: "any time",
    });
  const making = [
    shared("templates", "Print and tape the templates", minutes.templates, []),
    shared("cutting", "Mark and cut the foam", minutes.cutting, ["templates"]),
    shared("ribs", "Cut the ribs", minutes.ribs, ["templates"]),
    shared("jig", "Set up the jig", minutes.settingUp, ["ribs"]),
  ];
  const gluing = glueTasks(sources.glueUp, hands);
  const inserts = insertTasks(sources.skins.edges, gluing.waitsBeforeSkins, project);
  const fairing = {
    ...shared("fairing", "Fair the joints", minutes.fairing, []),
    after: [...gluing.waitsBeforeSkins, ...waitsFor(inserts)],
  };
  const panels = panelTasks(sources.panels.tasks, hands);
  if (sources.skins.faces.length > 0 && sources.skins.tasks.length === 0)
    return [...making, ...panels.making, ...gluing.tasks, ...inserts, fairing];
  const skinning = skinningTasks(sources.skins.tasks, withBonds(gluing, panels), hands);
  const trimming = {
    ...shared("trim", "Trim the edges", freeMetres(sources.parts) * TRIM_PER_M, []),
    after: skinning.waitsAtEnd,
  };
  return [...making, ...panels.making, ...gluing.tasks, ...inserts, fairing, ...skinning.tasks, trimming];
}

const freeMetres = (parts: readonly Part[]): number =>
  parts
    .flatMap(({ edges }) => edges.filter(({ role }) => role === "free"))
    .reduce((sum, { flatLengthMm }) => sum + flatLengthMm / 1000, 0);
