import fc from "fast-check";
import { expect, it } from "vitest";
import { dateOfDay, dayOfDate, weekdayOf } from "../../../core/project/index.ts";

const DAY_MS = 86_400_000;

it("counts days as the platform's own calendar does, over four hundred years and more", () => {
  fc.assert(
    fc.property(fc.integer({ min: -200_000, max: 200_000 }), (day) => {
      const date = new Date(day * DAY_MS);
      expect(dateOfDay(day)).toBe(date.toISOString().slice(0, 10));
      expect(dayOfDate(dateOfDay(day))).toBe(day);
      expect(weekdayOf(day)).toBe((date.getUTCDay() + 6) % 7);
    }),
    { seed: 1, numRuns: 2000 },
  );
});

it("knows no 30th of February, no 29th outside a leap year and no month 13", () => {
  for (const date of [
    "2026-02-30",
    "2026-02-29",
    "2100-02-29",
    "2026-13-01",
    "2026-00-10",
    "2026-04-31",
    "soon",
  ])
    expect(dayOfDate(date)).toBeUndefined();
  expect(dayOfDate("2028-02-29")).toBeDefined();
});
