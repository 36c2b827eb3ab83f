import { type KeyboardEvent, type PointerEvent, useId, useRef, useState } from "react";
import { useLengths } from "../../controls/index.ts";
import type { Dimension } from "../../tools/index.ts";
import { dispatchAll } from "../dispatch-all.ts";
import type { Box } from "../viewport.ts";
import { wordDimension } from "./word-dimension.ts";

interface DimensionLabelProps {
  readonly dimension: Dimension;
  readonly box: Box;
}

/** The number of a dimension: a button where it can be changed, and over it a field while it is. */
export function DimensionLabel({ dimension, box }: DimensionLabelProps) {
  const [isOpen, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const lengths = useLengths();
  const place = { left: box.leftPx, top: box.topPx, width: box.widthPx, height: box.heightPx };
  const text = wordDimension(dimension, lengths);
  const testId = `dimension-${dimension.id.replace("/", "-")}`;
  const close = () => {
    setOpen(false);
    requestAnimationFrame(() => button.current?.focus());
  };
  if (isOpen) return <DimensionField {...{ dimension, place, testId, close }} leave={() => setOpen(false)} />;
  const what = `${dimension.word}, ${lengths.show(dimension.valueMm)} ${lengths.spoken}`;
  return dimension.edit ? (
    <button
      ref={button}
      type="button"
      className="dimension"
      style={place}
      title={`${dimension.word}: click to type it. ${dimension.moves ?? ""}`}
      aria-label={`${what}: type it`}
      data-testid={testId}
      onPointerDown={keepFromBoard}
      onClick={() => setOpen(true)}
    >
      {text}
    </button>
  ) : (
    <span className="dimension" style={place} title={what} data-testid={testId}>
      {text}
    </span>
  );
}

const keepFromBoard = (event: PointerEvent): void => event.stopPropagation();

interface DimensionFieldProps {
  readonly dimension: Dimension;
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

function DimensionField({ dimension, place, testId, close, leave }: DimensionFieldProps) {
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
      onPointerDown={keepFromBoard}
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
