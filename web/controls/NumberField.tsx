import { useId, useState } from "react";
import { MINUS } from "../../core/foundation/index.ts";
import { parseLengthMm, parseNumber } from "./parse-number.ts";

interface NumberFieldProps {
  readonly label: string;
  readonly value: number;
  /** What stands behind the number; lengths in mm may also be typed in inches. */
  readonly unit: string;
  /** Shown under the field: where the value comes from, or what it does. */
  readonly note?: string;
  /** Most decimals shown. */
  readonly decimals?: number;
  /** The dotted name of the setting it holds, by which a problem finds the field. */
  readonly setting?: string;
  readonly onChange: (value: number) => void;
}

/** A number with its word and unit. It is taken when the field is left or Enter is pressed; Escape puts it back. */
export function NumberField(props: NumberFieldProps) {
  const { label, value, unit, note, decimals = 2, setting, onChange } = props;
  const id = useId();
  const [draft, setDraft] = useState<string>();
  const parse = unit === "mm" ? parseLengthMm : parseNumber;
  const isWrong = draft !== undefined && parse(draft) === undefined;

  const take = () => {
    const typed = draft === undefined ? undefined : parse(draft);
    setDraft(undefined);
    if (typed !== undefined && typed !== value) onChange(typed);
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <span className="entry">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          className="number"
          autoComplete="off"
          value={draft ?? showNumber(value, decimals)}
          aria-invalid={isWrong}
          aria-describedby={note || isWrong ? `${id}-note` : undefined}
          data-setting={setting}
          data-draft={draft !== undefined || undefined}
          onFocus={(event) => event.currentTarget.select()}
          onChange={(event) => setDraft(event.currentTarget.value)}
          onBlur={take}
          onKeyDown={(event) => {
            if (event.key === "Enter") take();
            if (event.key === "Escape" && draft !== undefined) {
              setDraft(undefined);
              event.stopPropagation();
            }
          }}
        />
        <span className="unit">{unit}</span>
      </span>
      {isWrong ? (
        <span id={`${id}-note`} className="note wrong">
          {`“${draft}” is no number.`}
        </span>
      ) : null}
      {note && !isWrong ? (
        <span id={`${id}-note`} className="note">
          {note}
        </span>
      ) : null}
    </div>
  );
}

/** A number with no more decimals than it has, for typing over. */
export function showNumber(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return String(value);
  return String(Number(value.toFixed(decimals))).replace("-", MINUS);
}
