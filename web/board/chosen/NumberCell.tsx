import { useState } from "react";
import { MINUS } from "../../../core/foundation/index.ts";
import { evaluateSum } from "../../tools/index.ts";

interface NumberCellProps {
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

/** A number in a table: it may be typed as a sum. Taken by Enter and on leaving; Escape puts it back. */
export function NumberCell(props: NumberCellProps) {
  const { label, value, testId, hint, onClear, onChange, onFocus } = props;
  const [draft, setDraft] = useState<string>();
  const isEmpty = draft?.trim() === "";
  const isWrong = draft !== undefined && !isEmpty && evaluateSum(draft) === undefined;
  const take = () => {
    setDraft(undefined);
    if (draft === undefined) return;
    if (isEmpty) return onClear?.();
    const typed = evaluateSum(draft);
    if (typed !== undefined && typed !== value) onChange(typed);
  };
  return (
    <input
      type="text"
      inputMode="decimal"
      autoComplete="off"
      className="number"
      aria-label={label}
      aria-invalid={isWrong}
      title={isWrong ? `“${draft}” is no number.` : label}
      placeholder={hint}
      value={draft ?? shown(value)}
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
  );
}

/** One decimal where there is one: more digits than the bench can use are not shown. */
const shown = (value: number | undefined): string =>
  value === undefined ? "" : Number.isFinite(value) ? value.toFixed(1).replace("-", MINUS) : String(value);
