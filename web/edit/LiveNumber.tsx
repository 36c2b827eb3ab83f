import { useState } from "react";
import { formatNumber } from "../../core/foundation/index.ts";
import { useLengths } from "../controls/index.ts";
import { readNumber } from "../lengths/index.ts";

interface LiveNumberProps {
  readonly label: string;
  /** What those hear who do not see where it stands. */
  readonly spoken: string;
  readonly value: number;
  readonly unit: "length" | "°" | "%" | "count";
  readonly testId: string;
  readonly isFirst?: true;
  readonly onChange: (value: number) => void;
  readonly onTake: () => void;
  readonly onLeave: () => void;
}

/** A number that is followed while it is typed. Enter takes the whole task, Escape leaves it. */
export function LiveNumber(props: LiveNumberProps) {
  const { label, spoken, value, unit, testId, isFirst, onChange, onTake, onLeave } = props;
  const lengths = useLengths();
  const isLength = unit === "length";
  const show = (shown: number) => (isLength ? lengths.show(shown) : formatNumber(shown, 2));
  const [text, setText] = useState(() => show(value));
  const read = isLength ? lengths.read : readNumber;
  return (
    <label className="strip-field">
      <span>{label}</span>
      <input
        type="text"
        inputMode="decimal"
        autoComplete="off"
        className="number"
        // biome-ignore lint/a11y/noAutofocus: the builder asked for this row, to type into it
        autoFocus={isFirst ?? false}
        aria-label={isLength ? `${spoken}, ${lengths.spoken}` : spoken}
        aria-invalid={read(text) === undefined}
        value={text}
        data-testid={testId}
        onFocus={(event) => event.currentTarget.select()}
        onChange={(event) => {
          setText(event.currentTarget.value);
          const typed = read(event.currentTarget.value);
          if (typed !== undefined) onChange(typed);
        }}
        onKeyDown={(event) => {
          if (event.key === "Enter" && read(text) !== undefined) onTake();
          else if (event.key === "Escape") onLeave();
          else return;
          event.preventDefault();
          event.stopPropagation();
        }}
      />
      {isLength || unit === "count" ? null : <span>{unit}</span>}
    </label>
  );
}
