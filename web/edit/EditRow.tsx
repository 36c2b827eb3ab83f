import { useDrawnSelection } from "../hand/index.ts";
import { useDocument } from "../stores/index.ts";
import { gripsOf } from "../tools/index.ts";
import { beginMirror, beginTask, takeTask } from "./edit-deeds-of.ts";
import { type EditTask, type Makes, useEdit } from "./edit-store.ts";
import { LiveNumber } from "./LiveNumber.tsx";
import { profilesUnder } from "./plan-edit.ts";
import "./edit.css";

/** What is asked for in numbers, beside the board: followed on the drawing while it is typed. */
export function EditRow({ task }: { readonly task: EditTask }) {
  const project = useDocument((state) => state.project);
  const selection = useDrawnSelection();
  const { begin } = useEdit.getState();
  return (
    <div className="edit-row" role="group" aria-label={TITLES[task.kind]} data-testid="edit-row">
      <Ways task={task} />
      <Fields key={fieldsKey(task)} task={task} onChange={begin} />
      {task.kind === "move" && profilesUnder(project, gripsOf(selection)).length > 0 ? (
        <label className="strip-field">
          <input
            type="checkbox"
            checked={task.profiles === "go along"}
            data-testid="edit-profiles"
            onChange={(event) =>
              begin({ ...task, profiles: event.currentTarget.checked ? "go along" : "stay" })
            }
          />
          <span>with profiles</span>
        </label>
      ) : null}
    </div>
  );
}

const TITLES: Readonly<Record<EditTask["kind"], string>> = {
  move: "Move by typed distances",
  turn: "Turn by a typed angle",
  scale: "Scale by a typed size",
  mirror: "Mirror",
  repeat: "Repeat in a row",
  parallel: "Draw a parallel",
};

/** Other fields begin with their own numbers. */
const fieldsKey = (task: EditTask): string =>
  task.kind === "mirror" ? `${task.kind}/${task.across}` : task.kind;

const MOTIONS = ["move", "turn", "scale"] as const;
const MOTION_WORDS = { move: "Move", turn: "Turn", scale: "Scale" } as const;

/** Moving, turning and scaling share one row; the others say their name. */
function Ways({ task }: { readonly task: EditTask }) {
  const { begin } = useEdit.getState();
  switch (task.kind) {
    case "move":
    case "turn":
    case "scale":
      return (
        <span className="edit-ways" role="group" aria-label="What to do">
          {MOTIONS.map((kind) => (
            <button
              key={kind}
              type="button"
              className="plain"
              aria-pressed={kind === task.kind}
              data-testid={`edit-${kind}`}
              onClick={() => beginTask(kind)}
            >
              {MOTION_WORDS[kind]}
            </button>
          ))}
        </span>
      );
    case "mirror":
      return (
        <>
          <label className="strip-field">
            <span>Mirror across</span>
            <select
              value={task.across}
              data-testid="mirror-across"
              onChange={(event) =>
                beginMirror(event.currentTarget.value === "station" ? "station" : "lengthwise", task.makes)
              }
            >
              <option value="lengthwise">a line along the car</option>
              <option value="station">a station</option>
            </select>
          </label>
          <MakesSelect makes={task.makes} onChange={(makes) => begin({ ...task, makes })} />
        </>
      );
    case "repeat":
      return <strong className="edit-title">Repeat</strong>;
    case "parallel":
      return (
        <>
          <strong className="edit-title">Parallel</strong>
          <MakesSelect makes={task.makes} onChange={(makes) => begin({ ...task, makes })} />
        </>
      );
  }
}

function MakesSelect({
  makes,
  onChange,
}: {
  readonly makes: Makes;
  readonly onChange: (makes: Makes) => void;
}) {
  return (
    <label className="strip-field">
      <span>as</span>
      <select
        value={makes}
        data-testid="edit-makes"
        onChange={(event) => onChange(event.currentTarget.value === "copy" ? "copy" : "itself")}
      >
        <option value="copy">a copy</option>
        <option value="itself">the thing itself</option>
      </select>
    </label>
  );
}

