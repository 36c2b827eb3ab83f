import type { Metal } from "../../../core/project/index.ts";
import { MaterialFigures, SettingsGroup, useSettings } from "../settings/index.ts";

const FIGURES = [
  { key: "densityKgPerM3", label: "Density", unit: "kg/m³" },
  { key: "kFactor", label: "K factor of a bend", unit: "" },
  { key: "leastRadiusRatio", label: "Least inside radius", unit: "× t" },
] as const;

/** The metals that the plates of the tray are made of, each with its figures; nothing without plates. */
export function MetalSettings() {
  const { project, change } = useSettings();
  const { items, materials } = project;
  const used = new Set(items.map((item) => (item.kind === "plate" ? item.metalId : "")));
  const replace = (changed: Metal) =>
    change({
      materials: {
        ...materials,
        metals: materials.metals.map((each) => (each.id === changed.id ? changed : each)),
      },
    });
  return materials.metals
    .filter(({ id }) => used.has(id))
    .map((metal) => (
      <SettingsGroup key={metal.id} title={metal.name}>
        <MaterialFigures list="metals" material={metal} figures={FIGURES} onChange={replace} />
      </SettingsGroup>
    ));
}
