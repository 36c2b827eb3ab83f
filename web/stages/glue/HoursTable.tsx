import type { Design } from "../../../core/design.ts";
import { formatNumber } from "../../../core/foundation/index.ts";
import { type LoggedTask, workingTimeOf } from "../../../core/project/index.ts";
import { hoursWords, type PlannedTask, taskWords } from "../../../core/schedule/index.ts";
import { OpenEntry, ScrollAcross } from "../../controls/index.ts";
import { readNumber } from "../../lengths/index.ts";
import { useSettings } from "../settings/index.ts";

/** The hours that each piece of work really took: what is written here corrects what is left of its kind. */
export function HoursTable({ design }: { readonly design: Design }) {
  const { project, change } = useSettings();
  const { log } = workingTimeOf(project);
  const { tasks } = design.schedule;
  const setLog = (next: readonly LoggedTask[]) =>
    change({ schedule: { ...project.schedule, log: [...next] } });
  const write = (task: PlannedTask, changes: Partial<LoggedTask> | undefined) => {
    const known = log.find(isOf(task));
    const entry = { taskId: task.id, title: task.title, hours: task.workMinutes / 60, done: 1, ...known };
    const others = log.filter((other) => other !== known);
    setLog(changes === undefined ? others : [...others, { ...entry, ...changes }]);
  };
  const gone = log.filter((entry) => !tasks.some((task) => isOf(task)(entry)));
  return (
    <>
      {hoursWords(design.schedule).map((words) => (
        <p key={words}>{words}</p>
      ))}
      <p className="note">
        Write what the clock says, also of work that is only begun: 2 h and 50 % done. The calendar then goes
        by it, and what is left of the same kind of work is reckoned at your own pace.
      </p>
      {gone.map((entry) => (
        <p key={`${entry.taskId} ${entry.title}`} className="logged-gone">
          {`${entry.title}, ${formatNumber(entry.hours, 1)} h: there is no such work any more.`}{" "}
          <button type="button" onClick={() => setLog(log.filter((other) => other !== entry))}>
            Take it out
          </button>
        </p>
      ))}
      <ScrollAcross label="Hours of each piece of work">
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">Work</th>
              <th scope="col" className="figure">
                planned, h
              </th>
              <th scope="col" className="figure">
                took, h
              </th>
              <th scope="col" className="figure">
                done, %
              </th>
            </tr>
          </thead>
          <tbody>
            {tasks.map((task) => (
              <HoursRow
                key={task.id}
                task={task}
                entry={log.find(isOf(task))}
                onChange={(changes) => write(task, changes)}
              />
            ))}
          </tbody>
        </table>
      </ScrollAcross>
    </>
  );
}

const isOf =
  ({ id, title }: Pick<PlannedTask, "id" | "title">) =>
  (entry: LoggedTask): boolean =>
    entry.taskId === id && entry.title === title;

interface HoursRowProps {
  readonly task: PlannedTask;
  readonly entry: LoggedTask | undefined;
  /** Undefined where nothing is written down of it any more. */
  readonly onChange: (changes: Partial<LoggedTask> | undefined) => void;
}

function HoursRow({ task, entry, onChange }: HoursRowProps) {
  return (
    <tr data-testid="hours-row">
      <td>{taskWords(task)}</td>
      <td className="figure">{formatNumber(task.workMinutes / 60, 1)}</td>
      <td className="figure">
        <OpenEntry
          label={`${task.title}: took, hours`}
          value={entry?.hours}
          read={readNumber}
          setting={entry && "schedule.log"}
          onChange={(hours) => onChange(hours === undefined ? undefined : { hours })}
        />
      </td>
      <td className="figure">
        {entry ? (
          <OpenEntry
            label={`${task.title}: done, per cent`}
            value={entry.done * 100}
            read={readNumber}
            onChange={(percent) => onChange({ done: (percent ?? 100) / 100 })}
          />
        ) : null}
      </td>
    </tr>
  );
}
