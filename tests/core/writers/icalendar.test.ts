import fc from "fast-check";
import ICAL from "ical.js";
import { describe, expect, it } from "vitest";
import type { CalendarEvent } from "../../../core/book/index.ts";
import { designTray } from "../../../core/design.ts";
import { writeCalendarFile, writeICalendar } from "../../../core/writers/index.ts";
import { readExample } from "../../read-example.ts";
import { onlyValue, plainText, readCalendar } from "./read-calendar.ts";

const project = readExample("hill-climb-floor");
const design = designTray(project);
const file = writeCalendarFile(design);

/** A floating date-time as milliseconds, read by the platform's own calendar. */
function wallMs(value: string): number {
  const match = /^(\d{4})(\d{2})(\d{2})T(\d{2})(\d{2})00$/.exec(value);
  if (!match) throw new Error(`no floating time: ${value}`);
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0] = match.slice(1).map(Number);
  return Date.UTC(year, month - 1, day, hour, minute);
}

describe("the calendar of the demo as a file", () => {
  const calendar = readCalendar(file);
  const events = calendar.components;

  it("is a calendar of events, each with the properties that it must have once", () => {
    expect(calendar.name).toBe("VCALENDAR");
    expect(onlyValue(calendar, "VERSION")).toBe("2.0");
    expect(onlyValue(calendar, "PRODID")).not.toBe("");
    expect(events.length).toBeGreaterThan(20);
    for (const event of events) {
      expect(event.name).toBe("VEVENT");
      expect(onlyValue(event, "DTSTAMP")).toMatch(/^\d{8}T\d{6}Z$/);
      expect(wallMs(onlyValue(event, "DTEND"))).toBeGreaterThan(wallMs(onlyValue(event, "DTSTART")));
      expect(plainText(onlyValue(event, "SUMMARY"))).not.toBe("");
    }
    const uids = events.map((event) => onlyValue(event, "UID"));
    expect(new Set(uids).size).toBe(uids.length);
  });

  it("has every stint of work where the plan has it, and every cure", () => {
    const start = Date.parse(`${design.schedule.startOn}T00:00:00Z`);
    const wanted = design.schedule.tasks.flatMap(({ stints, cureMinutes, curedAtMinute }) => [
      ...stints.map(({ fromMinute, toMinute }) => [fromMinute, toMinute, "OPAQUE"]),
      ...(cureMinutes > 0 ? [[curedAtMinute - cureMinutes, curedAtMinute, "TRANSPARENT"]] : []),
    ]);
    const found = events.map((event) => [
      (wallMs(onlyValue(event, "DTSTART")) - start) / 60_000,
      (wallMs(onlyValue(event, "DTEND")) - start) / 60_000,
      onlyValue(event, "TRANSP"),
    ]);
    expect(found).toEqual(wanted);
  });

  it("is read by a library for RFC 5545 as the same events", () => {
    const read = new ICAL.Component(ICAL.parse(file)).getAllSubcomponents("vevent");
    const told = read.map((component) => {
      const { uid, summary, startDate, endDate } = new ICAL.Event(component);
      return [uid, summary, startDate.toString(), endDate.toString(), startDate.zone.tzid];
    });
    const own = events.map((event) => {
      const iso = (name: string) => new Date(wallMs(onlyValue(event, name))).toISOString().slice(0, 19);
      return [
        onlyValue(event, "UID"),
        plainText(onlyValue(event, "SUMMARY")),
        iso("DTSTART"),
        iso("DTEND"),
        "floating",
      ];
    });
    expect(told).toEqual(own);
  });

  it("is the same bytes each time, and keeps the ids of the work when a day is lost", () => {
    expect(writeCalendarFile(designTray(project))).toBe(file);
    const [, second = ""] = design.schedule.days
      .filter(({ workMinutes }) => workMinutes > 0)
      .map(({ date }) => date);
    const later = designTray({ ...project, schedule: { lostDays: [second] } });
    const idsOf = (text: string) =>
      new Set(
        readCalendar(text)
          .components.map((event) => onlyValue(event, "UID"))
          .filter((id) => /\.1@|cure@/.test(id)),
      );
    expect(idsOf(writeCalendarFile(later))).toEqual(idsOf(file));
    expect(later.schedule.endMinute).toBeGreaterThanOrEqual(design.schedule.endMinute);
  });
});

it("any words come back as they were, however long and in whatever letters", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 300 }), (words) => {
      const event: CalendarEvent = {
        uid: "p.t.1",
        taskId: "t",
        from: { date: "2026-01-05", minuteOfDay: 600 },
        to: { date: "2026-01-05", minuteOfDay: 660 },
        title: words,
        description: words,
        takes: "hands",
      };
      const [back] = readCalendar(
        writeICalendar([event], { name: words, stampedOn: "2026-01-01" }),
      ).components;
      const kept = words
        .replaceAll(/\r\n|\r/g, "\n")
        // biome-ignore lint/suspicious/noControlCharactersInRegex: the writer leaves these out.
        .replaceAll(/[\u0000-\u0008\u000b-\u001f\u007f]/g, "");
      expect(back && plainText(onlyValue(back, "SUMMARY"))).toBe(kept);
    }),
    { seed: 5, numRuns: 500 },
  );
});
