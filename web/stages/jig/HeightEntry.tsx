import { OpenEntry } from "../../controls/index.ts";
import { readLengthMm } from "../../lengths/index.ts";

interface HeightEntryProps {
  readonly label: string;
  /** Absent until it is measured. */
  readonly heightMm: number | undefined;
  /** Undefined where the field was emptied. */
  readonly onChange: (heightMm: number | undefined) => void;
}

/** A measured height, in mm where no unit is typed. */
export const HeightEntry = ({ label, heightMm, onChange }: HeightEntryProps) => (
  <OpenEntry label={label} value={heightMm} read={(text) => readLengthMm(text, "mm")} onChange={onChange} />
);
