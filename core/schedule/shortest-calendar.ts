import { at } from "../foundation/index.ts";
import { earliestMinute, type Laid, layTask, NOTHING_LAID, type Shop, stintsOf } from "./lay-tasks.ts";
import type { Task } from "./types.ts";
import type { OpenHours } from "./working-hours.ts";

/** The work on a calendar, when its last cure ends, and whether no order of it ends sooner. */
export interface Calendar {
  readonly laid: Laid;
  readonly endMinute: number;
  readonly standing: "shortest" | "short";
}

/** So many tasks are laid at most in looking for a better order; a tray of seven parts needs far fewer. */
const MOST_LAID = 60_000;

/**
 * The calendar that ends soonest: tasks are laid one after the other, each as early as it can be, those first that the longest
 * chain of work and cures hangs on; then other orders as long as one can still be better, by branch and bound. What cannot be
 * better by its chains alone is not tried. Undefined where the days run out.
 */
export function shortestCalendar(
  tasks: readonly Task[],
  hours: OpenHours,
  hands: number,
): Calendar | undefined {
  const tails = tailMinutes(tasks);
  // Whatever is waited for has the longer tail: this is an order that works.
  const ranked = tasks.toSorted((a, b) => (tails.get(b.id) ?? 0) - (tails.get(a.id) ?? 0));
  const emptyShop: Shop = { busy: [], hours, hands };
  let best: Omit<Calendar, "standing"> | undefined;
  let laidCount = 0;

  const canBeBetter = (waiting: readonly Task[], laid: Laid): boolean => {
    laidCount += 1 + waiting.length;
    if (best === undefined) return true;
    return Math.max(endOf(tasks, laid), boundOf(waiting, laid, tails, emptyShop)) < best.endMinute;
  };
  const goOn = (laid: Laid, waiting: readonly Task[]): void => {
    if (waiting.length === 0) {
      const endMinute = endOf(tasks, laid);
      if (best === undefined || endMinute < best.endMinute) best = { laid, endMinute };
      return;
    }
    for (const task of waiting) {
      if (laidCount >= MOST_LAID) return;
      if (task.after.some(({ taskId }) => waiting.some(({ id }) => id === taskId))) continue;
      const next = layTask(task, laid, hours, hands);
      const rest = waiting.filter((other) => other !== task);
      if (next !== undefined && canBeBetter(rest, next)) goOn(next, rest);
    }
  };
  goOn(NOTHING_LAID, ranked);
  return best && { ...best, standing: laidCount < MOST_LAID ? "shortest" : "short" };
}

/** From the beginning of each task to the end of the longest chain of work and cures that follows, minutes. */
export function tailMinutes(tasks: readonly Task[]): ReadonlyMap<string, number> {
  const tails = new Map<string, number>();
  const followers = new Map<string, { readonly task: Task; readonly waitMinutes: number }[]>();
  for (const task of tasks)
    for (const { taskId, waitMinutes } of task.after)
      followers.set(taskId, [...(followers.get(taskId) ?? []), { task, waitMinutes }]);
  const tailOf = (task: Task): number => {
    const known = tails.get(task.id);
    if (known !== undefined) return known;
    const after = (followers.get(task.id) ?? []).map(
      (follower) => follower.waitMinutes + tailOf(follower.task),
    );
    const tail = task.workMinutes + Math.max(task.cureMinutes, ...after);
    tails.set(task.id, tail);
    return tail;
  };
  for (const task of tasks) tailOf(task);
  return tails;
}

/** When the last thing has cured. */
export const endOf = (tasks: readonly Task[], { stints }: Pick<Laid, "stints">): number =>
  tasks.reduce((latest, { id, cureMinutes }) => {
    const end = stints.get(id)?.at(-1)?.toMinute;
    return end === undefined ? latest : Math.max(latest, end + cureMinutes);
  }, 0);

/**
 * No calendar that goes on from here ends before this: what waits is begun as early as its own chain and the open hours
 * allow, as if the shop were empty. What waits stands in an order that works.
 */
function boundOf(
  waiting: readonly Task[],
  { stints }: Laid,
  tails: ReadonlyMap<string, number>,
  shop: Shop,
): number {
  const alone = new Map(stints);
  let bound = 0;
  for (const task of waiting) {
    const own = stintsOf(task, earliestMinute(task, { stints: alone }), shop);
    if (own === undefined) return Number.POSITIVE_INFINITY;
    alone.set(task.id, own);
    bound = Math.max(bound, at(own, -1).toMinute - task.workMinutes + (tails.get(task.id) ?? 0));
  }
  return bound;
}
