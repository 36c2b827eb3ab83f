import { lieSettingsOf } from "../../../core/project/index.ts";
import { NumberField } from "../../controls/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";

/** What is asked of the foam that lies on the ribs. */
export function LieFields() {
  const { project, change } = useSettings();
  const { jig } = project;
  const { toleranceMm, pushN, wetKgPerM2, runPastMm } = lieSettingsOf(project);
  const set = (changes: NonNullable<typeof jig.lie>) =>
    change({ jig: { ...jig, lie: { ...jig.lie, ...changes } } });
  return (
    <SettingsGroup title="Foam on the ribs" help="frozen-error">
      <NumberField
        label="Off its shape by at most"
        unit="mm"
        value={toleranceMm}
        note="Form tolerance: where the skin sets. Common practice is 1 mm."
        setting="jig.lie.toleranceMm"
        onChange={(mm) => set({ toleranceMm: mm })}
      />
      <NumberField
        label="A hand's push"
        unit="N"
        value={pushN}
        note="On 100 mm in the middle between ribs: the foam gives 5 mm at most and is strained to 60 % of its limit. 30 N is common practice; 0 where nobody leans on it."
        setting="jig.lie.pushN"
        onChange={(newtons) => set({ pushN: newtons })}
      />
      <NumberField
        label="Wet skin"
        unit="kg/m²"
        value={wetKgPerM2}
        note="What lies wet on the foam; from the nominal skin until you type it."
        setting="jig.lie.wetKgPerM2"
        onChange={(kg) => set({ wetKgPerM2: kg })}
      />
      <NumberField
        label="Past a bent free edge by"
        unit="mm"
        value={runPastMm}
        note="Foam that runs past an edge that its bend reaches, over an outboard rib, and is trimmed after the first skin. A third of a span and at least 60 mm until you type it; 0 for none."
        setting="jig.lie.runPastMm"
        onChange={(mm) => set({ runPastMm: mm })}
      />
    </SettingsGroup>
  );
}
