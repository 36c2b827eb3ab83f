import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { correctTasks, type Task } from "../../../core/schedule/index.ts";

const task = (id: string, kind: Task["kind"], workMinutes: number): Task => ({
  id,
  kind,
  title: `Do ${id}`,
  after: [],
  hands: 1,
  workMinutes,
  cureMinutes: 0,
  pauses: "never",
});
const logged = (id: string, hours: number, done = 1) => ({ taskId: id, title: `Do ${id}`, hours, done });
const minutesOf = ({ tasks }: ReturnType<typeof correctTasks>) => tasks.map(({ workMinutes }) => workMinutes);

const TASKS = [
  task("cut", "cutting", 300),
  task("g1", "glue", 60),
  task("g2", "glue", 120),
  task("g3", "glue", 180),
  task("s1", "skin", 240),
];

describe("a log of real hours", () => {
  it("changes nothing while nothing is written down", () => {
    const corrected = correctTasks(TASKS, []);
    expect(corrected.tasks).toBe(TASKS);
    expect(corrected.hours.map(({ kind, spentMinutes, pace }) => [kind, spentMinutes, pace])).toEqual([
      ["cutting", 0, 1],
      ["glue", 0, 1],
      ["skin", 0, 1],
    ]);
  });

  it("tells the pace of a kind from what is done of it, and leaves other kinds alone", () => {
    // Two joints took 4.5 h for the 3 h that were reckoned: half as long again.
    const corrected = correctTasks(TASKS, [logged("g1", 2), logged("g2", 2.5)]);
    expect(minutesOf(corrected)).toEqual([300, 120, 150, 270, 240]);
    expect(corrected.hours[1]).toEqual({
      kind: "glue",
      reckonedMinutes: 360,
      spentMinutes: 270,
      expectedMinutes: 540,
      pace: 1.5,
    });
  });

  it("reckons the rest of a task that is begun at its own pace", () => {
    // A third of the cutting in 2 h: 6 h in all.
    expect(minutesOf(correctTasks(TASKS, [logged("cut", 2, 1 / 3)]))[0]).toBe(360);
  });

  it("names hours of work that is no longer to be done, also where its number is another's now", () => {
    const renamed = { ...logged("g1", 2), title: "Do something else" };
    const corrected = correctTasks(TASKS, [renamed, logged("g9", 1)]);
    expect(corrected.problems.map(({ kind, name }) => [kind, name])).toEqual([
      ["logged-task-gone", "Do something else"],
      ["logged-task-gone", "Do g9"],
    ]);
    expect(minutesOf(corrected)).toEqual(TASKS.map(({ workMinutes }) => workMinutes));
  });

  it("adds up: what is expected is what was spent and what is left at the pace of what was spent", () => {
    const entries = fc.uniqueArray(
      fc.record({
        i: fc.nat(4),
        hours: fc.double({ min: 0.1, max: 20, noNaN: true }),
        done: fc.constantFrom(0.25, 0.5, 1),
      }),
      { selector: ({ i }) => i },
    );
    fc.assert(
      fc.property(entries, (list) => {
        const log = list.map(({ i, hours, done }) => logged(TASKS[i]?.id ?? "", hours, done));
        for (const { kind, reckonedMinutes, spentMinutes, expectedMinutes } of correctTasks(TASKS, log)
          .hours) {
          const own = TASKS.filter((one) => one.kind === kind);
          const doneMinutes = own.reduce(
            (sum, { id, workMinutes }) =>
              sum + workMinutes * (log.find(({ taskId }) => taskId === id)?.done ?? 0),
            0,
          );
          const whole = doneMinutes > 0 ? spentMinutes * (reckonedMinutes / doneMinutes) : reckonedMinutes;
          // Each task is planned in steps of five minutes, rounded up.
          expect(expectedMinutes).toBeGreaterThan(whole - 1e-6);
          expect(expectedMinutes).toBeLessThan(whole + 5 * own.length + 1e-6);
        }
      }),
    );
  });
});
