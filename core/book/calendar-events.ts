import { formatNumber } from "../foundation/index.ts";
import { type GlueStep, openTimeWords } from "../glue-up/index.ts";
import {
  clockWords,
  helperWords,
  momentOf,
  momentWords,
  type PlannedTask,
  taskWords,
} from "../schedule/index.ts";
import type { Design } from "./design.ts";

/** Something on a calendar: times are those on the clock of the shop's wall. */
export interface CalendarEvent {
  /** The same as long as the work is, whatever day it falls on. */
  readonly uid: string;
  readonly taskId: string;
  readonly from: WallTime;
  readonly to: WallTime;
  readonly title: string;
  readonly description: string;
  /** Work takes the hands; what sets does not. */
  readonly takes: "hands" | "nothing";
}

export interface WallTime {
  /** 2026-11-25 */
  readonly date: string;
  readonly minuteOfDay: number;
}

/** All work and all cures of a design, in the order of the calendar. */
export function calendarEvents({
  project,
  schedule,
  glueUp,
}: Pick<Design, "project" | "schedule" | "glueUp">): readonly CalendarEvent[] {
  const { startOn } = schedule;
  const event = (task: PlannedTask, fromMinute: number, toMinute: number) => ({
    taskId: task.id,
    from: momentOf(startOn, fromMinute),
    to: momentOf(startOn, toMinute),
    description: descriptionOf(task, glueUp),
  });
  return schedule.tasks.flatMap((task): readonly CalendarEvent[] => {
    const uid = `${project.id}.${task.id.replaceAll(/[^A-Za-z0-9]+/g, "-")}`;
    const end = task.stints.at(-1)?.toMinute ?? 0;
    const work = task.stints.map(({ fromMinute, toMinute }, i): CalendarEvent => {
      const part = task.stints.length > 1 ? `, ${i + 1} of ${task.stints.length}` : "";
      return {
        uid: `${uid}.${i + 1}`,
        ...event(task, fromMinute, toMinute),
        title: `${taskWords(task)}${part}`,
        takes: "hands",
      };
    });
    if (task.cureMinutes === 0) return work;
    const cure: CalendarEvent = {
      uid: `${uid}.cure`,
      ...event(task, end, task.curedAtMinute),
      title: `Setting: ${taskWords(task)}`,
      description: `Bears load from ${momentWords(startOn, task.curedAtMinute)} on.`,
      takes: "nothing",
    };
    return [...work, cure];
  });
}

function descriptionOf(task: PlannedTask, steps: readonly GlueStep[]): string {
  const step = steps.find((one) => one.step === task.step);
  return [
    `${formatNumber(task.workMinutes, 0)} min of work.`,
    ...(step === undefined ? [] : [step.why, ...step.how, openTimeWords(step), ...step.cautions]),
    helperWords(task),
  ]
    .filter((words) => words !== "")
    .join("\n");
}

/** The rows of the calendar for a table: work and what sets, in the order of the days. */
export const calendarRows = (
  design: Pick<Design, "project" | "schedule" | "glueUp">,
): readonly (readonly (string | number)[])[] => {
  const critical = new Set(design.schedule.tasks.filter(({ isCritical }) => isCritical).map(({ id }) => id));
  return calendarEvents(design).map(({ uid, taskId, from, to, title, takes }) => [
    from.date,
    clockWords(from.minuteOfDay),
    to.date,
    clockWords(to.minuteOfDay),
    takes === "hands" ? "work" : "setting",
    title,
    critical.has(taskId) ? "yes" : "no",
    uid,
  ]);
};
