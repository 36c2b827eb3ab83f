import { laminateOf } from "../../../core/project/index.ts";
import { NumberField } from "../../controls/index.ts";
import { SettingsGroup } from "./SettingsGroup.tsx";
import { useSettings } from "./use-settings.ts";

const FIELDS = [
  {
    key: "shopCelsius",
    label: "Temperature in the shop",
    unit: "°C",
    per: 1,
    note: "Times of glue and resin are told for their data sheet's temperature; 10 °C less doubles them. Steady or cooling while cloth is laid.",
  },
  {
    key: "humidityShare",
    label: "Humidity in the shop",
    unit: "%",
    per: 100,
    note: "Under 70 % is the aim; a surface that is laid on is to be 3 °C above the dew point.",
  },
  { key: "hands", label: "Pairs of hands", unit: "", per: 1, note: "" },
] as const;

/** The shop and whose hands work in it: one shop for gluing and skins, the same fields in both rooms. */
export function ShopFields() {
  const { project, change } = useSettings();
  const laminate = laminateOf(project);
  return (
    <SettingsGroup title="Shop, for gluing and skins alike">
      {FIELDS.map(({ key, label, unit, per, note }) => (
        <NumberField
          key={key}
          label={label}
          unit={unit}
          value={laminate[key] * per}
          note={note}
          setting={`laminate.${key}`}
          onChange={(value) => change({ laminate: { ...project.laminate, [key]: value / per } })}
        />
      ))}
    </SettingsGroup>
  );
}
