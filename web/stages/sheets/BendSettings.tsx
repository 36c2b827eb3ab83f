import { toDegrees, toRadians } from "../../../core/foundation/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { Choice, NumberField } from "../../controls/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";

type Bending = Project["bending"];

/** How bends are made and held, for the whole tray: slots and their trial on scrap, planks, hold-down, springback. */
export function BendSettings() {
  const { project, change } = useSettings();
  const { bending } = project;
  const set = (changes: Partial<Bending>) => change({ bending: { ...bending, ...changes } });
  const number = (key: NumberKey, label: string, unit: string, note?: string) => (
    <NumberField
      label={label}
      unit={unit}
      value={bending[key]}
      setting={`bending.${key}`}
      {...(note !== undefined && { note })}
      onChange={(value) => set({ [key]: value })}
    />
  );
  return (
    <details className="bend-settings">
      <summary>How bends are made and held, for the whole tray</summary>
      <div className="settings-columns">
        <SettingsGroup title="Relief slots and planks">
          {number("slotKerfMm", "Width that the blade takes", "mm")}
          {number("slotWebMm", "Foam left under a slot", "mm", "Common practice; try it on scrap.")}
          <Choice
            label="Slots"
            value={bending.slotSide}
            options={[
              { value: "closing", word: "Close, on the inside" },
              { value: "opening", word: "Open, on the outside" },
            ]}
            onChange={(slotSide) => set({ slotSide })}
          />
          <Choice
            label="When bent"
            value={bending.slotFilling}
            options={[
              { value: "glued", word: "Glued and wiped flush" },
              { value: "open", word: "Left open" },
            ]}
            note="Open slots carry no shear."
            onChange={(slotFilling) => set({ slotFilling })}
          />
          {number("sagittaMm", "Straights stand off the curve by at most", "mm")}
          {number("fillingKgPerM3", "Density of the glue in slots", "kg/m³", "Common practice.")}
        </SettingsGroup>
        <SlotTest bending={bending} set={set} />
        <SettingsGroup title="Holding down">
          <Choice
            label="Held by"
            value={bending.holdBy}
            options={[
              { value: "sandbags", word: "Sandbags" },
              { value: "straps", word: "Straps" },
              { value: "screws", word: "Screws with washers" },
            ]}
            onChange={(holdBy) => set({ holdBy })}
          />
          {bending.holdBy === "sandbags" ? number("sandbagKg", "Mass of a sandbag", "kg") : null}
          {bending.holdBy === "straps" ? number("strapN", "A strap holds", "N") : null}
          {bending.holdBy === "screws" ? number("washerMm", "Width of a washer", "mm") : null}
          {bending.holdBy === "screws"
            ? number(
                "crushMPa",
                "The foam bears under it",
                "MPa",
                "A maker's 25 psi for XPS over a factor of 3 for standing loads.",
              )
            : null}
          {number("pinN", "A pin holds", "N", "Pins locate and count as nothing until you have tested one.")}
          {number(
            "skinModulusMPa",
            "Stiffness of the skins",
            "MPa",
            "For springback. A usual figure without a source.",
          )}
        </SettingsGroup>
      </div>
    </details>
  );
}

type NumberKey = { [Key in keyof Bending]-?: Bending[Key] extends number ? Key : never }[keyof Bending];

/** Three slots cut on scrap and bent until they are shut: what they closed by corrects the blade's width. */
function SlotTest({
  bending,
  set,
}: {
  readonly bending: Bending;
  readonly set: (changes: Partial<Bending>) => void;
}) {
  const { slotTest, ...untested } = bending;
  const { change } = useSettings();
  if (!slotTest)
    return (
      <SettingsGroup title="Trial of three slots">
        <p className="pencil">
          The book has a strip to try the slots on: cut three, bend it until they are shut, and measure the
          angle between its ends.
        </p>
        <button
          type="button"
          onClick={() =>
            set({
              slotTest: {
                depthMm: 17,
                closedRad: 6 * Math.atan(bending.slotKerfMm / 34),
              },
            })
          }
        >
          Type what I measured
        </button>
      </SettingsGroup>
    );
  return (
    <SettingsGroup title="Trial of three slots">
      <NumberField
        label="The slots were deep"
        unit="mm"
        value={slotTest.depthMm}
        setting="bending.slotTest.depthMm"
        onChange={(depthMm) => set({ slotTest: { ...slotTest, depthMm } })}
      />
      <NumberField
        label="Three of them closed by"
        unit="°"
        value={toDegrees(slotTest.closedRad)}
        setting="bending.slotTest.closedRad"
        note="This takes the place of the blade's width."
        onChange={(degrees) => set({ slotTest: { ...slotTest, closedRad: toRadians(degrees) } })}
      />
      <button type="button" onClick={() => change({ bending: untested })}>
        Forget the trial
      </button>
    </SettingsGroup>
  );
}
