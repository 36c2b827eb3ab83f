import { useLengths } from "../../controls/index.ts";
import { LengthCell } from "./LengthCell.tsx";
import { NumberCell } from "./NumberCell.tsx";
import type { CellProps } from "./TypedCell.tsx";

interface LabelledCellProps extends CellProps {
  /** A fine length is finer than a tape shows. */
  readonly kind: "length" | "fine length" | "angle";
}

/** A number with its word before it and its unit behind. */
export function LabelledCell({ kind, label, ...cell }: LabelledCellProps) {
  const { unit } = useLengths();
  return (
    <div className="field">
      <span>{label}</span>
      <span className="entry">
        {kind === "angle" ? (
          <NumberCell {...cell} label={`${label}, degrees`} />
        ) : (
          <LengthCell {...cell} label={label} {...(kind === "fine length" ? { isFine: true } : {})} />
        )}
        <span className="unit">{kind === "angle" ? "°" : unit}</span>
      </span>
    </div>
  );
}
