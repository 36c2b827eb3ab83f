import type { SkinTask } from "../skins/index.ts";
import { type GlueTasks, waitsFor } from "./glue-tasks.ts";
import { taskOf, toMinutes } from "./task-of.ts";
import type { Task, TaskWait } from "./types.ts";

/** The skins as tasks, with what is glued between them. */
export interface SkinningTasks {
  readonly tasks: readonly Task[];
  readonly waitsAtEnd: readonly TaskWait[];
}

/**
 * The skins after the fairing, each after what it names, with the fences that are glued between: those that come once the
 * tray is turned over follow the turning, those that sit on the lower skin follow its last session. Whatever of the skins comes later
 * waits for them. A session is not interrupted; a face may be made ready on several days.
 */
export function skinningTasks(skins: readonly SkinTask[], gluing: GlueTasks, hands: number): SkinningTasks {
  const own = skins.map((skin) => skinTask(skin, skins, hands));
  const turnAt = skins.findIndex(({ kind }) => kind === "turn over");
  const lowerAt = skins.findLastIndex(({ kind, id }) => kind === "session" && id.includes("lower face"));
  const withTurned = letIn(own, gluing.afterTurn, turnAt);
  const shift = turnAt >= 0 && turnAt < lowerAt ? gluing.afterTurn.length : 0;
  const tasks = letIn(withTurned, gluing.onSkin, lowerAt < 0 ? -1 : lowerAt + shift);
  const last = tasks.length > 0 ? tasks : [];
  return { tasks, waitsAtEnd: last.length > 0 ? waitsFor(last) : [{ taskId: "fairing", waitMinutes: 0 }] };
}

/** Some tasks let in behind the one at a place (at the end where there is none): after it, and before all that follows. */
function letIn(tasks: readonly Task[], come: readonly Task[], place: number): readonly Task[] {
  if (come.length === 0) return tasks;
  const cut = place < 0 ? tasks.length : place + 1;
  const [before, after] = [tasks.slice(0, cut), tasks.slice(cut)];
  const host = before.slice(-1);
  const hostWaits = host.length > 0 ? waitsFor(host) : [{ taskId: "fairing", waitMinutes: 0 }];
  return [
    ...before,
    ...come.map((task) => ({ ...task, after: [...task.after, ...hostWaits] })),
    ...after.map((task) => ({ ...task, after: [...task.after, ...waitsFor(come)] })),
  ];
}

function skinTask(skin: SkinTask, all: readonly SkinTask[], hands: number): Task {
  const waits = skin.after.flatMap((id) =>
    all
      .filter((other) => other.id === id)
      .map((other) => ({ taskId: other.id, waitMinutes: toMinutes(other.cureHours) })),
  );
  const helpers = Math.max(0, skin.hands - hands);
  return taskOf({
    id: skin.id,
    kind: skin.kind === "turn over" ? "turn over" : skin.kind === "ready" ? "fairing" : "skin",
    title: skin.title,
    hands: Math.min(skin.hands, hands),
    workMinutes: skin.workMinutes,
    cureHours: skin.cureHours,
    after: [{ taskId: "fairing", waitMinutes: 0 }, ...waits],
    pauses: skin.kind === "ready" ? "any time" : "never",
    ...(helpers > 0 && { helpers }),
  });
}
