import type { Stint, Task } from "./types.ts";
import { MINUTES_OF_DAY, type OpenHours } from "./working-hours.ts";

/** Where tasks were laid so far. */
export interface Laid {
  readonly stints: ReadonlyMap<string, readonly Stint[]>;
  /** Who is at work when, in the order of laying. */
  readonly busy: readonly (Stint & { readonly hands: number })[];
}

export const NOTHING_LAID: Laid = { stints: new Map(), busy: [] };

/** For less than this nobody takes up a piece of work in the evening (common practice). */
const LEAST_STINT_MINUTES = 15;

/** No calendar is longer than three years. */
export const MOST_DAYS = 1096;

/**
 * A task laid after those that are laid already, as early as what it waits for, the open hours and the hands in the shop
 * allow: without a break in one day, or piece by piece where it may pause. One that fits no day goes past the end of the
 * first that is long enough to begin it. Undefined where it would come after the last day of all.
 */
export function layTask(task: Task, laid: Laid, hours: OpenHours, hands: number): Laid | undefined {
  const stints = stintsOf(task, earliestMinute(task, laid), { busy: laid.busy, hours, hands });
  if (stints === undefined) return undefined;
  return {
    stints: new Map(laid.stints).set(task.id, stints),
    busy: [...laid.busy, ...stints.map((stint) => ({ ...stint, hands: task.hands }))],
  };
}

/** The shop on its days, with who is at work when. */
export interface Shop {
  readonly busy: Laid["busy"];
  readonly hours: OpenHours;
  readonly hands: number;
}

/** When a task would be worked at, from a minute on; undefined where its days run out. */
export const stintsOf = (task: Task, from: number, shop: Shop): readonly Stint[] | undefined =>
  task.pauses === "any time" ? inPieces(task, from, shop) : inOneGo(task, from, shop);

/** When what a task waits for is done and has set. */
export const earliestMinute = ({ after }: Task, { stints }: Pick<Laid, "stints">): number =>
  after.reduce((latest, { taskId, waitMinutes }) => {
    const end = stints.get(taskId)?.at(-1)?.toMinute;
    return end === undefined ? latest : Math.max(latest, end + waitMinutes);
  }, 0);

function inOneGo(task: Task, from: number, shop: Shop): readonly Stint[] | undefined {
  const { hours } = shop;
  const isOverlong = task.workMinutes > hours.mostMinutes;
  for (let day = Math.floor(from / MINUTES_OF_DAY); day < MOST_DAYS; day++) {
    const open = hours.ofDay(day);
    if (open === undefined) continue;
    for (const gap of gapsOf(open, from, task.hands, shop)) {
      const fits = gap.toMinute - gap.fromMinute >= task.workMinutes;
      const goesOver = isOverlong && gap.toMinute === open.toMinute;
      if (fits || goesOver)
        return [{ fromMinute: gap.fromMinute, toMinute: gap.fromMinute + task.workMinutes }];
    }
  }
  return undefined;
}

function inPieces(task: Task, from: number, shop: Shop): readonly Stint[] | undefined {
  const { hours } = shop;
  const stints: Stint[] = [];
  let left = task.workMinutes;
  for (let day = Math.floor(from / MINUTES_OF_DAY); day < MOST_DAYS; day++) {
    const open = hours.ofDay(day);
    if (open === undefined) continue;
    for (const { fromMinute, toMinute } of gapsOf(open, from, task.hands, shop)) {
      const minutes = Math.min(left, toMinute - fromMinute);
      if (minutes < Math.min(left, LEAST_STINT_MINUTES)) continue;
      stints.push({ fromMinute, toMinute: fromMinute + minutes });
      left -= minutes;
      if (left <= 0) return stints;
    }
  }
  return undefined;
}

/** The stretches of a day's open hours, from a minute on, in which so many hands are free. */
function gapsOf(
  open: Stint,
  from: number,
  needed: number,
  { busy, hands }: Pick<Shop, "busy" | "hands">,
): readonly Stint[] {
  const start = Math.max(open.fromMinute, from);
  if (start >= open.toMinute) return [];
  const own = busy.filter(({ fromMinute, toMinute }) => fromMinute < open.toMinute && toMinute > start);
  if (own.length === 0) return [{ fromMinute: start, toMinute: open.toMinute }];
  const inside = own
    .flatMap(({ fromMinute, toMinute }) => [fromMinute, toMinute])
    .filter((minute) => minute > start && minute < open.toMinute);
  const marks = [...new Set([start, ...inside, open.toMinute])].sort((a, b) => a - b);
  const gaps: Stint[] = [];
  marks.slice(1).forEach((toMinute, i) => {
    const fromMinute = marks[i] ?? start;
    const taken = own
      .filter((stint) => stint.fromMinute < toMinute && stint.toMinute > fromMinute)
      .reduce((sum, stint) => sum + stint.hands, 0);
    if (hands - taken < needed) return;
    const last = gaps.at(-1);
    if (last?.toMinute === fromMinute) gaps[gaps.length - 1] = { fromMinute: last.fromMinute, toMinute };
    else gaps.push({ fromMinute, toMinute });
  });
  return gaps;
}
