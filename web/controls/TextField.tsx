import { useId, useState } from "react";

interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly mostLetters: number;
  readonly type?: "text" | "date";
  readonly testId?: string;
  /** The dotted name of the setting it holds. */
  readonly setting?: string;
  readonly onChange: (value: string) => void;
}

/** A line of text with its word; taken when the field is left or Enter is pressed, put back by Escape. */
export function TextField({
  label,
  value,
  mostLetters,
  type = "text",
  testId,
  setting,
  onChange,
}: TextFieldProps) {
  const id = useId();
  const [draft, setDraft] = useState<string>();
  const take = () => {
    setDraft(undefined);
    if (draft !== undefined && draft !== value) onChange(draft);
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type={type}
        className="words"
        autoComplete="off"
        maxLength={mostLetters}
        value={draft ?? value}
        data-testid={testId}
        data-setting={setting}
        data-draft={draft !== undefined || undefined}
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
    </div>
  );
}
