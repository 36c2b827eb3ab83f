import { CLOSER_SPARE_MM } from "../../../core/project/index.ts";
import { Choice, NumberField } from "../../controls/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";

const LENGTHS = [
  {
    key: "kerfMm",
    label: "Width the blade takes",
    note: "A knife takes nothing; saw, wire and router do: measure it on scrap.",
  },
  { key: "trimMm", label: "Left standing on free edges", note: "Trimmed off after lamination." },
  { key: "stockEdgeMm", label: "Lost on every side of a stock sheet", note: "Before its edge is true." },
  { key: "seamStaggerMm", label: "Least step between neighbouring seams", note: "" },
] as const;

/** The blade, and what is allowed for it. */
export function CuttingSettings() {
  const { project, change } = useSettings();
  const { cutting } = project;
  const set = (changes: Partial<typeof cutting>) => change({ cutting: { ...cutting, ...changes } });
  return (
    <SettingsGroup title="Cutting" help="kerf">
      <Choice
        label="Cut with"
        value={cutting.tool}
        testId="setting-tool"
        options={[
          { value: "knife", word: "Knife" },
          { value: "saw", word: "Saw" },
          { value: "hot-wire", word: "Hot wire" },
          { value: "router", word: "Router" },
        ]}
        onChange={(tool) => set({ tool })}
      />
      <Choice
        label="The blade runs"
        value={cutting.bladeSide}
        testId="setting-blade-side"
        options={[
          { value: "waste", word: "Outside the line" },
          { value: "middle", word: "On it" },
          { value: "part", word: "Inside" },
        ]}
        onChange={(bladeSide) => set({ bladeSide })}
      />
      <NumberField
        label="Splice by a scarf, its length to the thickness"
        unit=": 1"
        value={cutting.scarfRatio ?? 0}
        note="0 butts the strips. 6 to 8 is common practice. Each strip is cut longer by half the scarf, then tapered to nothing."
        setting="cutting.scarfRatio"
        onChange={(ratio) => set({ scarfRatio: ratio > 0 ? ratio : undefined })}
      />
      <NumberField
        label="Left on a closer's last joint"
        unit="mm"
        value={cutting.closerSpareMm ?? CLOSER_SPARE_MM}
        note="Cut off when the gap has been measured. 8 mm is common practice."
        setting="cutting.closerSpareMm"
        onChange={(closerSpareMm) => set({ closerSpareMm })}
      />
      {LENGTHS.map(({ key, label, note }) => (
        <NumberField
          key={key}
          label={label}
          unit="mm"
          value={cutting[key]}
          note={note}
          setting={`cutting.${key}`}
          onChange={(value) => set({ [key]: value })}
        />
      ))}
    </SettingsGroup>
  );
}
