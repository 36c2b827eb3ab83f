import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { scheduleTasks, type Task } from "../../../core/schedule/index.ts";
import { type Asked, faultsOfCalendar, soonestEnd } from "./check-calendar.ts";

const QUARTER = 15;

const task = (id: string, quarters: number, changes: Partial<Task> = {}): Task => ({
  id,
  kind: "glue",
  title: id,
  after: [],
  hands: 1,
  workMinutes: quarters * QUARTER,
  cureMinutes: 0,
  pauses: "never",
  ...changes,
});
const waits = (...list: readonly (readonly [taskId: string, quarters: number])[]) =>
  list.map(([taskId, quarters]) => ({ taskId, waitMinutes: quarters * QUARTER }));

const evenings = Array.from({ length: 7 }, () => ({ fromHour: 18, hours: 3 }));
/** 2026-01-05 is a Monday. */
const MONDAY = "2026-01-05";
const at = (day: number, hour: number) => day * 1440 + hour * 60;

describe("work on a calendar", () => {
  it("keeps what must not be interrupted within one evening and lets the rest pause overnight", () => {
    const tasks = [task("cut", 16, { pauses: "any time" }), task("glue", 9, { after: waits(["cut", 0]) })];
    const { schedule } = scheduleTasks(tasks, { startOn: MONDAY, weekdays: evenings, lostDays: [] }, 1);
    expect(schedule.tasks.map(({ stints }) => stints)).toEqual([
      [
        { fromMinute: at(0, 18), toMinute: at(0, 21) },
        { fromMinute: at(1, 18), toMinute: at(1, 19) },
      ],
      // Two hours are left on Tuesday, and it takes two and a quarter.
      [{ fromMinute: at(2, 18), toMinute: at(2, 20.25) }],
    ]);
    expect(schedule.endOn).toBe("2026-01-07");
  });

  it("lets a cure run on through the night and a free day", () => {
    const tasks = [
      task("glue", 4, { cureMinutes: 24 * 60 }),
      task("load", 4, { after: waits(["glue", 96]) }),
    ];
    const saturday = { fromHour: 10, hours: 4 };
    const weekdays = evenings.map((_, i) => (i === 5 ? saturday : { fromHour: 18, hours: i === 0 ? 3 : 0 }));
    const { schedule } = scheduleTasks(tasks, { startOn: "2026-01-10", weekdays, lostDays: [] }, 1);
    expect(schedule.tasks.map(({ stints: [first] }) => first?.fromMinute)).toEqual([at(0, 10), at(2, 18)]);
    expect(schedule.days.map(({ date }) => date)).toEqual(["2026-01-10", "2026-01-11", "2026-01-12"]);
  });

  it("goes on the day after a lost one, and says when it would have ended", () => {
    const tasks = [task("glue", 4, { cureMinutes: 60 })];
    const time = { startOn: MONDAY, weekdays: evenings, lostDays: [MONDAY] };
    const { schedule } = scheduleTasks(tasks, time, 1);
    expect(schedule).toMatchObject({ endOn: "2026-01-06", withoutLossesOn: MONDAY });
    expect(schedule.days.map(({ standing }) => standing)).toEqual(["lost", "open"]);
  });

  it("names work that is longer than any day, and plans it over the end of one", () => {
    const { schedule, problems } = scheduleTasks(
      [task("session", 20)],
      { startOn: MONDAY, weekdays: evenings, lostDays: [] },
      1,
    );
    expect(problems).toEqual([
      expect.objectContaining({ kind: "work-outlasts-day", name: "session", minutes: 300, mostMinutes: 180 }),
    ]);
    expect(schedule.tasks[0]?.stints).toEqual([{ fromMinute: at(0, 18), toMinute: at(0, 23) }]);
  });

  it("is none where no day has hours, and does not hang where all of the days are lost", () => {
    const free = evenings.map(({ fromHour }) => ({ fromHour, hours: 0 }));
    const none = scheduleTasks([task("a", 1)], { startOn: MONDAY, weekdays: free, lostDays: [] }, 1);
    expect(none.problems.map(({ kind }) => kind)).toEqual(["no-working-day"]);
    const rare = evenings.map(({ fromHour }, i) => ({ fromHour, hours: i === 0 ? 0.26 : 0 }));
    const long = task("a", 4 * 400, { pauses: "any time" });
    const never = scheduleTasks([long], { startOn: MONDAY, weekdays: rare, lostDays: [] }, 1);
    expect(never.problems.map(({ kind }) => kind)).toEqual(["no-working-day"]);
    expect(never.schedule.tasks).toEqual([]);
  });

  it("marks what the end hangs on", () => {
    const tasks = [
      task("side", 2),
      task("first", 4, { cureMinutes: 24 * 60 }),
      task("second", 4, { cureMinutes: 24 * 60, after: waits(["first", 96]) }),
    ];
    const { schedule } = scheduleTasks(tasks, { startOn: MONDAY, weekdays: evenings, lostDays: [] }, 1);
    const critical = schedule.tasks.filter(({ isCritical }) => isCritical).map(({ id }) => id);
    expect(critical).toEqual(["first", "second"]);
  });
});

