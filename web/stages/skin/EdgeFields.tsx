import { Plus, Trash2 } from "lucide-react";
import { laminateOf, type Project } from "../../../core/project/index.ts";
import { FINISH_NAMES } from "../../../core/skins/index.ts";
import { NumberField, Select } from "../../controls/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";
import { useFreeEdges } from "./use-free-edges.ts";

type Finish = keyof typeof FINISH_NAMES;
type Laminate = NonNullable<Project["laminate"]>;

const FINISHES: readonly Finish[] = ["wrapped", "flange", "insert", "trimmed"];
const OPTIONS = FINISHES.map((value) => ({ value, word: FINISH_NAMES[value] }));
const asFinish = (value: string): Finish => FINISHES.find((one) => one === value) ?? "wrapped";

/** The sizes of a finish, asked for where it is used. */
const SIZES = [
  {
    finish: "flange",
    key: "flangeMm",
    label: "Flange, width",
    unit: "mm",
    note: "Solid laminate out to the drawn edge. 20 mm: common practice.",
  },
  {
    finish: "flange",
    key: "chamferRun",
    label: "Chamfer behind it",
    unit: "to 1",
    note: "Over three thicknesses of foam: common practice.",
  },
  {
    finish: "insert",
    key: "insertMm",
    label: "Hard insert, width",
    unit: "mm",
    note: "The foam ends by it inside the drawn edge. 20 mm: common practice.",
  },
  {
    finish: "insert",
    key: "insertKgPerM3",
    label: "Its density",
    unit: "kg/m³",
    note: "Hardwood about 700, from memory; weigh a piece.",
  },
] as const;

/** How free edges are finished, all alike or each its own way, and the radius of fillets. */
export function EdgeFields() {
  const { project, change } = useSettings();
  const edges = useFreeEdges();
  const laminate = laminateOf(project);
  const { edgeFinish, edgeFinishes, filletMm } = laminate;
  const isUsed = (finish: Finish) =>
    edgeFinish === finish || edgeFinishes.some((own) => own.finish === finish);
  const set = (changes: Partial<Laminate>) => change({ laminate: { ...project.laminate, ...changes } });
  const free = edges.find(
    ({ itemId, edgeId }) => !edgeFinishes.some((one) => one.itemId === itemId && one.edgeId === edgeId),
  );
  return (
    <SettingsGroup title="Edges and fillets">
      <Select
        label="Free edges"
        value={edgeFinish}
        setting="laminate.edgeFinish"
        testId="edge-finish"
        options={OPTIONS}
        onChange={(value) => set({ edgeFinish: asFinish(value) })}
      />
      {edgeFinishes.map((own, index) => {
        const replace = (changes: Partial<typeof own>) =>
          set({ edgeFinishes: edgeFinishes.with(index, { ...own, ...changes }) });
        return (
          <fieldset key={index} className="ply" aria-label={`Edge of its own ${index + 1}`}>
            <Select
              label="Edge"
              value={`${own.itemId} ${own.edgeId}`}
              options={edges}
              onChange={(value) => {
                const edge = edges.find((one) => one.value === value);
                if (edge) replace({ itemId: edge.itemId, edgeId: edge.edgeId });
              }}
            />
            <Select
              label="Its finish"
              value={own.finish}
              options={OPTIONS}
              onChange={(value) => replace({ finish: asFinish(value) })}
            />
            <button
              type="button"
              className="plain"
              onClick={() => set({ edgeFinishes: edgeFinishes.toSpliced(index, 1) })}
            >
              <Trash2 aria-hidden /> Like the others again
            </button>
          </fieldset>
        );
      })}
      {free && (
        <button
          type="button"
          onClick={() =>
            set({
              edgeFinishes: [
                ...edgeFinishes,
                { itemId: free.itemId, edgeId: free.edgeId, finish: edgeFinish },
              ],
            })
          }
        >
          <Plus aria-hidden /> Finish one edge its own way
        </button>
      )}
      {SIZES.filter(({ finish }) => isUsed(finish)).map(({ finish: _, key, ...field }) => (
        <NumberField
          key={key}
          {...field}
          value={laminate[key]}
          setting={`laminate.${key}`}
          onChange={(value) => set({ [key]: value })}
        />
      ))}
      <NumberField
        label="Fillets, radius"
        unit="mm"
        value={filletMm}
        note="9.5 mm is published; 0 for none."
        setting="laminate.filletMm"
        onChange={(value) => set({ filletMm: value })}
      />
    </SettingsGroup>
  );
}
