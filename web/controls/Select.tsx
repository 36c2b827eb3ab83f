import { useId } from "react";

interface SelectProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly word: string }[];
  readonly note?: string;
  readonly testId?: string;
  /** The dotted name of the setting it holds. */
  readonly setting?: string;
  readonly onChange: (value: string) => void;
}

/** One of many, by name. A value that is no longer in the list stays visible. */
export function Select({ label, value, options, note, testId, setting, onChange }: SelectProps) {
  const id = useId();
  const isKnown = options.some((option) => option.value === value);
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        data-testid={testId}
        data-setting={setting}
        onChange={(event) => onChange(event.currentTarget.value)}
      >
        {isKnown ? null : <option value={value}>{`${value} (not in the list)`}</option>}
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.word}
          </option>
        ))}
      </select>
      {note ? <span className="note">{note}</span> : null}
    </div>
  );
}
