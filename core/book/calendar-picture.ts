import { dayWords, MINUTES_OF_DAY, type PlannedDay, type PlannedTask, taskWords } from "../schedule/index.ts";
import { type Block, breakLines } from "./blocks.ts";
import type { Lettering } from "./lettering.ts";
import { boxMark, filledMark, lineMark, paper, textMark } from "./marks.ts";
import { CONTENT_WIDTH_MM } from "./page-frame.ts";
import type { Mark, PaperPoint } from "./types.ts";

const WORDS_MM = 74;
const DAYS_MM = CONTENT_WIDTH_MM - WORDS_MM;
const ROW_MM = 5;
const BAR_MM = 2.4;
/** A shorter bar could not be seen. */
const LEAST_BAR_MM = 0.9;
const HATCH_MM = 1.4;
const TEXT_MM = 2.5;

/**
 * Days as columns, so many across the sheet, a row for each task that has to do with them: work as solid bars, what sets as hatched ones, at their hours
 * of the day (a bar is never narrower than can be seen). Names of tasks that the end hangs on are bold.
 */
export function calendarPicture(
  days: readonly PlannedDay[],
  tasks: readonly PlannedTask[],
  columns: number,
  lettering: Lettering,
): readonly Block[] {
  const dayMm = DAYS_MM / columns;
  const fromMinute = days[0]?.startsAtMinute ?? 0;
  const toMinute = fromMinute + days.length * MINUTES_OF_DAY;
  const shown = tasks.filter(
    ({ stints, curedAtMinute }) =>
      curedAtMinute > fromMinute && (stints[0]?.fromMinute ?? toMinute) < toMinute,
  );
  const span: Span = { fromMinute, toMinute, dayMm };
  const heading = headBlock(days, dayMm);
  return [heading, ...shown.map((task) => ({ ...rowBlock(task, span, days.length, lettering), heading }))];
}

interface Span {
  readonly fromMinute: number;
  readonly toMinute: number;
  readonly dayMm: number;
}

/** Two letters and two figures need so much. */
const WIDE_DAY_MM = 5;

/**
 * The weekday and the day of the month over every column; where columns are narrow its first letter, and the day over
 * every second. A lost day is crossed.
 */
function headBlock(days: readonly PlannedDay[], dayMm: number): Block {
  const heightMm = 8;
  const isWide = dayMm >= WIDE_DAY_MM;
  return {
    heightMm,
    keepsWithNext: true,
    draw: (corner) =>
      days.flatMap(({ date, standing }, i): readonly Mark[] => {
        const left = corner.x + WORDS_MM + i * dayMm;
        const middle = left + dayMm / 2;
        const look = { heightMm: 2.5, anchor: "middle", face: "mono" } as const;
        const cross = [
          lineMark([paper(left + 0.5, corner.y - 7.2), paper(left + dayMm - 0.5, corner.y - 1)], "outline"),
          lineMark([paper(left + 0.5, corner.y - 1), paper(left + dayMm - 0.5, corner.y - 7.2)], "outline"),
        ];
        return [
          textMark(paper(middle, corner.y - 3), dayWords(date).slice(0, isWide ? 2 : 1), look),
          ...(isWide || i % 2 === 0
            ? [textMark(paper(middle, corner.y - 6.6), `${Number(date.slice(8))}`, look)]
            : []),
          ...(standing === "lost" ? cross : []),
        ];
      }),
  };
}

function rowBlock(task: PlannedTask, span: Span, dayCount: number, lettering: Lettering): Block {
  const face = task.isCritical ? "bold" : "sans";
  const [words = ""] = breakLines(taskWords(task), WORDS_MM - 3, lettering, { face, heightMm: TEXT_MM });
  const draw = (corner: PaperPoint): readonly Mark[] => {
    const left = corner.x + WORDS_MM;
    const foot = corner.y - ROW_MM;
    const xOf = (minute: number) => {
      const within = Math.min(Math.max(minute, span.fromMinute), span.toMinute);
      return left + ((within - span.fromMinute) / MINUTES_OF_DAY) * span.dayMm;
    };
    const bottom = foot + (ROW_MM - BAR_MM) / 2;
    const end = task.stints.at(-1)?.toMinute ?? 0;
    const columns = Array.from({ length: dayCount + 1 }, (_, i) => left + i * span.dayMm);
    return [
      textMark(paper(corner.x, bottom + 0.5), words, { heightMm: TEXT_MM, face }),
      lineMark([paper(corner.x, foot), paper(left + dayCount * span.dayMm, foot)], "station"),
      ...columns.map((x) => lineMark([paper(x, foot), paper(x, corner.y)], "station")),
      ...(task.cureMinutes > 0 ? hatchedBar(xOf(end), xOf(task.curedAtMinute), bottom) : []),
      ...task.stints
        .filter(({ fromMinute }) => fromMinute >= span.fromMinute && fromMinute < span.toMinute)
        .map(({ fromMinute, toMinute }) => {
          const x = xOf(fromMinute);
          return solidBar(x, Math.max(xOf(toMinute), x + LEAST_BAR_MM), bottom);
        }),
    ];
  };
  return { heightMm: ROW_MM, draw };
}

const solidBar = (from: number, to: number, bottom: number): Mark =>
  filledMark(
    [paper(from, bottom), paper(to, bottom), paper(to, bottom + BAR_MM), paper(from, bottom + BAR_MM)],
    "ink",
    "station",
  );

/** A bar with slanting lines in it, each cut off at the bar's ends. */
function hatchedBar(from: number, to: number, bottom: number): readonly Mark[] {
  if (to - from < LEAST_BAR_MM) return [];
  const lines: Mark[] = [];
  for (let x = from - BAR_MM; x < to; x += HATCH_MM) {
    const [a, b] = [Math.max(x, from), Math.min(x + BAR_MM, to)];
    if (b > a) lines.push(lineMark([paper(a, bottom + a - x), paper(b, bottom + b - x)], "station"));
  }
  return [boxMark(paper(from, bottom), to - from, BAR_MM, "station"), ...lines];
}
