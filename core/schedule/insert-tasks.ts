import { formatNumber } from "../foundation/index.ts";
import { glueTimes } from "../glue-up/index.ts";
import { glueOf, gluingOf, laminateOf, type Project } from "../project/index.ts";
import type { SkinPlan } from "../skins/index.ts";
import { taskOf } from "./task-of.ts";
import type { Task, TaskWait } from "./types.ts";

/** Cutting, fitting and gluing a strip along an edge, minutes of one person a metre (common practice). */
const INSERT_PER_M = 15;

/** The strips that are glued along edges once the foam is one, and have set before it is faired; none where there are none. */
export function insertTasks(
  edges: SkinPlan["edges"],
  after: readonly TaskWait[],
  project: Project,
): readonly Task[] {
  const metres = edges.reduce(
    (sum, { finish, lengthMm }) => (finish === "insert" ? sum + lengthMm / 1000 : sum),
    0,
  );
  const glue = glueOf(project);
  if (metres === 0) return [];
  const { hands } = gluingOf(project);
  return [
    taskOf({
      id: "inserts",
      kind: "fairing",
      title: `Glue the hard inserts along the edges, ${formatNumber(metres, 1)} m`,
      hands,
      workMinutes: (metres * INSERT_PER_M) / hands,
      cureHours: glue ? glueTimes(glue, laminateOf(project).shopCelsius).loadHours : 0,
      after,
      pauses: "any time",
    }),
  ];
}
