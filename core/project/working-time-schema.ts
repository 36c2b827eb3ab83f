import * as v from "valibot";
import { Typed } from "./typed-fields.ts";

const IsoDate = v.pipe(v.string(), v.regex(/^\d{4}-\d{2}-\d{2}$/, "a date as 2026-11-25"));

/** Hours by the clock that a task has taken, and how much of it is done with them: a share, all of it if absent. */
const LoggedTaskSchema = v.strictObject({
  taskId: v.string(),
  /** As it was called then: where the work has changed since, the id may be another task's. */
  title: v.string(),
  hours: Typed,
  done: v.optional(Typed),
});

/** When the work may be done. The start is an input: nothing of the calendar is taken from a clock. */
export const WorkingTimeSchema = v.strictObject({
  /** The date of issue if absent. */
  startOn: v.optional(IsoDate),
  /** Monday first: from which hour of the day, and for how many hours. */
  weekdays: v.optional(v.array(v.strictObject({ fromHour: Typed, hours: Typed }))),
  /** Days on which nothing can be done after all. */
  lostDays: v.optional(v.array(IsoDate)),
  /** What work has really taken so far, each task once. */
  log: v.optional(v.array(LoggedTaskSchema)),
});
