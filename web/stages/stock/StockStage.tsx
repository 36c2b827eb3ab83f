import { Choice } from "../../controls/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";
import { CuttingSettings } from "./CuttingSettings.tsx";
import { FoamSettings } from "./FoamSettings.tsx";
import { JointSettings } from "./JointSettings.tsx";
import { LayingSettings } from "./LayingSettings.tsx";
import { Layouts } from "./Layouts.tsx";
import { MetalSettings } from "./MetalSettings.tsx";
import { SkinSettings } from "./SkinSettings.tsx";
import { StockSheets } from "./StockSheets.tsx";

/** What the tray is made of and cut from: foam, skins, the sheets in store, the blade, and what lies on which sheet. */
export function StockStage() {
  const { project, change } = useSettings();
  return (
    <div className="pane settings-page">
      <div className="settings-columns">
        <FoamSettings />
        <SkinSettings />
        <CuttingSettings />
        <LayingSettings />
        <JointSettings />
        <MetalSettings />
        <SettingsGroup title="What is drawn">
          <Choice
            label="Left and right"
            value={project.symmetry}
            testId="setting-symmetry"
            options={[
              { value: "mirrored", word: "Mirrored" },
              { value: "none", word: "Each drawn by itself" },
            ]}
            note="Mirrored: only the right half is drawn, and the left follows."
            onChange={(symmetry) => change({ symmetry })}
          />
          <Choice
            label="The drawn lines are"
            value={project.drawnFace}
            testId="setting-drawn-face"
            options={[
              { value: "air", word: "The air side" },
              { value: "neutral", word: "The middle of the foam" },
            ]}
            note="The air side is the finished underside. Foam and skins go inward from it."
            onChange={(drawnFace) => change({ drawnFace })}
          />
        </SettingsGroup>
      </div>
      <StockSheets />
      <Layouts />
    </div>
  );
}
