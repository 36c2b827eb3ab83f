import type { Problem } from "../foundation/index.ts";
import { dayOfDate } from "./civil-date.ts";
import { isWithin, RANGES } from "./limits.ts";
import type { Project } from "./schema.ts";

/** When there is work on a weekday: from which hour of the day, and for how many hours; none on a day of 0. */
export interface WorkingHours {
  readonly fromHour: number;
  readonly hours: number;
}

/** When the work may be done, with nothing left open. */
export interface WorkingTime {
  readonly startOn: string;
  /** Monday first, always seven. */
  readonly weekdays: readonly WorkingHours[];
  readonly lostDays: readonly string[];
  readonly log: readonly LoggedTask[];
}

/** What a task has really taken so far. */
export interface LoggedTask {
  readonly taskId: string;
  readonly title: string;
  /** By the clock, whatever the number of hands. */
  readonly hours: number;
  /** How much of it is done, over 0 to 1. */
  readonly done: number;
}

/** Three hours of an evening, six of a day at the weekend (common practice of people who build at home). */
const EVENING: WorkingHours = { fromHour: 18, hours: 3 };
const FREE_DAY: WorkingHours = { fromHour: 10, hours: 6 };
const WEEK = [EVENING, EVENING, EVENING, EVENING, EVENING, FREE_DAY, FREE_DAY] as const;
/** Where neither a start nor a date of issue is in the calendar. */
const FALLBACK_START = "2000-01-03";

/** When work may be done: what is typed, else the week of a home builder from the date of issue on. */
export function workingTimeOf({
  schedule = {},
  titleBlock,
}: Pick<Project, "schedule" | "titleBlock">): WorkingTime {
  const { startOn = titleBlock.issuedOn, weekdays, lostDays = [], log = [] } = schedule;
  return {
    startOn: dayOfDate(startOn) === undefined ? FALLBACK_START : startOn,
    weekdays: WEEK.map((usual, i) => weekdays?.[i] ?? usual),
    lostDays,
    log: log.map(({ done = 1, ...rest }) => ({ ...rest, done })),
  };
}

const NAMES = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"] as const;

/** The weekday's name, Monday for 0. */
export const weekdayName = (weekday: number): string => NAMES[weekday] ?? "";

/** The working time without dates that are none, and with the usual hours for those that no day has. */
export function soundWorkingTime(
  { startOn, weekdays, lostDays, log, ...rest }: NonNullable<Project["schedule"]>,
  problems: Problem[],
): NonNullable<Project["schedule"]> {
  const isDate = (date: string, field: string, setting: string) => {
    if (dayOfDate(date) !== undefined) return true;
    problems.push({ kind: "no-such-date", place: { setting }, name: "the calendar", field, date });
    return false;
  };
  const isStart = startOn !== undefined && isDate(startOn, "start", "schedule.startOn");
  const sound = weekdays?.slice(0, 7).map((day, i) => soundDay(day, i, problems));
  const lost = lostDays?.filter((date) => isDate(date, "lost day", "schedule.lostDays"));
  return {
    ...rest,
    ...(isStart && { startOn }),
    ...(sound !== undefined && { weekdays: sound }),
    ...(lost !== undefined && { lostDays: lost }),
    ...(log !== undefined && { log: log.map((entry) => soundEntry(entry, problems)) }),
  };
}

/** An entry of the log within its bounds. */
function soundEntry<Entry extends Omit<LoggedTask, "done"> & { readonly done?: number | undefined }>(
  entry: Entry,
  problems: Problem[],
): Entry {
  const checked = (value: number, field: string, range: typeof RANGES.loggedHours): number => {
    if (isWithin(value, range)) return value;
    const used = value > range.most ? range.most : range.least;
    problems.push({
      kind: "number-out-of-range",
      place: { setting: "schedule.log" },
      name: entry.title,
      field,
      value,
      ...range,
      used,
    });
    return used;
  };
  return {
    ...entry,
    hours: checked(entry.hours, "Hours", RANGES.loggedHours),
    ...(entry.done !== undefined && { done: checked(entry.done, "Share done", RANGES.doneShare) }),
  };
}

function soundDay({ fromHour, hours }: WorkingHours, weekday: number, problems: Problem[]): WorkingHours {
  const usual = WEEK[weekday] ?? EVENING;
  const checked = (value: number, field: string, most: number, used: number): number => {
    const range = { least: 0, most };
    if (isWithin(value, range)) return value;
    const place = { setting: `schedule.weekdays.${weekday}` };
    problems.push({
      kind: "number-out-of-range",
      place,
      name: weekdayName(weekday),
      field,
      value,
      ...range,
      used,
    });
    return used;
  };
  const from = checked(fromHour, "First hour", RANGES.hourOfDay.most, usual.fromHour);
  const mostHours = RANGES.hourOfDay.most - from;
  return { fromHour: from, hours: checked(hours, "Hours", mostHours, Math.min(usual.hours, mostHours)) };
}
