import { useId } from "react";

interface ChoiceProps<Value extends string> {
  readonly label: string;
  readonly value: Value;
  readonly options: readonly { readonly value: Value; readonly word: string }[];
  readonly note?: string;
  readonly testId?: string;
  readonly onChange: (value: Value) => void;
}

/** A few choices side by side, all of them in sight. */
export function Choice<Value extends string>(props: ChoiceProps<Value>) {
  const { label, value, options, note, testId, onChange } = props;
  const name = useId();
  return (
    <fieldset className="field stacked" data-testid={testId}>
      <legend>{label}</legend>
      <div className="choices">
        {options.map((option) => (
          <label key={option.value}>
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === value}
              onChange={() => onChange(option.value)}
            />
            {option.word}
          </label>
        ))}
      </div>
      {note ? <p className="note">{note}</p> : null}
    </fieldset>
  );
}
