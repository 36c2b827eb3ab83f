import { makingOf, PADDING_MM, type TypedMaking } from "../../../core/project/index.ts";
import { Choice, NumberField } from "../../controls/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";

const FOOT_NOTES = {
  straight: "The whole lower edge stands on the board.",
  feet: "It stands on feet of 60 mm, 6 mm clear of the board between them, so that a crumb does not rock it.",
  tabs: "Tabs of 40 mm go through slots in the board and place it by themselves.",
} as const;

/** How the ribs are made: feet, slots, holes, splices, room for glue and fillets; and the cradle. */
export function MakingSettings() {
  const { project, change } = useSettings();
  const { jig } = project;
  const making = makingOf(project);
  const set = (changes: TypedMaking) => change({ jig: { ...jig, making: { ...jig.making, ...changes } } });
  const setCradle = (kind: "none" | "ribs") => {
    const { cradle: _, ...rest } = jig.making ?? {};
    const cradle = kind === "ribs" ? { cradle: { paddingMm: PADDING_MM } } : {};
    change({ jig: { ...jig, making: { ...rest, ...cradle } } });
  };
  const number = (
    key: "slotClearanceMm" | "holeMm" | "reliefMm" | "filletMm",
    label: string,
    note: string,
  ) => (
    <NumberField
      label={label}
      unit="mm"
      value={making[key]}
      note={note}
      setting={`jig.making.${key}`}
      onChange={(value) => set({ [key]: value })}
    />
  );
  return (
    <>
      <SettingsGroup title="How ribs are made">
        <Choice
          label="A rib stands"
          value={making.foot}
          testId="setting-jig.making.foot"
          options={[
            { value: "straight", word: "Flat" },
            { value: "feet", word: "On feet" },
            { value: "tabs", word: "With tabs" },
          ]}
          note={FOOT_NOTES[making.foot]}
          onChange={(foot) => set({ foot })}
        />
        {number(
          "slotClearanceMm",
          "Slots wider than the board by",
          "Half-lap slots, tab slots and dovetails.",
        )}
        {number("holeMm", "Holes to reach through", "Diameter; 25 mm of wood stay around each. None at 0.")}
        <Choice
          label="A rib longer than its board is joined by"
          value={making.spliceBy}
          testId="setting-jig.making.spliceBy"
          options={[
            { value: "plate", word: "A plate" },
            { value: "dovetail", word: "A dovetail" },
          ]}
          onChange={(spliceBy) => set({ spliceBy })}
        />
        {number(
          "reliefMm",
          "Hollow under a joint",
          "Width; half as deep. Keeps glue off the rib. None at 0.",
        )}
        {number("filletMm", "Fillet beside a fence", "Notches are wider by it at their mouth.")}
      </SettingsGroup>
      <SettingsGroup title="Cradle">
        <Choice
          label="For the second face"
          value={making.cradle === undefined ? "none" : "ribs"}
          testId="setting-jig.making.cradle"
          options={[
            { value: "none", word: "No cradle" },
            { value: "ribs", word: "A second set of ribs" },
          ]}
          note="The face that lies on the jig cannot be laminated there. A cradle holds the tray in its shape by the face that was skinned first."
          onChange={setCradle}
        />
        {making.cradle === undefined ? null : (
          <NumberField
            label="Padding on its ribs"
            unit="mm"
            value={making.cradle.paddingMm}
            note="Felt or carpet; 4 mm is common practice."
            setting="jig.making.cradle.paddingMm"
            onChange={(paddingMm) => set({ cradle: { paddingMm } })}
          />
        )}
      </SettingsGroup>
    </>
  );
}
