import type { Schedule, Task } from "../../../core/schedule/index.ts";

/** What a calendar was asked for. */
export interface Asked {
  readonly tasks: readonly Task[];
  /** Minutes of the day at which work begins and ends, Monday first; undefined on a free day. */
  readonly week: readonly (readonly [from: number, to: number] | undefined)[];
  /** The weekday of the first day, 0 for Monday. */
  readonly firstWeekday: number;
  readonly lost: readonly number[];
  readonly hands: number;
}

const DAY = 1440;

/** Everything that is wrong with a calendar, minute by minute, in words; it knows nothing of how it was made. */
export function faultsOfCalendar({ tasks }: Pick<Schedule, "tasks">, asked: Asked): readonly string[] {
  const faults: string[] = [];
  const placed = new Map(tasks.map((task) => [task.id, task.stints]));
  const handsAt = new Map<number, number>();
  for (const task of asked.tasks) {
    const stints = placed.get(task.id) ?? [];
    const minutes = stints.flatMap(({ fromMinute, toMinute }) =>
      Array.from({ length: toMinute - fromMinute }, (_, i) => fromMinute + i),
    );
    if (minutes.length !== task.workMinutes) faults.push(`${task.id} is worked at for ${minutes.length} min`);
    if (new Set(minutes).size !== minutes.length) faults.push(`${task.id} is worked at twice at once`);
    const first = minutes.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
    if (task.pauses === "never" && stints.length !== 1) faults.push(`${task.id} is interrupted`);
    for (const { taskId, waitMinutes } of task.after) {
      const end = (placed.get(taskId) ?? []).reduce((latest, stint) => Math.max(latest, stint.toMinute), 0);
      if (first < end + waitMinutes) faults.push(`${task.id} begins before ${taskId} has set`);
    }
    for (const minute of minutes) {
      handsAt.set(minute, (handsAt.get(minute) ?? 0) + task.hands);
      const day = Math.floor(minute / DAY);
      const open = asked.lost.includes(day) ? undefined : asked.week[(asked.firstWeekday + day) % 7];
      const ofDay = minute - day * DAY;
      if (open === undefined || ofDay < open[0] || ofDay >= open[1]) {
        faults.push(`${task.id} is worked at outside the hours of day ${day}`);
        break;
      }
    }
  }
  for (const [minute, hands] of handsAt) if (hands > asked.hands) faults.push(`${hands} hands at ${minute}`);
  return faults;
}

/** The soonest end over every order of the tasks: each laid at the first minute where it fits, tried one by one. */
export function soonestEnd({ tasks, week, firstWeekday, lost, hands }: Asked): number {
  const openAt = (minute: number) => {
    const day = Math.floor(minute / DAY);
    const open = lost.includes(day) ? undefined : week[(firstWeekday + day) % 7];
    return open !== undefined && minute - day * DAY >= open[0] && minute - day * DAY < open[1];
  };
  let soonest = Number.POSITIVE_INFINITY;
  const go = (ends: ReadonlyMap<string, number>, busy: ReadonlyMap<number, number>, latest: number) => {
    if (ends.size === tasks.length) {
      soonest = Math.min(soonest, latest);
      return;
    }
    for (const task of tasks) {
      if (ends.has(task.id) || task.after.some(({ taskId }) => !ends.has(taskId))) continue;
      const from = task.after.reduce(
        (start, { taskId, waitMinutes }) => Math.max(start, (ends.get(taskId) ?? 0) + waitMinutes),
        0,
      );
      const isFree = (minute: number) => openAt(minute) && (busy.get(minute) ?? 0) + task.hands <= hands;
      // All times of these tests are whole quarters of an hour.
      let start = Math.ceil(from / 15) * 15;
      const fits = () => {
        for (let m = start; m < start + task.workMinutes; m += 15) if (!isFree(m)) return false;
        return true;
      };
      while (!fits()) start += 15;
      const then = new Map(busy);
      for (let m = start; m < start + task.workMinutes; m += 15) then.set(m, (then.get(m) ?? 0) + task.hands);
      const end = start + task.workMinutes;
      go(new Map(ends).set(task.id, end), then, Math.max(latest, end + task.cureMinutes));
    }
  };
  go(new Map(), new Map(), 0);
  return soonest;
}
