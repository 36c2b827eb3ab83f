import { formatNumber } from "../../../core/foundation/index.ts";
import { amountWords, type ShoppingLine } from "../../../core/shopping/index.ts";
import { OpenEntry } from "../../controls/index.ts";
import { readNumber } from "../../lengths/index.ts";

interface BuyRowProps {
  readonly line: ShoppingLine;
  /** Undefined where a figure goes back to the usual. */
  readonly onChange: (changes: Partial<Record<"have" | "packOf" | "priceEach", number | undefined>>) => void;
}

/** One line of the shopping list with what can be typed of it. */
export function BuyRow({ line, onChange }: BuyRowProps) {
  const { key, name, unit, needed, have, packOf, packs, left, priceEach, cost } = line;
  const unitWord = unit === "pieces" ? "" : unit;
  const entry = (field: "have" | "packOf" | "priceEach", word: string, value: number | undefined) => (
    <OpenEntry
      label={`${name}: ${word}`}
      value={value}
      read={readNumber}
      setting={field === "have" ? `shopping.${key}` : undefined}
      onChange={(typed) => onChange({ [field]: typed })}
    />
  );
  return (
    <tr data-testid={`buy-${key}`}>
      <td className="buy-name">{name}</td>
      <td className="figure">{amountWords(needed, unit)}</td>
      <td className="figure">
        {entry("have", `in store, ${unitWord || "pieces"}`, have === 0 ? undefined : have)}
        <span className="buy-unit">{unitWord}</span>
      </td>
      <td className="figure">
        {entry("packOf", `in a pack, ${unitWord || "pieces"}`, packOf)}
        <span className="buy-unit">{unitWord}</span>
      </td>
      <td className="figure">
        <b>{formatNumber(packs, 0)}</b>
      </td>
      <td className="figure">{amountWords(left, unit)}</td>
      <td className="figure">{entry("priceEach", "price of a pack", priceEach)}</td>
      <td className="figure">{cost === undefined ? "" : formatNumber(cost, 2)}</td>
    </tr>
  );
}
