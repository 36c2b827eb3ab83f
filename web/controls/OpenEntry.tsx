import { useState } from "react";
import { showNumber } from "./NumberField.tsx";

interface OpenEntryProps {
  readonly label: string;
  /** Absent until there is one. */
  readonly value: number | undefined;
  /** Undefined where the text is no such number. */
  readonly read: (text: string) => number | undefined;
  /** The dotted name of the setting it holds, by which a problem finds the field. */
  readonly setting?: string | undefined;
  /** Undefined where the field was emptied. */
  readonly onChange: (value: number | undefined) => void;
}

/** A number in a table that may be left empty. It is taken when the field is left or Enter is pressed. */
export function OpenEntry({ label, value, read, setting, onChange }: OpenEntryProps) {
  const [draft, setDraft] = useState<string>();
  const shown = value === undefined ? "" : showNumber(value, 2);
  const typed = draft === undefined || draft.trim() === "" ? undefined : read(draft);
  const isWrong = draft !== undefined && draft.trim() !== "" && typed === undefined;
  const take = () => {
    setDraft(undefined);
    if (draft === undefined || draft === shown || isWrong) return;
    onChange(typed);
  };
  return (
    <input
      type="text"
      inputMode="decimal"
      className="number open-entry"
      aria-label={label}
      aria-invalid={isWrong}
      data-setting={setting}
      autoComplete="off"
      value={draft ?? shown}
      onChange={(event) => setDraft(event.currentTarget.value)}
      onBlur={take}
      onKeyDown={(event) => {
        if (event.key === "Enter") take();
        if (event.key === "Escape") setDraft(undefined);
      }}
    />
  );
}
