import { useId, useState } from "react";
import type { StarterNumber } from "../../core/starters/index.ts";
import { showNumber } from "../controls/index.ts";
import { readLengthMm, readNumber } from "../lengths/index.ts";

interface StarterFieldProps {
  readonly number: StarterNumber;
  readonly value: number;
  /** What is wrong with the value, in words. */
  readonly trouble: string | undefined;
  readonly onChange: (value: number) => void;
}

/** One number of a starter. What is typed counts at once, so that the picture follows; the words stay as typed. */
export function StarterField({ number, value, trouble, onChange }: StarterFieldProps) {
  const id = useId();
  const [draft, setDraft] = useState<string>();
  const read = (text: string) =>
    (number.unit === "mm" ? readLengthMm(text, "mm") : readNumber(text)) ?? Number.NaN;
  return (
    <div className="field">
      <label htmlFor={id}>{number.word}</label>
      <span className="entry">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          className="number"
          autoComplete="off"
          value={draft ?? showNumber(value, 2)}
          aria-invalid={trouble !== undefined}
          aria-describedby={`${id}-note`}
          data-testid={`starter-number-${number.name}`}
          onFocus={(event) => event.currentTarget.select()}
          onChange={(event) => {
            setDraft(event.currentTarget.value);
            onChange(read(event.currentTarget.value));
          }}
          onBlur={() => {
            if (trouble === undefined) setDraft(undefined);
          }}
        />
        <span className="unit">{number.unit}</span>
      </span>
      <span id={`${id}-note`} className={trouble === undefined ? "note" : "note wrong"} role="status">
        {trouble ?? number.explains}
      </span>
    </div>
  );
}
