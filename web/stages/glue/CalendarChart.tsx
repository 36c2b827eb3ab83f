import {
  dayWords,
  MINUTES_OF_DAY,
  type PlannedDay,
  type PlannedTask,
  type Schedule,
  taskWords,
} from "../../../core/schedule/index.ts";
import { useSettings } from "../settings/index.ts";

const DAY_PX = 36;
const ROW_PX = 26;
const BAR_PX = 12;
/** A shorter bar could not be seen. */
const LEAST_BAR_PX = 4;

/** Days as columns, a row for each task: work as solid bars, what sets as hatched ones. A day's head takes the day away. */
export function CalendarChart({ schedule }: { readonly schedule: Schedule }) {
  const { days, tasks, startOn, endOn } = schedule;
  return (
    <section
      className="calendar-chart"
      aria-label="Days and work"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: it must scroll by key.
      tabIndex={0}
    >
      <div className="calendar-days">
        <span className="calendar-corner" />
        {days.map((day) => (
          <DayHead key={day.date} day={day} />
        ))}
      </div>
      <div className="calendar-rows">
        <ol>
          {tasks.map((task) => (
            <li key={task.id} className={task.isCritical ? "critical" : undefined} title={taskWords(task)}>
              {taskWords(task)}
            </li>
          ))}
        </ol>
        <svg
          width={days.length * DAY_PX}
          height={tasks.length * ROW_PX}
          role="img"
          aria-label={`Work and cures from ${dayWords(startOn)} to ${dayWords(endOn)}; in words under Day by day`}
        >
          <defs>
            <pattern
              id="setting"
              width="5"
              height="5"
              patternUnits="userSpaceOnUse"
              patternTransform="rotate(45)"
            >
              <line x1="0" y1="0" x2="0" y2="5" className="setting-line" />
            </pattern>
          </defs>
          {days.map(({ date, openMinutes }, i) =>
            openMinutes === 0 ? (
              <rect
                key={date}
                className="free-day"
                x={i * DAY_PX}
                width={DAY_PX}
                height={tasks.length * ROW_PX}
              />
            ) : null,
          )}
          {days.map(({ date }, i) => (
            <line
              key={date}
              className="day-line"
              x1={i * DAY_PX}
              x2={i * DAY_PX}
              y2={tasks.length * ROW_PX}
            />
          ))}
          {tasks.map((task, row) => (
            <Bars key={task.id} task={task} row={row} />
          ))}
        </svg>
      </div>
    </section>
  );
}

function DayHead({ day: { date, standing, openMinutes } }: { readonly day: PlannedDay }) {
  const { project, change } = useSettings();
  const lostDays = project.schedule?.lostDays ?? [];
  const isLost = standing === "lost";
  const turn = () =>
    change({
      schedule: {
        ...project.schedule,
        lostDays: isLost ? lostDays.filter((lost) => lost !== date) : [...lostDays, date].sort(),
      },
    });
  const [weekday = "", day = "", month = ""] = dayWords(date).split(" ");
  return (
    <button
      type="button"
      className="day-head"
      aria-pressed={isLost}
      disabled={!isLost && openMinutes === 0}
      data-testid={`day-${date}`}
      onClick={turn}
    >
      <span>{weekday}</span>
      <b>{day}</b>
      <span className="visually-hidden">{`${month}, ${isLost ? "lost" : openMinutes > 0 ? "open" : "no work"}`}</span>
    </button>
  );
}

function Bars({ task, row }: { readonly task: PlannedTask; readonly row: number }) {
  const y = row * ROW_PX + (ROW_PX - BAR_PX) / 2;
  const end = task.stints.at(-1)?.toMinute ?? 0;
  return (
    <g>
      {task.cureMinutes > 0 ? (
        <rect
          className="setting"
          x={toPx(end)}
          y={y}
          width={toPx(task.curedAtMinute) - toPx(end)}
          height={BAR_PX}
        />
      ) : null}
      {task.stints.map(({ fromMinute, toMinute }) => (
        <rect
          key={fromMinute}
          className="work"
          x={toPx(fromMinute)}
          y={y}
          width={Math.max(LEAST_BAR_PX, toPx(toMinute) - toPx(fromMinute))}
          height={BAR_PX}
        />
      ))}
    </g>
  );
}

const toPx = (minute: number): number => (minute / MINUTES_OF_DAY) * DAY_PX;
