import { dateOfDay, dayOfDate, type WorkingTime, weekdayOf } from "../project/index.ts";
import type { Stint } from "./types.ts";

export const MINUTES_OF_DAY = 1440;

/** The hours in which there may be work. Days count from 0, the start; minutes from its midnight. */
export interface OpenHours {
  /** Undefined on a day without work. */
  readonly ofDay: (day: number) => Stint | undefined;
  readonly dateOf: (day: number) => string;
  readonly isLost: (day: number) => boolean;
  /** The most minutes that a day of the week has. */
  readonly mostMinutes: number;
}

/** The open hours of a working time. */
export function openHours({ startOn, weekdays, lostDays }: Omit<WorkingTime, "log">): OpenHours {
  const first = dayOfDate(startOn) ?? 0;
  const lost = new Set(lostDays.map(dayOfDate));
  const week = weekdays.map(({ fromHour, hours }) => ({
    from: Math.round(fromHour * 60),
    minutes: Math.floor(hours * 60 + 1e-9),
  }));
  return {
    ofDay: (day) => {
      const open = week[weekdayOf(first + day)];
      if (open === undefined || open.minutes <= 0 || lost.has(first + day)) return undefined;
      const fromMinute = day * MINUTES_OF_DAY + open.from;
      return { fromMinute, toMinute: fromMinute + open.minutes };
    },
    dateOf: (day) => dateOfDay(first + day),
    isLost: (day) => lost.has(first + day),
    mostMinutes: Math.max(0, ...week.map(({ minutes }) => minutes)),
  };
}
