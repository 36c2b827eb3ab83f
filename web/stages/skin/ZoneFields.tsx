import { Plus, Trash2 } from "lucide-react";
import { toDegrees, toRadians } from "../../../core/foundation/index.ts";
import { laminateOf, type ReinforcementZone } from "../../../core/project/index.ts";
import { Choice, NumberField, Select, TextField } from "../../controls/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";
import { useFreeEdges } from "./use-free-edges.ts";
import { ZoneShapeFields } from "./ZoneShapeFields.tsx";

/** Reinforcement: further plies at mounts, under skids, along edges. */
export function ZoneFields() {
  const { project, change } = useSettings();
  const edges = useFreeEdges();
  const { zones } = laminateOf(project);
  const { cloths } = project.materials;
  const set = (changed: readonly ReinforcementZone[]) =>
    change({ laminate: { ...project.laminate, zones: [...changed] } });
  const add = () =>
    set([
      ...zones,
      {
        id: freshId(zones),
        name: "",
        face: "lower",
        shape: { kind: "spot", x: 500, y: 0, radiusMm: 80 },
        clothId: cloths[0]?.id ?? "",
        warpRad: 0,
        plies: 2,
        stepMm: 10,
      },
    ]);
  return (
    <SettingsGroup title="Reinforcement">
      {zones.length === 0 ? (
        <p className="note">
          Further plies where a mount, a skid or an edge loads the skin. They are laid wet on wet on the last
          ply.
        </p>
      ) : null}
      {zones.map((zone, index) => {
        const setting = `laminate.zones.${index}`;
        const replace = (changes: Partial<ReinforcementZone>) =>
          set(zones.with(index, { ...zone, ...changes }));
        return (
          <fieldset
            key={zone.id}
            className="ply"
            aria-label={`Zone ${index + 1}`}
            data-setting={setting}
            data-testid={`zone-${index + 1}`}
          >
            <TextField
              label={`Zone ${index + 1}, its name`}
              value={zone.name}
              mostLetters={60}
              onChange={(name) => replace({ name })}
            />
            <Choice
              label="On the"
              value={zone.face}
              options={[
                { value: "lower", word: "lower face" },
                { value: "upper", word: "upper face" },
              ]}
              onChange={(face) => replace({ face })}
            />
            <ZoneShapeFields
              shape={zone.shape}
              setting={setting}
              edges={edges}
              onChange={(shape) => replace({ shape })}
            />
            <Select
              label="Cloth"
              value={zone.clothId}
              options={cloths.map(({ id, name }) => ({ value: id, word: name }))}
              onChange={(clothId) => replace({ clothId })}
            />
            <NumberField
              label="Warp from forward"
              unit="°"
              decimals={0}
              value={toDegrees(zone.warpRad)}
              onChange={(degrees) => replace({ warpRad: toRadians(degrees) })}
            />
            <NumberField
              label="Further plies"
              unit=""
              decimals={0}
              value={zone.plies}
              setting={`${setting}.plies`}
              onChange={(plies) => replace({ plies })}
            />
            <NumberField
              label="Each smaller by"
              unit="mm"
              value={zone.stepMm}
              note="On every side. 10 mm is common practice; 6 is published for a light edge."
              setting={`${setting}.stepMm`}
              onChange={(stepMm) => replace({ stepMm })}
            />
            <button type="button" className="plain" onClick={() => set(zones.toSpliced(index, 1))}>
              <Trash2 aria-hidden /> {`Take zone ${index + 1} away`}
            </button>
          </fieldset>
        );
      })}
      <button type="button" data-testid="add-zone" onClick={add}>
        <Plus aria-hidden /> Add a zone
      </button>
    </SettingsGroup>
  );
}

/** An id that no zone has. */
function freshId(zones: readonly ReinforcementZone[]): string {
  let number = zones.length + 1;
  while (zones.some(({ id }) => id === `zone-${number}`)) number += 1;
  return `zone-${number}`;
}
