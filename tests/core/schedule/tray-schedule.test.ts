import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Design, designTray } from "../../../core/design.ts";
import { at } from "../../../core/foundation/index.ts";
import { checkDocument, emptyProject, type Project } from "../../../core/project/index.ts";
import { readExample } from "../../read-example.ts";
import { plainProject } from "../cutting/plain-project.ts";
import { centre, fence, level, materials, outer, withJig } from "../glue-up/glue-trays.ts";
import { faultsOfCalendar } from "./check-calendar.ts";

const usual = emptyProject({ id: "usual", title: "", issuedOn: "2026-01-05" });

const tray = (changes: Partial<Project> = {}): Design =>
  designTray(
    plainProject({
      profiles: [level],
      materials: { ...materials, cloths: usual.materials.cloths, resins: usual.materials.resins },
      items: [centre, outer, fence("skin", false)],
      ...withJig({ attitude: "inverted" }),
      ...changes,
    }),
  );

const evening = { fromHour: 18, hours: 3 };
const saturday = { fromHour: 9, hours: 8 };
const week = [evening, evening, evening, evening, evening, saturday, { fromHour: 10, hours: 0 }];
const startOn = "2026-01-05";
const kindsOf = ({ problems }: Design) => problems.map(({ kind }) => kind);
const startOf = ({ schedule }: Design, id: string) =>
  schedule.tasks.find((task) => task.id === id)?.stints[0]?.fromMinute ?? Number.NaN;
const idOf = ({ schedule }: Design, words: RegExp) =>
  at(
    schedule.tasks.filter(({ title }) => words.test(title)).map(({ id }) => id),
    0,
  );

describe("a whole tray on the calendar", () => {
  const design = tray({ schedule: { startOn, weekdays: week } });

  it("breaks no hour, no wait, no cure and has one pair of hands at work", () => {
    const asked = {
      tasks: design.schedule.tasks,
      week: week.map(({ fromHour, hours }) =>
        hours > 0 ? ([fromHour * 60, (fromHour + hours) * 60] as const) : undefined,
      ),
      firstWeekday: 0,
      lost: [],
      hands: 1,
    };
    expect(faultsOfCalendar(design.schedule, asked)).toEqual([]);
    expect(design.schedule.endMinute).toBeGreaterThanOrEqual(design.schedule.chainMinutes);
  });

  it("has every step of the glue-up, and every task of the skins", () => {
    const steps = design.schedule.tasks.flatMap(({ step }) => (step === undefined ? [] : [step]));
    expect(steps.toSorted((a, b) => a - b)).toEqual(design.glueUp.map(({ step }) => step));
    const ids = design.schedule.tasks.map(({ id }) => id);
    for (const { id } of design.skins.tasks) expect(ids).toContain(id);
  });

  it("skins the lower face when all before is glued and faired, and seats a fence on that skin before its own sides", () => {
    const lower = startOf(design, "skin lower face 1");
    const seat = startOf(design, idOf(design, /^Seat/));
    expect(lower).toBeGreaterThan(startOf(design, "fairing"));
    expect(seat).toBeGreaterThan(lower);
    expect(startOf(design, "skin fence sides 1")).toBeGreaterThan(seat);
    expect(startOf(design, "skin upper face 1")).toBeGreaterThan(startOf(design, idOf(design, /^Turn/)));
  });

  it("asks for one more to turn the tray over where one works alone", () => {
    const helpersOf = (some: Design) => some.schedule.tasks.find(({ kind }) => kind === "turn over")?.helpers;
    expect(helpersOf(design)).toBe(1);
    expect(helpersOf(tray({ laminate: { hands: 2 } }))).toBeUndefined();
  });

  it("ends no sooner when a day is lost, and says so", () => {
    const days = design.schedule.days.filter(({ workMinutes }) => workMinutes > 0);
    for (const { date } of days) {
      const later = tray({ schedule: { startOn, weekdays: week, lostDays: [date] } });
      expect(later.schedule.endMinute).toBeGreaterThanOrEqual(design.schedule.endMinute);
      expect(later.schedule.withoutLossesOn).toBe(design.schedule.endOn);
    }
  }, 120_000);
});

