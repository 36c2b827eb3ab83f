import { NumberField } from "../../controls/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";

/** How near edges must lie to be one, and how much foam is to be left beside an opening. */
export function JointSettings() {
  const { project, change } = useSettings();
  const { joints, openingSettings } = project;
  return (
    <SettingsGroup title="Joints and openings" help="web">
      <NumberField
        label="Edges are one within"
        unit="mm"
        value={joints.toleranceMm}
        note="Edges of two sheets that lie nearer are offered as a joint; farther apart is a gap."
        setting="joints.toleranceMm"
        onChange={(toleranceMm) => change({ joints: { ...joints, toleranceMm } })}
      />
      <NumberField
        label="Foam to leave beside an opening"
        unit="mm"
        value={openingSettings.webMm}
        note="Up to the next edge, joint or opening."
        setting="openingSettings.webMm"
        onChange={(webMm) => change({ openingSettings: { ...openingSettings, webMm } })}
      />
    </SettingsGroup>
  );
}
