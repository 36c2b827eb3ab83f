import { Choice, NumberField } from "../../controls/index.ts";
import { useSettings } from "./use-settings.ts";

/** A sheet or board that can be had: how many there are, as many as it takes where that is not said, and what one costs. */
interface Owned {
  readonly quantity?: number;
  readonly priceEach?: number;
}

interface OwnedFieldsProps<Thing extends Owned> {
  readonly thing: Thing;
  /** Its place in the document: `stock.stock-1`, `boards.ply-12`. */
  readonly setting: string;
  readonly onChange: (thing: Thing) => void;
}

/** How many of a sheet or board there are, and the price of one. */
export function OwnedFields<Thing extends Owned>({ thing, setting, onChange }: OwnedFieldsProps<Thing>) {
  const { project } = useSettings();
  const { quantity: _, ...unlimited } = thing;
  return (
    <>
      <Choice
        label="How many there are"
        value={thing.quantity === undefined ? "any" : "some"}
        testId={`owned-${setting}`}
        options={[
          { value: "any", word: "As many as it takes" },
          { value: "some", word: "So many" },
        ]}
        // Without its quantity it is the same thing.
        onChange={(limit) => onChange(limit === "some" ? { ...thing, quantity: 1 } : (unlimited as Thing))}
      />
      {thing.quantity === undefined ? null : (
        <NumberField
          label="In store"
          unit=""
          decimals={0}
          value={thing.quantity}
          setting={`${setting}.quantity`}
          onChange={(quantity) => onChange({ ...thing, quantity })}
        />
      )}
      <NumberField
        label="Price of one"
        unit={project.laying.currency}
        value={thing.priceEach ?? 0}
        setting={`${setting}.priceEach`}
        onChange={(priceEach) => onChange({ ...thing, priceEach })}
      />
    </>
  );
}