describe("over shops and hands", () => {
  it("from 18 to 25 °C every cure is shorter, and what the tray weighs the same", () => {
    const [cool, warm] = [18, 25].map((shopCelsius) => tray({ laminate: { shopCelsius } }));
    if (!cool || !warm) throw new Error("two shops");
    const curesOf = ({ schedule }: Design) =>
      new Map(
        schedule.tasks
          .filter(({ cureMinutes }) => cureMinutes > 0)
          .map((task) => [task.title.replace(/, session.*/, ""), task.cureMinutes]),
      );
    const [slow, fast] = [curesOf(cool), curesOf(warm)];
    expect(slow.size).toBeGreaterThan(3);
    for (const [title, minutes] of slow) expect(fast.get(title)).toBeLessThan(minutes);
    expect(warm.totals.glueMassKg).toBe(cool.totals.glueMassKg);
    expect(warm.totals.foamMassKg).toBe(cool.totals.foamMassKg);
    expect(warm.skins.massKg).toBeCloseTo(cool.skins.massKg, 9);
  });

  it("twice the hands never take longer", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 16, max: 26 }),
        fc.integer({ min: 2, max: 8 }),
        (hands, shopCelsius, hours) => {
          const ends = [hands, 2 * hands].map((count) => {
            const weekdays = week.map((day) => ({
              ...day,
              hours: day.hours === 0 ? 0 : hours,
              fromHour: 12,
            }));
            return tray({ laminate: { hands: count, shopCelsius }, schedule: { startOn, weekdays } }).schedule
              .endMinute;
          });
          expect(at(ends, 1)).toBeLessThanOrEqual(at(ends, 0));
        },
      ),
      { seed: 77, numRuns: 12 },
    );
  }, 120_000);

  it("has no calendar where it is too cold to glue", () => {
    const cold = tray({ laminate: { shopCelsius: 8 } });
    expect(cold.schedule.tasks).toEqual([]);
    expect(kindsOf(cold)).toContain("glue-too-cold");
  });
});

describe("a working time that cannot be", () => {
  it("is named, and the usual one is used", () => {
    const schedule = {
      startOn: "2026-02-30",
      weekdays: [
        { fromHour: 20, hours: 6 },
        { fromHour: Number.NaN, hours: -1 },
      ],
      lostDays: ["2026-13-01", "2026-03-02"],
    };
    const design = tray({ schedule });
    expect(kindsOf(design).filter((kind) => kind === "no-such-date")).toHaveLength(2);
    expect(kindsOf(design).filter((kind) => kind === "number-out-of-range")).toHaveLength(3);
    expect(design.schedule.startOn).toBe(design.project.titleBlock.issuedOn);
    expect(design.schedule.tasks.length).toBeGreaterThan(0);
  });

  it("with no hour in the week leaves no calendar, and everything else", () => {
    const weekdays = week.map(({ fromHour }) => ({ fromHour, hours: 0 }));
    const design = tray({ schedule: { weekdays } });
    expect(kindsOf(design)).toEqual(["no-working-day"]);
    expect(design.glueUp.length).toBeGreaterThan(0);
    expect(checkDocument(design.project)).toEqual([]);
  });
});

it("where the shop is too cold for any session the work ends at bare foam: nothing is seated on a skin, nothing trimmed", () => {
  const cold = designTray({ ...readExample("hill-climb-floor"), laminate: { shopCelsius: 12 } });
  const titles = cold.schedule.tasks.map(({ title }) => title);
  expect(cold.problems.some(({ kind }) => kind.includes("cold"))).toBe(true);
  expect(titles).toContain("Fair the joints");
  expect(titles.some((title) => title.includes("Seat F1R"))).toBe(true);
  expect(titles.filter((title) => /F2|Trim|Skin|Turn/.test(title))).toEqual([]);
});
