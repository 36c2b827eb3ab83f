/** What a task is, in the words of the trade. */
export type TaskKind =
  | "templates"
  | "ribs"
  | "jig"
  | "cutting"
  | "glue"
  | "dry fit"
  | "fairing"
  | "panel"
  | "skin"
  | "turn over"
  | "trim";

/** A piece of work. Times are whole minutes for the hands that are at it. */
export interface Task {
  /** The same as long as the work is. */
  readonly id: string;
  readonly kind: TaskKind;
  readonly title: string;
  /** What is done before, and how long it has to have set by then. */
  readonly after: readonly TaskWait[];
  readonly hands: number;
  readonly workMinutes: number;
  /** What sets or cures when the work is done, until it bears load. */
  readonly cureMinutes: number;
  /** Whether it may be laid down in the evening and taken up on another day. */
  readonly pauses: "any time" | "never";
  /** The step of the glue-up that it is. */
  readonly step?: number;
  /** People that it takes besides those in the shop. */
  readonly helpers?: number;
}

export interface TaskWait {
  readonly taskId: string;
  readonly waitMinutes: number;
}

/** Work without a break, in minutes from the midnight that the first day begins with. */
export interface Stint {
  readonly fromMinute: number;
  readonly toMinute: number;
}

/** A task with its place in the calendar. */
export interface PlannedTask extends Task {
  readonly stints: readonly Stint[];
  /** When what it leaves to set bears load; the end of its work where nothing sets. */
  readonly curedAtMinute: number;
  /** Whether the end would come later if this came a day later. */
  readonly isCritical: boolean;
}

/** A day of the calendar on which there is work, or on which there might have been. */
export interface PlannedDay {
  readonly date: string;
  /** From the first day's midnight, minutes. */
  readonly startsAtMinute: number;
  /** Hours of work that the day has, and where they begin; none on a lost day. */
  readonly openFromMinute: number;
  readonly openMinutes: number;
  readonly standing: "open" | "lost";
  readonly workMinutes: number;
}

/** The work of a kind in minutes by the clock: as reckoned, written down so far, and in all by what was written down. */
export interface HoursOfKind {
  readonly kind: TaskKind;
  readonly reckonedMinutes: number;
  readonly spentMinutes: number;
  readonly expectedMinutes: number;
  /** Times as long as reckoned that it took as far as it is done; 1 where nothing is written down. */
  readonly pace: number;
}

/** The work on a calendar. */
export interface Schedule {
  readonly startOn: string;
  /** When the last thing has cured; the start where there is nothing to do. */
  readonly endOn: string;
  readonly endMinute: number;
  /** When it would end had no day been lost; absent where none is. */
  readonly withoutLossesOn?: string;
  /** Whether no order of the work ends sooner, or only none was found. */
  readonly standing: "shortest" | "short";
  /** The longest chain of work and cures, as if every hour of every day were worked, minutes. */
  readonly chainMinutes: number;
  readonly workMinutes: number;
  readonly tasks: readonly PlannedTask[];
  readonly days: readonly PlannedDay[];
  readonly hours: readonly HoursOfKind[];
}
