import type { Problem } from "../foundation/index.ts";
import type { LoggedTask } from "../project/index.ts";
import { taskOf } from "./task-of.ts";
import type { HoursOfKind, Task, TaskKind } from "./types.ts";

/** Tasks as long as they took or will take by what was written down. */
export interface CorrectedTasks {
  readonly tasks: readonly Task[];
  readonly hours: readonly HoursOfKind[];
  readonly problems: readonly Problem[];
}

/**
 * What a builder has written down takes the place of what was reckoned. Of each kind of work, what took longer or shorter than
 * reckoned tells the pace; what is left of that kind is reckoned at this pace. A kind of which nothing is written down keeps the
 * rates of common practice. Problem: logged-task-gone.
 */
export function correctTasks(tasks: readonly Task[], log: readonly LoggedTask[]): CorrectedTasks {
  const entryOf = (task: Task) => log.find((entry) => isOf(entry, task));
  const pace = new Map(kindsOf(tasks).map((kind) => [kind, paceOf(ofKind(tasks, kind), entryOf)]));
  const corrected = tasks.map((task) => {
    const entry = entryOf(task);
    const left = task.workMinutes * (1 - (entry?.done ?? 0)) * (pace.get(task.kind) ?? 1);
    return taskOf({
      ...task,
      workMinutes: (entry?.hours ?? 0) * 60 + left,
      cureHours: task.cureMinutes / 60,
    });
  });
  return {
    tasks: log.length === 0 ? tasks : corrected,
    hours: kindsOf(tasks).map((kind) => ({
      kind,
      reckonedMinutes: minutesOf(ofKind(tasks, kind)),
      spentMinutes: ofKind(tasks, kind).reduce((sum, task) => sum + (entryOf(task)?.hours ?? 0) * 60, 0),
      expectedMinutes: minutesOf(ofKind(corrected, kind)),
      pace: pace.get(kind) ?? 1,
    })),
    problems: log
      .filter((entry) => !tasks.some((task) => isOf(entry, task)))
      .map(({ title, hours }) => ({
        kind: "logged-task-gone",
        place: { setting: "schedule.log" },
        name: title,
        hours,
      })),
  };
}

const isOf = ({ taskId, title }: LoggedTask, task: Task): boolean =>
  taskId === task.id && title === task.title;

const kindsOf = (tasks: readonly Task[]): readonly TaskKind[] => [...new Set(tasks.map(({ kind }) => kind))];

const ofKind = (tasks: readonly Task[], kind: TaskKind): readonly Task[] =>
  tasks.filter((task) => task.kind === kind);

const minutesOf = (tasks: readonly Task[]): number =>
  tasks.reduce((sum, { workMinutes }) => sum + workMinutes, 0);

/** Times as long as reckoned that the work of a kind took, as far as it is done; 1 where none is. */
function paceOf(tasks: readonly Task[], entryOf: (task: Task) => LoggedTask | undefined): number {
  const logged = tasks.flatMap((task) => {
    const entry = entryOf(task);
    return entry === undefined ? [] : [{ took: entry.hours * 60, reckoned: task.workMinutes * entry.done }];
  });
  const reckoned = logged.reduce((sum, one) => sum + one.reckoned, 0);
  return reckoned > 0 ? logged.reduce((sum, { took }) => sum + took, 0) / reckoned : 1;
}
