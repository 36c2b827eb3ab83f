import { useState } from "react";
import { wordWrong } from "../../controls/index.ts";

/** A cell of a table that can be typed into, whatever stands in it. */
export interface CellProps {
  readonly label: string;
  /** Absent shows an empty cell. */
  readonly value: number | undefined;
  readonly testId: string;
  /** Shown while empty. */
  readonly hint?: string;
  /** Emptying the cell takes the value away. */
  readonly onClear?: () => void;
  readonly onChange: (value: number) => void;
  readonly onFocus?: () => void;
}

interface TypedCellProps extends CellProps {
  readonly show: (value: number) => string;
  readonly read: (text: string) => number | undefined;
  /** What the value is counted in, for the words when it cannot be read. */
  readonly unit: string;
}

/**
 * A number in a table, which may be typed as a sum; what the sum comes to stands under it. Taken by Enter and on
 * leaving, put back by Escape. What is left as it was shown never moves the value, however it was rounded.
 */
export function TypedCell(props: TypedCellProps) {
  const { label, value, testId, hint, show, read, unit, onClear, onChange, onFocus } = props;
  const [draft, setDraft] = useState<string>();
  const shown = value === undefined ? "" : show(value);
  const typed = draft === undefined ? undefined : read(draft);
  const isEmpty = draft?.trim() === "";
  const isWrong = draft !== undefined && !isEmpty && typed === undefined;
  const take = () => {
    setDraft(undefined);
    if (draft === undefined || draft === shown) return;
    if (isEmpty) return onClear?.();
    if (typed !== undefined && typed !== value) onChange(typed);
  };
  return (
    <span className="typed-cell">
      <input
        type="text"
        inputMode={unit === "in" ? "text" : "decimal"}
        autoComplete="off"
        className="number"
        aria-label={label}
        aria-invalid={isWrong}
        title={draft !== undefined && isWrong ? wordWrong(draft, unit) : label}
        placeholder={hint}
        value={draft ?? shown}
        data-testid={testId}
        onFocus={(event) => {
          event.currentTarget.select();
          onFocus?.();
        }}
        onChange={(event) => setDraft(event.currentTarget.value)}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === "Enter") take();
          if (event.key === "Escape") {
            setDraft(undefined);
            if (draft === undefined) event.currentTarget.blur();
            event.stopPropagation();
          }
        }}
      />
      {draft !== undefined && typed !== undefined && isSum(draft) ? (
        <output className="comes-to">{`= ${show(typed)}`}</output>
      ) : null}
    </span>
  );
}

/** More than a plain number: what it comes to is worth saying. */
const isSum = (text: string): boolean => /\d.*[^\d.,\s]|[^\d.,\s+-].*\d/.test(text.trim());
