import { type Glue, glueOf } from "../../../core/project/index.ts";
import { NumberField, Select } from "../../controls/index.ts";
import { MaterialFigures, SettingsGroup, useSettings } from "../settings/index.ts";

const FIGURES = [
  { key: "openMinutes", label: "Stays open for", unit: "min" },
  { key: "clampHours", label: "Held for", unit: "h" },
  { key: "loadHours", label: "Loaded after", unit: "h" },
  { key: "gapLimitMm", label: "Fills gaps up to", unit: "mm" },
  { key: "spreadKgPerM2", label: "Spread", unit: "kg/m²" },
] as const;

/** The glue and the pins. */
export function GlueSettings() {
  const { project, change } = useSettings();
  const { glue, materials } = project;
  const set = (changes: Partial<typeof glue>) => change({ glue: { ...glue, ...changes } });
  const kind = glueOf(project);
  const replace = (changed: Glue) =>
    change({
      materials: {
        ...materials,
        glues: materials.glues.map((each) => (each.id === changed.id ? changed : each)),
      },
    });
  return (
    <>
      <SettingsGroup title="Glue" help="closer">
        <Select
          label="Glue of the joints"
          value={glue.glueId}
          setting="glue.glueId"
          options={materials.glues.map(({ id, name }) => ({ value: id, word: name }))}
          onChange={(glueId) => set({ glueId })}
        />
        <NumberField
          label="Glue line"
          unit="mm"
          value={glue.gapMm}
          note="Shared by both edges of a joint."
          setting="glue.gapMm"
          onChange={(gapMm) => set({ gapMm })}
        />
      </SettingsGroup>
      {kind ? (
        <SettingsGroup title={kind.name}>
          <MaterialFigures list="glues" material={kind} figures={FIGURES} onChange={replace} />
        </SettingsGroup>
      ) : null}
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
