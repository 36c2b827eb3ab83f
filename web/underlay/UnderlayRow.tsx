import { ImagePlus } from "lucide-react";
import { type KeyboardEvent, type RefObject, useState } from "react";
import { useLengths } from "../controls/index.ts";
import { useDocument } from "../stores/index.ts";
import type { DrawingView, PictureTask, Sight, ToolEvent } from "../tools/index.ts";
import { useLaying } from "./laying-store.ts";
import "./underlay.css";

interface UnderlayRowProps {
  readonly picture: NonNullable<Sight["picture"]>;
  readonly hear: (event: ToolEvent) => void;
  /** The field for the distance, so that a digit pressed over the drawing begins in it. */
  readonly first: RefObject<HTMLInputElement | null>;
  readonly choose: (view: DrawingView) => void;
}

const TASKS: readonly { readonly task: PictureTask; readonly word: string; readonly explains: string }[] = [
  { task: "move", word: "Move", explains: "Drag the picture, or push it with the arrow keys" },
  { task: "scale", word: "Scale", explains: "Pick two points of the picture and type the distance between" },
  { task: "level", word: "Level", explains: "Pick two points of a line that is to be level" },
];

/** What can be done with a picture under the drawing: bring one in, move it, set its scale, level it. */
export function UnderlayRow({ picture, hear, first, choose }: UnderlayRowProps) {
  const isReading = useLaying((state) => state.isReading);
  const hasPictures = useDocument((state) => state.project.underlays.length > 0);
  return (
    <>
      {(["plan", "side"] as const).map((view) => (
        <button
          key={view}
          type="button"
          className="plain"
          disabled={isReading}
          title="PNG, JPEG or SVG; it stays on this device and is never printed"
          data-testid={`choose-picture-${view}`}
          onClick={() => choose(view)}
        >
          <ImagePlus aria-hidden />
          {view === "plan" ? "Picture for the plan" : "Picture for the side view"}
        </button>
      ))}
      {isReading ? <span className="pencil">Reading…</span> : null}
      {hasPictures ? (
        <span className="picture-tasks" role="group" aria-label="What is done to the picture">
          {TASKS.map(({ task, word, explains }) => (
            <button
              key={task}
              type="button"
              className="plain"
              aria-pressed={task === picture.task}
              title={explains}
              data-testid={`picture-${task}`}
              onClick={() => hear({ kind: "choose-task", task })}
            >
              {word}
            </button>
          ))}
        </span>
      ) : null}
      {picture.pickedMm === undefined ? null : (
        <DistanceField key={picture.pickedMm} pickedMm={picture.pickedMm} hear={hear} first={first} />
      )}
    </>
  );
}

function DistanceField({
  pickedMm,
  hear,
  first,
}: Pick<UnderlayRowProps, "hear" | "first"> & { readonly pickedMm: number }) {
  const [text, setText] = useState("");
  const { read, show, unit, spoken } = useLengths();
  const lengthMm = read(text);
  const isWrong = text.trim() !== "" && !(lengthMm !== undefined && lengthMm > 0);
  const take = () => {
    if (lengthMm !== undefined && lengthMm > 0) hear({ kind: "typed", typed: { lengthMm } });
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "Enter") take();
    else if (event.key === "Escape") hear({ kind: "cancel" });
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    <>
      <label className="strip-field">
        <span>true distance</span>
        <input
          ref={first}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          className="number"
          // biome-ignore lint/a11y/noAutofocus: the second point has been picked, and its distance is asked for now
          autoFocus
          aria-label={`True distance between the two points in ${spoken}`}
          aria-invalid={isWrong}
          placeholder={show(pickedMm)}
          value={text}
          data-testid="picture-distance"
          onChange={(event) => setText(event.currentTarget.value)}
          onKeyDown={onKeyDown}
        />
        <span className="unit">{unit}</span>
      </label>
      <button
        type="button"
        className="primary"
        disabled={isWrong || text === ""}
        data-testid="picture-scale-now"
        onClick={take}
      >
        Set the scale
      </button>
    </>
  );
}
