import { type Glue, gluingOf } from "../../../core/project/index.ts";
import { NumberField, Select } from "../../controls/index.ts";
import { MaterialFigures, SettingsGroup, ShopFields, useSettings } from "../settings/index.ts";

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
  const { glue: kind, leastCelsius, mostCarriedMm, heldBy } = gluingOf(project);
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
          <NumberField
            label="Not used below"
            unit="°C"
            value={leastCelsius}
            note="From its data sheet. 15 °C is published for marine epoxies; 10 °C for one-part PU is from memory."
            setting={`materials.glues.${kind.id}.leastCelsius`}
            onChange={(value) => replace({ ...kind, leastCelsius: value })}
          />
        </SettingsGroup>
      ) : null}
      <ShopFields />
      <SettingsGroup title="Carrying">
        <NumberField
          label="Longest sheet carried as one"
          unit="mm"
          value={mostCarriedMm}
          note="Longer sheets are glued strip by strip on the jig."
          setting="glue.mostCarriedMm"
          onChange={(value) => set({ mostCarriedMm: value })}
        />
      </SettingsGroup>
      <SettingsGroup title={heldBy === "pins" ? "Pins" : "Weights"}>
        <Select
          label="Joints are held by"
          value={heldBy}
          setting="glue.heldBy"
          options={[
            { value: "pins", word: "pins on both sides" },
            { value: "weights", word: "weights over the joint" },
          ]}
          onChange={(value) => set({ heldBy: value === "weights" ? "weights" : "pins" })}
        />
        <NumberField
          label="On straight joints, one every"
          unit="mm"
          value={glue.pinSpacingMm}
          setting="glue.pinSpacingMm"
          onChange={(pinSpacingMm) => set({ pinSpacingMm })}
        />
        <NumberField
          label="On curves and at ends"
          unit="mm"
          value={glue.pinSpacingCurvedMm}
          setting="glue.pinSpacingCurvedMm"
          onChange={(pinSpacingCurvedMm) => set({ pinSpacingCurvedMm })}
        />
      </SettingsGroup>
    </>
  );
}
