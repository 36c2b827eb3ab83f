import { glueOf } from "../../../core/project/index.ts";
import { NumberField, Select } from "../../controls/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";

/** The glue and the pins. */
export function GlueSettings() {
  const { project, change } = useSettings();
  const { glue, materials } = project;
  const set = (changes: Partial<typeof glue>) => change({ glue: { ...glue, ...changes } });
  const kind = glueOf(project);
  return (
    <>
      <SettingsGroup title="Glue">
        <Select
          label="Glue of the joints"
          value={glue.glueId}
          setting="glue.glueId"
          options={materials.glues.map(({ id, name }) => ({ value: id, word: name }))}
          onChange={(glueId) => set({ glueId })}
        />
        {kind ? (
          <p className="note">
            {`Open for ${kind.openMinutes} min, held for ${kind.clampHours} h, loaded after ${kind.loadHours} h at 20 °C; fills up to ${kind.gapLimitMm} mm.`}
          </p>
        ) : null}
        <NumberField
          label="Glue line"
          unit="mm"
          value={glue.gapMm}
          note="Shared by both edges of a joint."
          setting="glue.gapMm"
          onChange={(gapMm) => set({ gapMm })}
        />
      </SettingsGroup>
      <SettingsGroup title="Pins">
        <NumberField
          label="On straight joints, one every"
          unit="mm"
          value={glue.pinSpacingMm}
          setting="glue.pinSpacingMm"
          onChange={(pinSpacingMm) => set({ pinSpacingMm })}
        />
        <NumberField
          label="On curved joints"
          unit="mm"
          value={glue.pinSpacingCurvedMm}
          setting="glue.pinSpacingCurvedMm"
          onChange={(pinSpacingCurvedMm) => set({ pinSpacingCurvedMm })}
        />
      </SettingsGroup>
    </>
  );
}
