import { formatMm } from "../../../core/foundation/index.ts";
import { wordOverBend } from "../../../core/jig/index.ts";
import { Choice, Select } from "../../controls/index.ts";
import { useDesign } from "../../stores/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";

/** The middle of the tray stays where no rib is chosen to. */
const MIDDLE = "middle";

/** Whether the ribs are bent too far for what is given back with one skin, and which of them keeps its place. */
export function OverBendFields() {
  const { project, change } = useSettings();
  const jig = useDesign((state) => state.design?.jig);
  if (jig?.overBend === undefined) return null;
  const { overBend } = project.jig.lie ?? {};
  const set = (next: typeof overBend) => {
    const { overBend: _, ...rest } = project.jig.lie ?? {};
    change({ jig: { ...project.jig, lie: { ...rest, ...(next && { overBend: next }) } } });
  };
  const across = jig.ribs.filter(({ runs, isOutboard }) => runs === "across" && !isOutboard);
  const kept = across.find(({ atMm }) => atMm === overBend?.keepXMm);
  const choose = (id: string) => {
    const rib = across.find((one) => one.id === id);
    set(rib ? { keepXMm: rib.atMm } : {});
  };
  return (
    <SettingsGroup title="Springback">
      <Choice
        label="The ribs are"
        value={overBend === undefined ? "drawn" : "bent"}
        testId="setting-jig.lie.overBend"
        options={[
          { value: "drawn", word: "As drawn" },
          { value: "bent", word: "Over-bent" },
        ]}
        onChange={(value) => set(value === "bent" ? {} : undefined)}
      />
      <p className="note" data-testid="over-bend">
        {wordOverBend(jig.overBend)}
      </p>
      {overBend === undefined ? null : (
        <Select
          label="What keeps its place"
          value={kept?.id ?? MIDDLE}
          setting="jig.lie.overBend.keepXMm"
          options={[
            {
              value: MIDDLE,
              word: overBend.keepXMm === undefined ? "The middle" : `x ${formatMm(overBend.keepXMm)}`,
            },
            ...across.map(({ id }) => ({ value: id, word: `Rib ${id}` })),
          ]}
          onChange={choose}
        />
      )}
    </SettingsGroup>
  );
}
