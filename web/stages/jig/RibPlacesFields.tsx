import type { RibPlaces } from "../../../core/project/index.ts";
import { Choice, NumberField, showNumber, TextField } from "../../controls/index.ts";
import { readLengthMm } from "../../lengths/index.ts";

interface RibPlacesFieldsProps {
  readonly setting: string;
  readonly places: RibPlaces;
  readonly onChange: (places: RibPlaces) => void;
}

/** No ribs, ribs evenly apart, at typed positions, or as few as the foam needs. */
export function RibPlacesFields({ setting, places, onChange }: RibPlacesFieldsProps) {
  return (
    <>
      <Choice
        label="Where"
        value={places.kind}
        testId={`setting-${setting}`}
        options={[
          { value: "none", word: "None" },
          { value: "spacing", word: "Evenly" },
          { value: "typed", word: "At" },
          { value: "automatic", word: "Automatic" },
        ]}
        onChange={(kind) => onChange(startOf(kind))}
      />
      {places.kind === "automatic" ? (
        <p className="note">
          As few as keep the foam in its shape, with one on both sides of ends, joints and splices.
        </p>
      ) : null}
      {places.kind === "spacing" ? (
        <NumberField
          label="One every"
          unit="mm"
          value={places.spacingMm}
          setting={`${setting}.spacingMm`}
          onChange={(spacingMm) => onChange({ kind: "spacing", spacingMm })}
        />
      ) : null}
      {places.kind === "typed" ? (
        <TextField
          label="Positions, mm"
          value={wordPositions(places.atMm)}
          mostLetters={400}
          setting={`${setting}.atMm`}
          onChange={(text) => onChange({ kind: "typed", atMm: parsePositions(text) })}
        />
      ) : null}
    </>
  );
}

function startOf(kind: RibPlaces["kind"]): RibPlaces {
  if (kind === "none" || kind === "automatic") return { kind };
  return kind === "spacing" ? { kind, spacingMm: 300 } : { kind, atMm: [] };
}

export const wordPositions = (atMm: readonly number[]): string =>
  atMm.map((mm) => showNumber(mm, 2)).join("; ");

/** Positions between semicolons or spaces; what is no number is left out. */
export const parsePositions = (text: string): readonly number[] =>
  text
    .split(/[;\s]+/)
    .map((text) => readLengthMm(text, "mm"))
    .filter((mm) => mm !== undefined);