/** Up to seven pieces of work, each after some before it, with cures of up to two days. */
const anyTasks = fc
  .array(
    fc.record({
      quarters: fc.integer({ min: 1, max: 12 }),
      hands: fc.integer({ min: 1, max: 2 }),
      cure: fc.integer({ min: 0, max: 8 }),
      before: fc.array(
        fc.record({ back: fc.integer({ min: 1, max: 6 }), quarters: fc.integer({ min: 0, max: 192 }) }),
        {
          maxLength: 2,
        },
      ),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((list) =>
    list.map(({ quarters, hands, cure, before }, i) =>
      task(`t${i}`, quarters, {
        hands,
        cureMinutes: cure * QUARTER,
        after: waits(
          ...before
            .filter(({ back }) => i - back >= 0)
            .map((wait) => [`t${i - wait.back}`, wait.quarters] as const),
        ),
      }),
    ),
  );

const anyWeek = fc
  .array(fc.constantFrom({ fromHour: 18, hours: 3 }, { fromHour: 10, hours: 6 }, { fromHour: 9, hours: 0 }), {
    minLength: 7,
    maxLength: 7,
  })
  .filter((week) => week.some(({ hours }) => hours > 0));

const asked = (
  tasks: readonly Task[],
  week: readonly { fromHour: number; hours: number }[],
  hands: number,
): Asked => ({
  tasks,
  week: week.map(({ fromHour, hours }) =>
    hours > 0 ? ([fromHour * 60, (fromHour + hours) * 60] as const) : undefined,
  ),
  firstWeekday: 0,
  lost: [],
  hands,
});

describe("over random work", () => {
  it("no calendar breaks an hour, a wait, a cure or the number of hands, and none ends before its longest chain", () => {
    fc.assert(
      fc.property(anyTasks, anyWeek, fc.integer({ min: 2, max: 3 }), (tasks, week, hands) => {
        const most = Math.max(...week.map(({ hours }) => hours * 60));
        const short = tasks.map((one) => ({ ...one, workMinutes: Math.min(one.workMinutes, most) }));
        const mixed = short.map((one, i) => (i % 3 === 1 ? { ...one, pauses: "any time" as const } : one));
        const { schedule } = scheduleTasks(mixed, { startOn: MONDAY, weekdays: week, lostDays: [] }, hands);
        expect(faultsOfCalendar(schedule, asked(mixed, week, hands))).toEqual([]);
        expect(schedule.endMinute).toBeGreaterThanOrEqual(schedule.chainMinutes);
      }),
      { seed: 12, numRuns: 150 },
    );
  });

  it("ends as soon as the best of all orders does", () => {
    fc.assert(
      fc.property(anyTasks, anyWeek, (tasks, week) => {
        const most = Math.max(...week.map(({ hours }) => hours * 60));
        const short = tasks.map((one) => ({ ...one, workMinutes: Math.min(one.workMinutes, most) }));
        const { schedule } = scheduleTasks(short, { startOn: MONDAY, weekdays: week, lostDays: [] }, 2);
        expect(schedule.standing).toBe("shortest");
        expect(schedule.endMinute).toBe(soonestEnd(asked(short, week, 2)));
      }),
      { seed: 31, numRuns: 60 },
    );
  }, 60_000);

  it("twice the hands never take longer", () => {
    fc.assert(
      fc.property(anyTasks, anyWeek, (tasks, week) => {
        const time = { startOn: MONDAY, weekdays: week, lostDays: [] };
        const two = scheduleTasks(tasks, time, 2).schedule;
        const four = scheduleTasks(tasks, time, 4).schedule;
        expect(four.endMinute).toBeLessThanOrEqual(two.endMinute);
      }),
      { seed: 8, numRuns: 80 },
    );
  });
});
