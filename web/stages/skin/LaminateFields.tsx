import { laminateOf } from "../../../core/project/index.ts";
import { NumberField, Select } from "../../controls/index.ts";
import { SettingsGroup, ShopFields, useSettings } from "../settings/index.ts";

interface Field {
  readonly key:
    | "potKg"
    | "fibreMassShare"
    | "wasteShare"
    | "preWetKgPerM2"
    | "peelPlyKgPerM2"
    | "pigmentShare"
    | "leastCelsius"
    | "selvedgeMm"
    | "overlapMm"
    | "longestPatchMm"
    | "reachMm";
  readonly label: string;
  readonly unit: string;
  /** What is typed for one of what the document keeps. */
  readonly per: number;
  readonly note: string;
}

const CLOTH: readonly Field[] = [
  {
    key: "overlapMm",
    label: "Laps over the next piece",
    unit: "mm",
    per: 1,
    note: "25 to 100 mm are published. Seams of one ply lie twice that beside those of the next.",
  },
  {
    key: "longestPatchMm",
    label: "Longest piece",
    unit: "mm",
    per: 1,
    note: "What you carry and lay in one.",
  },
  { key: "selvedgeMm", label: "Selvedge lost a side", unit: "mm", per: 1, note: "Of the roll." },
  {
    key: "reachMm",
    label: "Hands reach in by",
    unit: "mm",
    per: 1,
    note: "From the edge of the tray; about 800 mm is common practice.",
  },
];

const RESIN: readonly Field[] = [
  {
    key: "leastCelsius",
    label: "Not used below",
    unit: "°C",
    per: 1,
    note: "From its data sheet; 15 °C is published for marine epoxies.",
  },
  {
    key: "potKg",
    label: "Most in one pot",
    unit: "g",
    per: 1000,
    note: "200 g is common practice for a first time.",
  },
  { key: "pigmentShare", label: "Pigment", unit: "%", per: 100, note: "Of the mix; 5 % at most." },
  { key: "wasteShare", label: "Lost in cups and brushes", unit: "%", per: 100, note: "15 % is published." },
  {
    key: "fibreMassShare",
    label: "Fibre in the laminate",
    unit: "%",
    per: 100,
    note: "By mass; half is published for hand lay-up. Weigh a coupon of your own: its figure is the better one.",
  },
  {
    key: "preWetKgPerM2",
    label: "Bare foam drinks",
    unit: "g/m²",
    per: 1000,
    note: "Common practice; weigh it on scrap.",
  },
  { key: "peelPlyKgPerM2", label: "Peel ply takes", unit: "g/m²", per: 1000, note: "0 where none is laid." },
];

const KINDS = [
  { value: "epoxy", word: "epoxy" },
  { value: "polyester", word: "polyester" },
  { value: "vinyl ester", word: "vinyl ester" },
] as const;

/** The shop, how cloth is cut, the resin and its mixing ratio. */
export function LaminateFields() {
  const { project, change } = useSettings();
  const laminate = laminateOf(project);
  const set = (changes: Partial<NonNullable<typeof project.laminate>>) =>
    change({ laminate: { ...project.laminate, ...changes } });
  const setKind = (kind: (typeof KINDS)[number]["value"]) => {
    const resins = project.materials.resins.map((one) =>
      one.id === laminate.resin?.id ? { ...one, kind } : one,
    );
    change({ materials: { ...project.materials, resins } });
  };
  const field = ({ key, label, unit, per, note }: Field) => (
    <NumberField
      key={key}
      label={label}
      unit={unit}
      value={laminate[key] * per}
      note={note}
      setting={`laminate.${key}`}
      onChange={(value) => set({ [key]: value / per })}
    />
  );
  return (
    <>
      <ShopFields />
      <SettingsGroup title="Cloth">{CLOTH.map(field)}</SettingsGroup>
      <SettingsGroup title="Resin">
        <Select
          label="Resin"
          value={laminate.resin?.id ?? ""}
          setting="laminate.resinId"
          options={project.materials.resins.map(({ id, name }) => ({ value: id, word: name }))}
          onChange={(resinId) => set({ resinId })}
        />
        {laminate.resin && (
          <Select
            label="It is"
            value={laminate.resin.kind ?? "epoxy"}
            note="Polyester and vinyl ester dissolve polystyrene foam."
            options={KINDS}
            onChange={(value) => setKind(KINDS.find((kind) => kind.value === value)?.value ?? "epoxy")}
          />
        )}
        <NumberField
          label="Hardener to 100 of resin, by mass"
          unit=""
          value={laminate.hardenerPer100 ?? 0}
          note={
            laminate.hardenerPer100 === undefined
              ? "Not typed yet: from the data sheet, by mass and not by volume. Nothing may be mixed without it."
              : "From the data sheet. Never changed to change the speed."
          }
          setting="laminate.hardenerPer100"
          onChange={(parts) => set({ hardenerPer100: parts > 0 ? parts : undefined })}
        />
        {RESIN.map(field)}
      </SettingsGroup>
    </>
  );
}
