import { Choice, NumberField, TextField } from "../../controls/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";

/** How pieces are laid on the sheets. */
export function LayingSettings() {
  const { project, change } = useSettings();
  const { laying } = project;
  const set = (changes: Partial<typeof laying>) => change({ laying: { ...laying, ...changes } });
  return (
    <SettingsGroup title="Laying on stock">
      <Choice
        label="Strips may be turned"
        value={laying.rotation}
        testId="setting-rotation"
        options={[
          { value: "free", word: "Freely" },
          { value: "half-turns", word: "End for end" },
          { value: "grain", word: "Along the grain" },
        ]}
        note="None is ever turned over. Along the grain: a strip's bend runs with the grain of its sheet."
        onChange={(rotation) => set({ rotation })}
      />
      <NumberField
        label="Left free between pieces"
        unit="mm"
        value={laying.clearanceMm}
        note="At least what the blade takes."
        setting="laying.clearanceMm"
        onChange={(clearanceMm) => set({ clearanceMm })}
      />
      <TextField
        label="Money in"
        value={laying.currency}
        mostLetters={60}
        setting="laying.currency"
        onChange={(currency) => set({ currency })}
      />
    </SettingsGroup>
  );
}
