import { formatNumber } from "../foundation/index.ts";
import {
  clockWords,
  dayWords,
  helperWords,
  hoursWords,
  momentOf,
  momentWords,
  type PlannedTask,
  scheduleWords,
  taskWords,
} from "../schedule/index.ts";
import { type Block, flowBlocks, gapBlock, headingBlock, paragraphBlock, tableBlocks } from "./blocks.ts";
import { calendarPicture } from "./calendar-picture.ts";
import type { Design } from "./design.ts";
import type { Lettering } from "./lettering.ts";
import { CONTENT, CONTENT_WIDTH_MM, type SheetBody } from "./page-frame.ts";

/** No more days stand beside each other. */
const MOST_ACROSS = 31;

/** The work on a calendar: a picture of a month at most, and what is done when, day by day. */
export function calendarSheets(design: Design, lettering: Lettering): readonly SheetBody[] {
  const { schedule } = design;
  if (schedule.tasks.length === 0) return [];
  const text = (words: string) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering);
  const blocks: readonly Block[] = [
    ...scheduleWords(schedule).map(text),
    text(
      "Solid: work, at its hours of the day. Hatched: setting or curing, with no hands on it. Bold: the end hangs on it; were it done a day later, so would all be. Crossed: a day that is lost.",
    ),
    ...pictures(design, lettering),
    gapBlock(4),
    ...hoursTable(design, lettering),
    headingBlock("Day by day"),
    ...dayTable(design, lettering),
  ];
  return flowBlocks(blocks, CONTENT).map((marks) => ({
    title: "Calendar",
    documentType: "calendar",
    scale: "none",
    marks,
  }));
}

function pictures({ schedule: { days, tasks } }: Design, lettering: Lettering): readonly Block[] {
  const count = Math.ceil(days.length / MOST_ACROSS);
  const across = Math.ceil(days.length / count);
  return Array.from({ length: count }, (_, i) => days.slice(i * across, (i + 1) * across)).flatMap((some) => [
    headingBlock(`${dayWords(some[0]?.date ?? "")} to ${dayWords(some.at(-1)?.date ?? "")}`),
    ...calendarPicture(some, tasks, across, lettering),
    gapBlock(3),
  ]);
}

/** Hours by kind of work, with blanks for what they really take. */
function hoursTable({ schedule }: Design, lettering: Lettering): readonly Block[] {
  const figure = { face: "mono" as const, anchor: "end" as const };
  const inHours = (minutes: number) => formatNumber(minutes / 60, 1);
  return [
    headingBlock("Hours by kind of work"),
    ...hoursWords(schedule).map((words) => paragraphBlock(words, CONTENT_WIDTH_MM, lettering)),
    ...tableBlocks(
      [
        { title: "Work", widthMm: 40 },
        { title: "Reckoned, h", widthMm: 28, ...figure },
        { title: "Taken so far, h", widthMm: 30, ...figure },
        { title: "Expected in all, h", widthMm: 34, ...figure },
        { title: "Took, h", widthMm: 42 },
      ],
      schedule.hours.map(({ kind, reckonedMinutes, spentMinutes, expectedMinutes }) => [
        kind,
        inHours(reckonedMinutes),
        spentMinutes > 0 ? inHours(spentMinutes) : "",
        inHours(expectedMinutes),
        "",
      ]),
      lettering,
    ),
    paragraphBlock(
      "By the clock. What is written in the last column is typed under Glue, Hours that it really took; the rest of that kind is then reckoned at your pace.",
      CONTENT_WIDTH_MM,
      lettering,
    ),
    gapBlock(4),
  ];
}

function dayTable({ schedule }: Design, lettering: Lettering): readonly Block[] {
  const { startOn } = schedule;
  const figure = { face: "mono" as const, anchor: "end" as const };
  const stints = schedule.tasks
    .flatMap((task) => task.stints.map((stint, i) => ({ task, stint, isLast: i === task.stints.length - 1 })))
    .toSorted((a, b) => a.stint.fromMinute - b.stint.fromMinute);
  return tableBlocks(
    [
      { title: "Day", widthMm: 24 },
      { title: "From", widthMm: 14, ...figure },
      { title: "To", widthMm: 14, ...figure },
      { title: "Work", widthMm: 86 },
      { title: "Bears load from", widthMm: 36 },
    ],
    stints.map(({ task, stint, isLast }, i) => {
      const from = momentOf(startOn, stint.fromMinute);
      const before = stints[i - 1];
      const isSameDay = before !== undefined && momentOf(startOn, before.stint.fromMinute).date === from.date;
      return [
        isSameDay ? "" : dayWords(from.date),
        clockWords(from.minuteOfDay),
        clockWords(momentOf(startOn, stint.toMinute).minuteOfDay),
        [taskWords(task), goesOn(task, isLast), helperWords(task)].filter((words) => words !== "").join("; "),
        isLast && task.cureMinutes > 0 ? momentWords(startOn, task.curedAtMinute) : "",
      ];
    }),
    lettering,
  );
}

const goesOn = ({ stints, workMinutes }: PlannedTask, isLast: boolean): string =>
  stints.length < 2 ? "" : isLast ? "done" : `goes on, ${formatNumber(workMinutes / 60, 1)} h in all`;
