import { useState } from "react";
import { showNumber } from "../../controls/index.ts";
import { readLengthMm } from "../../lengths/index.ts";

interface HeightEntryProps {
  readonly label: string;
  /** Absent until it is measured. */
  readonly heightMm: number | undefined;
  /** Undefined where the field was emptied. */
  readonly onChange: (heightMm: number | undefined) => void;
}

/** A measured height that may be left empty. It is taken when the field is left or Enter is pressed. */
export function HeightEntry({ label, heightMm, onChange }: HeightEntryProps) {
  const [draft, setDraft] = useState<string>();
  const shown = heightMm === undefined ? "" : showNumber(heightMm, 2);
  const typed = draft === undefined || draft.trim() === "" ? undefined : readLengthMm(draft, "mm");
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
      className="number height-entry"
      aria-label={label}
      aria-invalid={isWrong}
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
