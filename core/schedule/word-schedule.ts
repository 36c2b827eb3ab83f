import { formatNumber } from "../foundation/index.ts";
import { dayWords } from "./clock-words.ts";
import type { PlannedTask, Schedule } from "./types.ts";

/** When the work ends, what it is in hours, and what the calendar could not better: said once for paper and screen. */
export function scheduleWords(schedule: Schedule): readonly string[] {
  const { startOn, endOn, workMinutes, days, standing, withoutLossesOn, tasks } = schedule;
  if (tasks.length === 0) return [];
  const evenings = days.filter((day) => day.workMinutes > 0).length;
  const lost = days.filter((day) => day.standing === "lost").length;
  return [
    `From ${dayWords(startOn)} to ${dayWords(endOn)}, when the last of it has cured: ${formatNumber(workMinutes / 60, 0)} h of work on ${evenings} days. ${standing === "shortest" ? "No other order of the work ends sooner." : "No order of the work was found that ends sooner."}`,
    ...(lost > 0 && withoutLossesOn !== undefined
      ? [
          `${lost === 1 ? "One day is" : `${lost} days are`} lost; without ${lost === 1 ? "it" : "them"} it would end on ${dayWords(withoutLossesOn)}.`,
        ]
      : []),
    "Cures run on through nights and free days, in a shop kept at its temperature all the while. Hours are those of common practice; a first job takes half as long again.",
  ];
}

/** What the log of hours tells: a sentence for each kind of work that something was written down of. */
export const hoursWords = ({ hours }: Pick<Schedule, "hours">): readonly string[] =>
  hours
    .filter(({ spentMinutes }) => spentMinutes > 0)
    .map(({ kind, pace, spentMinutes, expectedMinutes }) => {
      const took = `${capital(kind)} has taken ${formatNumber(spentMinutes / 60, 1)} h so far, ${formatNumber(pace, 2)} times what was reckoned`;
      const isLeft = expectedMinutes - spentMinutes >= STEP_MINUTES;
      return isLeft ? `${took}; what is left of it is reckoned at that pace.` : `${took}.`;
    });

/** A remainder under this is rounding, minutes. */
const STEP_MINUTES = 5;

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** `7. Lay S1 on the jig`, with the number of the step in the glue-up. */
export const taskWords = ({ step, title }: Pick<PlannedTask, "step" | "title">): string =>
  step === undefined ? title : `${step}. ${title}`;

/** What a task takes besides the hands in the shop; empty where it takes nothing. */
export const helperWords = ({ helpers = 0 }: Pick<PlannedTask, "helpers">): string =>
  helpers === 0 ? "" : `call in ${helpers === 1 ? "one more" : `${helpers} more`} for it`;
