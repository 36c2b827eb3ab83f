import { NumberCell } from "./NumberCell.tsx";

interface LabelledCellProps {
  readonly label: string;
  readonly unit: string;
  readonly value: number | undefined;
  readonly testId: string;
  readonly hint?: string;
  readonly onClear?: () => void;
  readonly onChange: (value: number) => void;
}

/** A number with its word before it and its unit behind. */
export function LabelledCell({ label, unit, ...cell }: LabelledCellProps) {
  return (
    <div className="field">
      <span>{label}</span>
      <span className="entry">
        <NumberCell {...cell} label={`${label}, ${unit === "°" ? "degrees" : unit}`} />
        <span className="unit">{unit}</span>
      </span>
    </div>
  );
}
