import { CalendarDays } from "lucide-react";
import type { Design } from "../../../core/design.ts";
import {
  clockWords,
  dayWords,
  helperWords,
  momentOf,
  momentWords,
  scheduleWords,
  taskWords,
} from "../../../core/schedule/index.ts";
import { writeCalendarFile } from "../../../core/writers/index.ts";
import { ScrollAcross } from "../../controls/index.ts";
import { download, fileNameOf } from "../../files/index.ts";
import { CalendarChart } from "./CalendarChart.tsx";
import { HoursTable } from "./HoursTable.tsx";

/** All the work on a calendar: in words, as a picture, and day by day; and the file that other calendars read. */
export function CalendarPane({ design }: { readonly design: Design }) {
  const { schedule, project } = design;
  if (schedule.tasks.length === 0) return null;
  const save = () =>
    download(
      new Blob([writeCalendarFile(design)], { type: "text/calendar" }),
      `${fileNameOf(project.title)}.ics`,
    );
  return (
    <section className="calendar" aria-label="Calendar of the work" data-testid="calendar">
      <h3>Calendar</h3>
      {scheduleWords(schedule).map((words) => (
        <p key={words}>{words}</p>
      ))}
      <CalendarChart schedule={schedule} />
      <p className="note">
        Solid is work at its hours of the day, hatched is what sets. Names in bold: were it done a day later,
        so would all be. A day that is lost after all: choose it above the picture.
      </p>
      <button type="button" data-testid="save-calendar" onClick={save}>
        <CalendarDays aria-hidden /> Save as a calendar file
      </button>
      <details data-testid="day-by-day">
        <summary>Day by day</summary>
        <DayTable design={design} />
      </details>
      <details data-testid="hours" open={design.problems.some(({ kind }) => kind === "logged-task-gone")}>
        <summary>Hours that it really took</summary>
        <HoursTable design={design} />
      </details>
    </section>
  );
}

function DayTable({ design: { schedule } }: { readonly design: Design }) {
  const { startOn, tasks } = schedule;
  const stints = tasks
    .flatMap((task) => task.stints.map((stint, i) => ({ task, stint, isLast: i === task.stints.length - 1 })))
    .toSorted((a, b) => a.stint.fromMinute - b.stint.fromMinute);
  return (
    <ScrollAcross label="Work day by day">
      <table className="figures">
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">From</th>
            <th scope="col">To</th>
            <th scope="col">Work</th>
            <th scope="col">Bears load from</th>
          </tr>
        </thead>
        <tbody>
          {stints.map(({ task, stint, isLast }) => {
            const { date, minuteOfDay } = momentOf(startOn, stint.fromMinute);
            return (
              <tr key={`${task.id}/${stint.fromMinute}`}>
                <td>{dayWords(date)}</td>
                <td className="figure">{clockWords(minuteOfDay)}</td>
                <td className="figure">{clockWords(momentOf(startOn, stint.toMinute).minuteOfDay)}</td>
                <td>{[taskWords(task), helperWords(task)].filter((words) => words !== "").join("; ")}</td>
                <td>{isLast && task.cureMinutes > 0 ? momentWords(startOn, task.curedAtMinute) : ""}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </ScrollAcross>
  );
}
