import { NumberField } from "../../controls/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";

/** The nominal thickness of the laminate on each face. */
export function SkinSettings() {
  const { project, change } = useSettings();
  const { skins } = project;
  return (
    <SettingsGroup title="Skins" help="skinAllowance">
      <NumberField
        label="Lower skin, air side"
        unit="mm"
        value={skins.lowerMm}
        setting="skins.lowerMm"
        onChange={(lowerMm) => change({ skins: { ...skins, lowerMm } })}
      />
      <NumberField
        label="Upper skin"
        unit="mm"
        value={skins.upperMm}
        setting="skins.upperMm"
        onChange={(upperMm) => change({ skins: { ...skins, upperMm } })}
      />
      <p className="note">
        The foam is set back by the lower skin, so that the finished underside is what you drew.
      </p>
    </SettingsGroup>
  );
}
