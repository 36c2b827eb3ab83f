import { dateOfDay, dayOfDate, weekdayName, weekdayOf } from "../project/index.ts";
import { MINUTES_OF_DAY } from "./working-hours.ts";

/** The date and the minute of the day of a minute counted from the first day's midnight. */
export function momentOf(
  startOn: string,
  minute: number,
): { readonly date: string; readonly minuteOfDay: number } {
  const day = Math.floor(minute / MINUTES_OF_DAY);
  return { date: dateOfDay((dayOfDate(startOn) ?? 0) + day), minuteOfDay: minute - day * MINUTES_OF_DAY };
}

/** `18:25`. */
export function clockWords(minuteOfDay: number): string {
  const two = (value: number) => String(value).padStart(2, "0");
  return `${two(Math.floor(minuteOfDay / 60))}:${two(Math.floor(minuteOfDay % 60))}`;
}

/** `Sat 28 Nov`. */
export function dayWords(date: string): string {
  const [, month, day] = date.split("-");
  const weekday = weekdayName(weekdayOf(dayOfDate(date) ?? 0)).slice(0, 3);
  return `${weekday} ${Number(day)} ${MONTHS[Number(month) - 1] ?? ""}`;
}

/** `Sat 28 Nov, 10:00`. */
export function momentWords(startOn: string, minute: number): string {
  const { date, minuteOfDay } = momentOf(startOn, minute);
  return `${dayWords(date)}, ${clockWords(minuteOfDay)}`;
}

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"] as const;
