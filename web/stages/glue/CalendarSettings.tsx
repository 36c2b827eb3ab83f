import { dayOfDate, weekdayName, workingTimeOf } from "../../../core/project/index.ts";
import { dayWords } from "../../../core/schedule/index.ts";
import { NumberField, TextField } from "../../controls/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";

/** When the work begins, and the hours of each weekday. */
export function CalendarSettings() {
  const { project, change } = useSettings();
  const { startOn, weekdays, lostDays } = workingTimeOf(project);
  const set = (changes: NonNullable<typeof project.schedule>) =>
    change({ schedule: { ...project.schedule, ...changes } });
  const setDay = (index: number, changes: Partial<(typeof weekdays)[number]>) =>
    set({ weekdays: weekdays.map((day, i) => (i === index ? { ...day, ...changes } : day)) });
  return (
    <SettingsGroup title="Days">
      <TextField
        label="Begins on"
        type="date"
        value={startOn}
        mostLetters={10}
        setting="schedule.startOn"
        onChange={(typed) => {
          if (dayOfDate(typed) !== undefined) set({ startOn: typed });
        }}
      />
      {weekdays.map(({ fromHour, hours }, i) => (
        <div key={weekdayName(i)} className="weekday-fields">
          <NumberField
            label={`${weekdayName(i)}, from`}
            unit="h"
            value={fromHour}
            onChange={(typed) => setDay(i, { fromHour: typed })}
          />
          <NumberField
            label="for"
            unit="h"
            value={hours}
            setting={`schedule.weekdays.${i}`}
            onChange={(typed) => setDay(i, { hours: typed })}
          />
        </div>
      ))}
      {lostDays.length > 0 ? (
        <ul className="lost-days" aria-label="Lost days">
          {lostDays.map((date) => (
            <li key={date}>
              {dayOfDate(date) === undefined ? date : dayWords(date)} is lost{" "}
              <button
                type="button"
                onClick={() => set({ lostDays: lostDays.filter((lost) => lost !== date) })}
              >
                Give it back
              </button>
            </li>
          ))}
        </ul>
      ) : null}
    </SettingsGroup>
  );
}
