import { Plus, Trash2 } from "lucide-react";
import { toDegrees, toRadians } from "../../../core/foundation/index.ts";
import { pliesOfFace } from "../../../core/laminate/index.ts";
import { NumberField, Select } from "../../controls/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";

/** The plies of one face, from the foam outward. */
export function PlyFields({ face, title }: { readonly face: "lower" | "upper"; readonly title: string }) {
  const { project, change } = useSettings();
  const plies = pliesOfFace(project, face).map(({ cloth, warpRad }) => ({ clothId: cloth.id, warpRad }));
  const { cloths } = project.materials;
  const set = (changed: typeof plies) => change({ laminate: { ...project.laminate, [face]: changed } });
  return (
    <SettingsGroup title={title}>
      {plies.map((ply, index) => {
        const replace = (changed: typeof ply) => set(plies.with(index, changed));
        return (
          <fieldset key={index} className="ply" aria-label={`Ply ${index + 1}`}>
            <Select
              label={`Ply ${index + 1}`}
              value={ply.clothId}
              setting={`laminate.${face}.${index}.clothId`}
              options={cloths.map(({ id, name }) => ({ value: id, word: name }))}
              onChange={(clothId) => replace({ ...ply, clothId })}
            />
            <NumberField
              label="Warp from forward"
              unit="°"
              decimals={0}
              value={toDegrees(ply.warpRad)}
              setting={`laminate.${face}.${index}.warpRad`}
              onChange={(degrees) => replace({ ...ply, warpRad: toRadians(degrees) })}
            />
            <button type="button" className="plain" onClick={() => set(plies.toSpliced(index, 1))}>
              <Trash2 aria-hidden /> {`Take ply ${index + 1} away`}
            </button>
          </fieldset>
        );
      })}
      <button
        type="button"
        data-testid={`add-ply-${face}`}
        onClick={() => {
          const last = plies.at(-1) ?? { clothId: cloths[0]?.id ?? "", warpRad: 0 };
          set([...plies, last]);
        }}
      >
        <Plus aria-hidden /> Add a ply
      </button>
    </SettingsGroup>
  );
}