function Fields({
  task,
  onChange,
}: {
  readonly task: EditTask;
  readonly onChange: (task: EditTask) => void;
}) {
  const ends = { onTake: takeTask, onLeave: useEdit.getState().leave };
  const length = { unit: "length", ...ends } as const;
  switch (task.kind) {
    case "move":
      return (
        <>
          <LiveNumber
            {...length}
            isFirst
            label="x"
            spoken="Rearward"
            value={task.x}
            testId="edit-x"
            onChange={(x) => onChange({ ...task, x })}
          />
          <LiveNumber
            {...length}
            label="y"
            spoken="To the right"
            value={task.y}
            testId="edit-y"
            onChange={(y) => onChange({ ...task, y })}
          />
          <LiveNumber
            {...length}
            label="z"
            spoken="Upward"
            value={task.z}
            testId="edit-z"
            onChange={(z) => onChange({ ...task, z })}
          />
        </>
      );
    case "turn":
      return (
        <>
          <LiveNumber
            {...ends}
            isFirst
            unit="°"
            label="by"
            spoken="Angle in degrees, from rearward toward the right"
            value={task.degrees}
            testId="edit-angle"
            onChange={(degrees) => onChange({ ...task, degrees })}
          />
          <AboutFields task={task} onChange={onChange} />
        </>
      );
    case "scale":
      return (
        <>
          <LiveNumber
            {...ends}
            isFirst
            unit="%"
            label="to"
            spoken="Size in per cent of what it is, in plan; heights stay"
            value={task.percent}
            testId="edit-percent"
            onChange={(percent) => onChange({ ...task, percent })}
          />
          <AboutFields task={task} onChange={onChange} />
        </>
      );
    case "mirror":
      return (
        <LiveNumber
          {...length}
          isFirst
          label={task.across === "station" ? "x" : "y"}
          spoken={task.across === "station" ? "Station" : "Distance of the line from the centre line"}
          value={task.atMm}
          testId="edit-at"
          onChange={(atMm) => onChange({ ...task, atMm })}
        />
      );
    case "repeat":
      return (
        <>
          <LiveNumber
            {...ends}
            isFirst
            unit="count"
            label="more"
            spoken="How many more there are to be"
            value={task.count}
            testId="edit-count"
            onChange={(count) => onChange({ ...task, count })}
          />
          <LiveNumber
            {...length}
            label="each by x"
            spoken="Each stands rearward of the last by"
            value={task.x}
            testId="edit-x"
            onChange={(x) => onChange({ ...task, x })}
          />
          <LiveNumber
            {...length}
            label="y"
            spoken="Each stands to the right of the last by"
            value={task.y}
            testId="edit-y"
            onChange={(y) => onChange({ ...task, y })}
          />
        </>
      );
    case "parallel":
      return (
        <LiveNumber
          {...length}
          isFirst
          label="outward by"
          spoken="How far outward, or outboard of a fence; less than nothing goes inward"
          value={task.distanceMm}
          testId="edit-distance"
          onChange={(distanceMm) => onChange({ ...task, distanceMm })}
        />
      );
  }
}

function AboutFields({
  task,
  onChange,
}: {
  readonly task: Extract<EditTask, { kind: "turn" | "scale" }>;
  readonly onChange: (task: EditTask) => void;
}) {
  const ends = { onTake: takeTask, onLeave: useEdit.getState().leave };
  return (
    <>
      <LiveNumber
        {...ends}
        unit="length"
        label="about x"
        spoken="About the point at x"
        value={task.x}
        testId="edit-about-x"
        onChange={(x) => onChange({ ...task, x })}
      />
      <LiveNumber
        {...ends}
        unit="length"
        label="y"
        spoken="About the point at y"
        value={task.y}
        testId="edit-about-y"
        onChange={(y) => onChange({ ...task, y })}
      />
    </>
  );
}
