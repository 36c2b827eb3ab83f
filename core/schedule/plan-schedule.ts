import { type Memory, NO_MEMORY, type Problem } from "../foundation/index.ts";
import { gluingOf, type Project, type WorkingTime, workingTimeOf } from "../project/index.ts";
import { correctTasks } from "./correct-tasks.ts";
import { criticalTasks } from "./critical-tasks.ts";
import { type Calendar, shortestCalendar, tailMinutes } from "./shortest-calendar.ts";
import { type ScheduleSources, trayTasks } from "./tray-tasks.ts";
import type { PlannedDay, PlannedTask, Schedule, Task } from "./types.ts";
import { MINUTES_OF_DAY, type OpenHours, openHours } from "./working-hours.ts";

/**
 * All the work on a calendar: on the days and hours that the builder has, with the hands in the shop, cures running on through
 * nights and free days, in the order that ends soonest as far as one was found. Work is as long as the
 * log of hours makes it. Problems: logged-task-gone, work-outlasts-day (planned all
 * the same), no-working-day (no calendar).
 */
export function planSchedule(
  sources: ScheduleSources,
  project: Project,
  memory: Memory = NO_MEMORY,
): { readonly schedule: Schedule; readonly problems: readonly Problem[] } {
  const time = memory.keep("working time", workingTimeOf(project));
  const tasks = memory.keep("tasks", trayTasks(sources, project));
  const { hands } = gluingOf(project);
  return memory.recall("schedule", [tasks, time, hands], () => {
    const corrected = correctTasks(tasks, time.log);
    const { schedule, problems } = scheduleTasks(corrected.tasks, time, hands);
    return {
      schedule: { ...schedule, hours: corrected.hours },
      problems: [...corrected.problems, ...problems],
    };
  });
}

/** Tasks on the calendar of a working time; nothing is told of hours that were written down. */
export function scheduleTasks(
  tasks: readonly Task[],
  time: Omit<WorkingTime, "log">,
  hands: number,
): { readonly schedule: Schedule; readonly problems: readonly Problem[] } {
  const hours = openHours(time);
  const calendar = hours.mostMinutes > 0 ? shortestCalendar(tasks, hours, hands) : undefined;
  if (calendar === undefined || tasks.length === 0) {
    const place = { setting: "schedule.weekdays" };
    const problems: readonly Problem[] =
      tasks.length > 0 ? [{ kind: "no-working-day", place, name: "the calendar" }] : [];
    return { schedule: emptySchedule(time), problems: problems };
  }
  const planned = plannedTasks(tasks, calendar, hours, hands);
  const whole = time.lostDays.length > 0 ? unlost(tasks, time, hands) : undefined;
  const schedule: Schedule = {
    startOn: time.startOn,
    endOn: dateAt(calendar.endMinute, hours),
    endMinute: calendar.endMinute,
    ...(whole !== undefined && { withoutLossesOn: whole }),
    standing: calendar.standing,
    chainMinutes: Math.max(...tailMinutes(tasks).values()),
    workMinutes: tasks.reduce((sum, { workMinutes }) => sum + workMinutes, 0),
    tasks: planned,
    days: plannedDays(planned, hours),
    hours: [],
  };
  return { schedule, problems: overlong(tasks, hours) };
}

/** When it would all end had no day been lost. */
function unlost(tasks: readonly Task[], time: Omit<WorkingTime, "log">, hands: number): string | undefined {
  const hours = openHours({ ...time, lostDays: [] });
  const calendar = shortestCalendar(tasks, hours, hands);
  return calendar && dateAt(calendar.endMinute, hours);
}

/** A calendar with nothing on it. */
export const emptySchedule = ({ startOn }: Pick<WorkingTime, "startOn">): Schedule => ({
  startOn,
  endOn: startOn,
  endMinute: 0,
  standing: "shortest",
  chainMinutes: 0,
  workMinutes: 0,
  tasks: [],
  days: [],
  hours: [],
});

/** The date on which a minute falls; midnight belongs to the day that ends with it. */
const dateAt = (minute: number, { dateOf }: OpenHours): string =>
  dateOf(Math.max(0, Math.ceil(minute / MINUTES_OF_DAY) - 1));

/** In the order of the work. */
function plannedTasks(
  tasks: readonly Task[],
  { laid }: Calendar,
  hours: OpenHours,
  hands: number,
): readonly PlannedTask[] {
  const critical = criticalTasks(tasks, laid, hours, hands);
  return tasks
    .map((task): PlannedTask => {
      const stints = laid.stints.get(task.id) ?? [];
      const end = stints.at(-1)?.toMinute ?? 0;
      return { ...task, stints, curedAtMinute: end + task.cureMinutes, isCritical: critical.has(task.id) };
    })
    .toSorted((a, b) => (a.stints[0]?.fromMinute ?? 0) - (b.stints[0]?.fromMinute ?? 0));
}

/** Every day from the first to the last cure. */
function plannedDays(tasks: readonly PlannedTask[], hours: OpenHours): readonly PlannedDay[] {
  const end = Math.max(0, ...tasks.map(({ curedAtMinute }) => curedAtMinute));
  const stints = tasks.flatMap((task) => task.stints);
  return Array.from({ length: Math.max(1, Math.ceil(end / MINUTES_OF_DAY)) }, (_, day): PlannedDay => {
    const startsAtMinute = day * MINUTES_OF_DAY;
    const open = hours.ofDay(day);
    const own = stints.filter((stint) => Math.floor(stint.fromMinute / MINUTES_OF_DAY) === day);
    return {
      date: hours.dateOf(day),
      startsAtMinute,
      openFromMinute: open?.fromMinute ?? startsAtMinute,
      openMinutes: open === undefined ? 0 : open.toMinute - open.fromMinute,
      standing: hours.isLost(day) ? "lost" : "open",
      workMinutes: own.reduce((sum, { fromMinute, toMinute }) => sum + toMinute - fromMinute, 0),
    };
  });
}

const overlong = (tasks: readonly Task[], { mostMinutes }: OpenHours): readonly Problem[] =>
  tasks
    .filter(({ pauses, workMinutes }) => pauses === "never" && workMinutes > mostMinutes)
    .map(({ title, workMinutes }) => ({
      kind: "work-outlasts-day",
      place: { setting: "schedule.weekdays" },
      name: title,
      minutes: workMinutes,
      mostMinutes,
    }));
