import { type KeyboardEvent, useId, useState } from "react";
import { useLengths } from "../../controls/index.ts";
import type { Dimension } from "../../tools/index.ts";
import { dispatchAll } from "../dispatch-all.ts";
import "./dimensions.css";

interface DimensionFieldProps {
  readonly dimension: Pick<Dimension, "word" | "valueMm" | "moves" | "edit">;
  readonly place: {
    readonly left: number;
    readonly top: number;
    readonly width: number;
    readonly height: number;
  };
  readonly testId: string;
  /** Goes back to the number. */
  readonly close: () => void;
  /** Goes away, and leaves the focus where it is. */
  readonly leave: () => void;
}

const LEAST_FIELD_PX = 76;

/** A field over a number of the drawing: Enter sets it, Escape leaves it; below it stands what moves, or what is wrong. */
export function DimensionField({ dimension, place, testId, close, leave }: DimensionFieldProps) {
  const lengths = useLengths();
  const hintId = useId();
  const [text, setText] = useState(lengths.show(dimension.valueMm).replace(/^≈\s*/, ""));
  const [complaint, setComplaint] = useState<string>();
  const enter = () => {
    const valueMm = lengths.read(text);
    if (valueMm === undefined) return setComplaint(`“${text}” is no length. Type a number or a sum.`);
    const edit = dimension.edit?.(valueMm);
    if (!edit) return close();
    if (!edit.ok) return setComplaint(edit.why);
    dispatchAll(edit.commands);
    close();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "Enter") enter();
    else if (event.key === "Escape") close();
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  const width = Math.max(place.width, LEAST_FIELD_PX);
  return (
    <div
      className="dimension-field"
      style={{ ...place, width, left: place.left - (width - place.width) / 2 }}
      onPointerDown={(event) => event.stopPropagation()}
    >
      <input
        type="text"
        inputMode="decimal"
        autoComplete="off"
        className="number"
        aria-label={`${dimension.word} in ${lengths.spoken}`}
        aria-describedby={hintId}
        aria-invalid={complaint !== undefined}
        value={text}
        data-testid={`${testId}-field`}
        // biome-ignore lint/a11y/noAutofocus: it takes the place of the button that was pressed
        autoFocus
        onFocus={(event) => event.currentTarget.select()}
        onChange={(event) => {
          setText(event.currentTarget.value);
          setComplaint(undefined);
        }}
        onKeyDown={onKeyDown}
        onBlur={leave}
      />
      <p id={hintId} data-wrong={complaint === undefined ? undefined : ""}>
        {complaint ?? dimension.moves}
      </p>
    </div>
  );
}
