import { earliestMinute, type Laid, stintsOf } from "./lay-tasks.ts";
import { endOf } from "./shortest-calendar.ts";
import type { Stint, Task } from "./types.ts";
import { MINUTES_OF_DAY, type OpenHours } from "./working-hours.ts";

/**
 * The tasks that the end hangs on: were one of them begun a day later, with all the rest following in the same order, the
 * last thing would cure later. Each is tried.
 */
export function criticalTasks(
  tasks: readonly Task[],
  laid: Laid,
  hours: OpenHours,
  hands: number,
): ReadonlySet<string> {
  const order = [...laid.stints.keys()].flatMap((id) => tasks.filter((task) => task.id === id));
  const end = endOf(tasks, laid);
  const isCritical = ({ id }: Task): boolean => {
    const begun = laid.stints.get(id)?.[0]?.fromMinute ?? 0;
    const late = laidLate(order, { id, fromMinute: begun + MINUTES_OF_DAY }, hours, hands);
    return late === undefined || endOf(tasks, late) > end;
  };
  return new Set(tasks.filter(isCritical).map(({ id }) => id));
}

/** Tasks laid in an order, one of them not before a minute; undefined where the days run out. */
function laidLate(
  order: readonly Task[],
  late: { readonly id: string; readonly fromMinute: number },
  hours: OpenHours,
  hands: number,
): Pick<Laid, "stints"> | undefined {
  const stints = new Map<string, readonly Stint[]>();
  const busy: (Stint & { readonly hands: number })[] = [];
  for (const task of order) {
    const least = task.id === late.id ? late.fromMinute : 0;
    const own = stintsOf(task, Math.max(least, earliestMinute(task, { stints })), { busy, hours, hands });
    if (own === undefined) return undefined;
    stints.set(task.id, own);
    busy.push(...own.map((stint) => ({ ...stint, hands: task.hands })));
  }
  return { stints };
}
