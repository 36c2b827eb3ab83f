import { wordAttitude } from "../../../core/jig/index.ts";
import { type Board, ribBoardOf } from "../../../core/project/index.ts";
import { Choice, NumberField, Select } from "../../controls/index.ts";
import { useDesign } from "../../stores/index.ts";
import { MaterialFigures, OwnedFields, SettingsGroup, useSettings } from "../settings/index.ts";
import { BoardSettings } from "./BoardSettings.tsx";
import { LieFields } from "./LieFields.tsx";
import { MakingSettings } from "./MakingSettings.tsx";
import { OverBendFields } from "./OverBendFields.tsx";
import { RibPlacesFields } from "./RibPlacesFields.tsx";

const BOARD_FIGURES = [
  { key: "thicknessMm", label: "Thickness", unit: "mm" },
  { key: "lengthMm", label: "Length", unit: "mm" },
  { key: "widthMm", label: "Width", unit: "mm" },
  { key: "densityKgPerM3", label: "Density", unit: "kg/m³" },
] as const;

/** How the jig stands, where its ribs are, and the board they are cut from. */
export function JigSettings() {
  const { project, change } = useSettings();
  const { jig, materials } = project;
  const sheets = useDesign((state) => state.design?.sheets) ?? [];
  const set = (changes: Partial<typeof jig>) => change({ jig: { ...jig, ...changes } });
  const board = ribBoardOf(project);
  const replace = (changed: Board) =>
    change({
      materials: {
        ...materials,
        boards: materials.boards.map((each) => (each.id === changed.id ? changed : each)),
      },
    });
  return (
    <>
      <SettingsGroup title="Stand" help="attitude">
        <Choice
          label="The tray is built"
          value={jig.attitude}
          testId="setting-attitude"
          options={[
            { value: "upright", word: "Upright" },
            { value: "inverted", word: "Upside down" },
          ]}
          onChange={(attitude) => set({ attitude })}
        />
        <ul className="note" data-testid="attitude-means">
          {wordAttitude(jig.attitude, sheets, jig).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </SettingsGroup>
      <SettingsGroup title="Ribs across" help="station">
        <RibPlacesFields setting="jig.across" places={jig.across} onChange={(across) => set({ across })} />
      </SettingsGroup>
      <SettingsGroup title="Ribs along">
        <RibPlacesFields setting="jig.along" places={jig.along} onChange={(along) => set({ along })} />
      </SettingsGroup>
      <LieFields />
      <OverBendFields />
      <SettingsGroup title="Board">
        <Select
          label="Cut from"
          value={jig.boardId}
          setting="jig.boardId"
          options={materials.boards.map(({ id, name }) => ({ value: id, word: name }))}
          onChange={(boardId) => set({ boardId })}
        />
        {board ? (
          <>
            <MaterialFigures list="boards" material={board} figures={BOARD_FIGURES} onChange={replace} />
            <OwnedFields thing={board} setting={`boards.${board.id}`} onChange={replace} />
          </>
        ) : null}
      </SettingsGroup>
      <SettingsGroup title="Ribs">
        <NumberField
          label="Lowest rib"
          unit="mm"
          value={jig.leastHeightMm}
          note="So that a hand and a clamp go under the tray."
          setting="jig.leastHeightMm"
          onChange={(leastHeightMm) => set({ leastHeightMm })}
        />
        <NumberField
          label="Square cut stands proud by at most"
          unit="mm"
          value={jig.proudLimitMm}
          note="Beyond it the rib's top is bevelled."
          setting="jig.proudLimitMm"
          onChange={(proudLimitMm) => set({ proudLimitMm })}
        />
      </SettingsGroup>
      <MakingSettings />
      <BoardSettings />
    </>
  );
}
