import { Plus, Trash2 } from "lucide-react";
import { toDegrees, toRadians } from "../../../core/foundation/index.ts";
import { pliesOfFace } from "../../../core/laminate/index.ts";
import type { Fence } from "../../../core/project/index.ts";
import { Choice, NumberField, Select } from "../../controls/index.ts";
import { useDocument } from "../../stores/index.ts";

type Plies = NonNullable<NonNullable<Fence["panel"]>["plies"]>;

interface PanelPliesProps {
  readonly plies: Plies | undefined;
  readonly onChange: (plies: Plies | undefined) => void;
}

/** What is laid on each face of a fence's panel: the plies of the lower face, or its own. */
export function PanelPlies({ plies, onChange }: PanelPliesProps) {
  const project = useDocument((state) => state.project);
  const { cloths } = project.materials;
  const usual = pliesOfFace(project, "lower").map(({ cloth, warpRad }) => ({ clothId: cloth.id, warpRad }));
  return (
    <>
      <Choice
        label="On each face"
        value={plies === undefined ? "usual" : "own"}
        options={[
          { value: "usual", word: "the lower face's plies" },
          { value: "own", word: "its own" },
        ]}
        onChange={(choice) => onChange(choice === "own" ? usual : undefined)}
      />
      {plies?.map((ply, index) => (
        <fieldset key={index} className="ply" aria-label={`Ply ${index + 1} of the panel`}>
          <Select
            label={`Ply ${index + 1}`}
            value={ply.clothId}
            options={cloths.map(({ id, name }) => ({ value: id, word: name }))}
            onChange={(clothId) => onChange(plies.with(index, { ...ply, clothId }))}
          />
          <NumberField
            label="Warp from its length"
            unit="°"
            decimals={0}
            value={toDegrees(ply.warpRad)}
            onChange={(degrees) => onChange(plies.with(index, { ...ply, warpRad: toRadians(degrees) }))}
          />
          <button type="button" className="plain" onClick={() => onChange(plies.toSpliced(index, 1))}>
            <Trash2 aria-hidden /> {`Take ply ${index + 1} away`}
          </button>
        </fieldset>
      ))}
      {plies !== undefined && (
        <button
          type="button"
          onClick={() => onChange([...plies, plies.at(-1) ?? { clothId: cloths[0]?.id ?? "", warpRad: 0 }])}
        >
          <Plus aria-hidden /> Add a ply
        </button>
      )}
    </>
  );
}
