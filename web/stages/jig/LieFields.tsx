import { lieSettingsOf } from "../../../core/project/index.ts";
import { NumberField } from "../../controls/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";

interface LieField {
  readonly key: "toleranceMm" | "pushN" | "wetKgPerM2" | "runPastMm";
  readonly label: string;
  readonly unit: string;
  readonly note: string;
}

const FIELDS: readonly LieField[] = [
  {
    key: "toleranceMm",
    label: "Off its shape by at most",
    unit: "mm",
    note: "Form tolerance: where the skin sets. Common practice is 1 mm.",
  },
  {
    key: "pushN",
    label: "A hand's push",
    unit: "N",
    note: "On 100 mm in the middle between ribs: the foam gives 5 mm at most and is strained to 60 % of its limit. 30 N is common practice; 0 where nobody leans on it.",
  },
  {
    key: "wetKgPerM2",
    label: "Wet skin",
    unit: "kg/m²",
    note: "What lies wet on the foam; from the nominal skin until you type it.",
  },
  {
    key: "runPastMm",
    label: "Past a bent free edge by",
    unit: "mm",
    note: "Foam that runs past an edge that its bend reaches, over an outboard rib, and is trimmed after the first skin. A third of a span and at least 60 mm until you type it; 0 for none.",
  },
];

/** What is asked of the foam that lies on the ribs. */
export function LieFields() {
  const { project, change } = useSettings();
  const { jig } = project;
  const settings = lieSettingsOf(project);
  return (
    <SettingsGroup title="Foam on the ribs" help="frozen-error">
      {FIELDS.map(({ key, label, unit, note }) => (
        <NumberField
          key={key}
          label={label}
          unit={unit}
          value={settings[key]}
          note={note}
          setting={`jig.lie.${key}`}
          onChange={(value) => change({ jig: { ...jig, lie: { ...jig.lie, [key]: value } } })}
        />
      ))}
    </SettingsGroup>
  );
}
