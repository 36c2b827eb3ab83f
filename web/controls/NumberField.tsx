import { useId, useState } from "react";
import { MINUS } from "../../core/foundation/index.ts";
import { readLengthMm, readNumber } from "../lengths/index.ts";

interface NumberFieldProps {
  readonly label: string;
  readonly value: number;
  /** What stands behind the number; a length in mm may be typed with any unit of its own. */
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
  const parse = unit === "mm" ? readWorkshopMm : readNumber;
  const isWrong = draft !== undefined && parse(draft) === undefined;
  const shown = showNumber(value, decimals);

  const take = () => {
    const typed = draft === undefined || draft === shown ? undefined : parse(draft);
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
          value={draft ?? shown}
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
          {wordWrong(draft, unit)}
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

/** Figures of the workshop (skins, kerfs, gaps) stay in mm; a unit that is typed with them holds. */
const readWorkshopMm = (text: string): number | undefined => readLengthMm(text, "mm");

/** What is wrong with a typed text, and what may stand there. */
export const wordWrong = (text: string, unit: string): string =>
  unit === "mm" || unit === "in"
    ? `“${text}” is no length. Type a number, a sum such as 1250/2-18, or 3 5/16 in.`
    : `“${text}” is no number. Type a number, or a sum such as 90-12.5.`;

/** A number with no more decimals than it has, for typing over. */
export function showNumber(value: number, decimals: number): string {
  if (!Number.isFinite(value)) return String(value);
  return String(Number(value.toFixed(decimals))).replace("-", MINUS);
}
