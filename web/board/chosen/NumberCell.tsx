import { formatNumber } from "../../../core/foundation/index.ts";
import { readNumber } from "../../lengths/index.ts";
import { type CellProps, TypedCell } from "./TypedCell.tsx";

/** An angle in degrees, or another number that is no length, in a table. */
export const NumberCell = (props: CellProps) => (
  <TypedCell {...props} show={showNumber} read={readNumber} unit="" />
);

/** One decimal: more digits than the bench can use are not shown. */
const showNumber = (value: number): string =>
  Number.isFinite(value) ? formatNumber(value, 1) : String(value);
