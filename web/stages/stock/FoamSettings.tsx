import { type Foam, foamOf } from "../../../core/project/index.ts";
import { Choice, NumberField, Select } from "../../controls/index.ts";
import { MaterialFigures, originWords, SettingsGroup, useSettings } from "../settings/index.ts";
import { BendTestFields } from "./BendTestFields.tsx";

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
  const replace = (changed: Foam) =>
    change({
      materials: {
        ...materials,
        foams: materials.foams.map((each) => (each.id === changed.id ? changed : each)),
      },
    });
  return (
    <>
      <MaterialFigures list="foams" material={foam} figures={FIGURES} onChange={replace} />
      <BendTestFields foam={foam} thicknessMm={project.core.thicknessMm} onChange={replace} />
      <Choice
        label="Hot wire"
        value={foam.hotWire}
        options={[
          { value: "allowed", word: "May be used" },
          { value: "never", word: "Never" },
        ]}
        note={originWords(foam.origins.hotWire)}
        onChange={(hotWire) => replace({ ...foam, hotWire, origins: { ...foam.origins, hotWire: "typed" } })}
      />
    </>
  );
}
