import { useLengths } from "../../controls/index.ts";
import { type CellProps, TypedCell } from "./TypedCell.tsx";

interface LengthCellProps extends CellProps {
  /** Finer than a tape shows: thicknesses, radii of bends. */
  readonly isFine?: true;
}

/** A length in a table, in mm inside and in the builder's units to the eye; `label` says of what. */
export function LengthCell({ isFine, label, ...cell }: LengthCellProps) {
  const { show, showFine, read, unit, spoken } = useLengths();
  return (
    <TypedCell
      {...cell}
      label={`${label} in ${spoken}`}
      show={isFine ? showFine : show}
      read={read}
      unit={unit}
    />
  );
}
