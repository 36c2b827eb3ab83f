import { type Foam, foamOf } from "../../../core/project/index.ts";
import { Choice, NumberField, Select } from "../../controls/index.ts";
import { originWords, SettingsGroup, useSettings } from "../settings/index.ts";

/** The foam of every sheet that has none of its own, and what is known of it. */
export function FoamSettings() {
  const { project, change } = useSettings();
  const { core, materials } = project;
  const foam = foamOf(project, core.foamId);
  return (
    <SettingsGroup title="Foam">
      <Select
        label="Foam of the tray"
        value={core.foamId}
        setting="core.foamId"
        options={materials.foams.map(({ id, name }) => ({ value: id, word: name }))}
        onChange={(foamId) => change({ core: { ...core, foamId } })}
      />
      <NumberField
        label="Thickness"
        unit="mm"
        value={core.thicknessMm}
        setting="core.thicknessMm"
        onChange={(thicknessMm) => change({ core: { ...core, thicknessMm } })}
      />
      {foam ? <FoamFigures foam={foam} /> : null}
    </SettingsGroup>
  );
}

const FIGURES = [
  { key: "densityKgPerM3", label: "Density", unit: "kg/m³" },
  { key: "leastBendRatio", label: "Bends cold down to a radius of", unit: "× t" },
  { key: "modulusMPa", label: "Stiffness along the sheet", unit: "MPa" },
  { key: "mostCelsius", label: "Stands heat up to", unit: "°C" },
] as const;

function FoamFigures({ foam }: { readonly foam: Foam }) {
  const { project, change } = useSettings();
  const { materials } = project;
  const changeFoam = (changes: Partial<Foam>, field: keyof Foam) => {
    const typed: Foam = { ...foam, ...changes, origins: { ...foam.origins, [field]: "typed" } };
    change({
      materials: { ...materials, foams: materials.foams.map((each) => (each.id === foam.id ? typed : each)) },
    });
  };
  return (
    <>
      {FIGURES.map(({ key, label, unit }) => (
        <NumberField
          key={key}
          label={label}
          unit={unit}
          value={foam[key]}
          note={originWords(foam.origins[key])}
          setting={`materials.foams.${foam.id}.${key}`}
          onChange={(value) => changeFoam({ [key]: value }, key)}
        />
      ))}
      <Choice
        label="Hot wire"
        value={foam.hotWire}
        options={[
          { value: "allowed", word: "May be used" },
          { value: "never", word: "Never" },
        ]}
        note={originWords(foam.origins.hotWire)}
        onChange={(hotWire) => changeFoam({ hotWire }, "hotWire")}
      />
    </>
  );
}
