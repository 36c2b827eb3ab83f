export { clockWords, dayWords, momentOf, momentWords } from "./clock-words.ts";
export { correctTasks } from "./correct-tasks.ts";
export { emptySchedule, planSchedule, scheduleTasks } from "./plan-schedule.ts";
export type {
  HoursOfKind,
  PlannedDay,
  PlannedTask,
  Schedule,
  Stint,
  Task,
  TaskKind,
  TaskWait,
} from "./types.ts";
export { helperWords, hoursWords, scheduleWords, taskWords } from "./word-schedule.ts";
export { type Workpieces, workMinutes } from "./work-minutes.ts";
export { MINUTES_OF_DAY } from "./working-hours.ts";
