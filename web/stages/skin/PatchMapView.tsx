import { useState } from "react";
import { THIN_SPACE } from "../../../core/foundation/index.ts";
import {
  clothNameOn,
  mapWords,
  type PatchMap,
  patchWords,
  type SkinFace,
} from "../../../core/skins/index.ts";
import { Choice, Select, useSize } from "../../controls/index.ts";
import { boundsOf, fitScale, type Spot } from "../../drawings/index.ts";
import { PatchMapPicture } from "./PatchMapPicture.tsx";

interface PatchMapViewProps {
  readonly face: SkinFace;
  readonly maps: readonly PatchMap[];
}

/** Where the patches of a face lie, a ply at a time; a patch that is chosen tells its figures. */
export function PatchMapView({ face, maps }: PatchMapViewProps) {
  const { ref, widthPx } = useSize<HTMLDivElement>();
  const [mapId, setMapId] = useState<string>();
  const [plyNumber, setPly] = useState("1");
  const [patchId, setPatch] = useState<string>();
  const map = maps.find(({ id }) => id === mapId) ?? maps[0];
  const ply = map?.plies.find((one) => `${one.ply}` === plyNumber) ?? map?.plies[0];
  if (!map || !ply) return null;
  const bounds = boundsOf(
    map.plies.flatMap(({ patches }) =>
      patches.flatMap(({ loopsMm }) => loopsMm.flatMap((loop) => loop.map(({ x, y }): Spot => [x, y]))),
    ),
  );
  return (
    <div className="patch-map" data-testid={`patch-map-${face.face.replace(" ", "-")}`}>
      <div className="patch-map-choices">
        {maps.length > 1 ? (
          <Select
            label="Drawn"
            value={map.id}
            options={maps.map((one) => ({ value: one.id, word: nameOf(one) }))}
            onChange={setMapId}
          />
        ) : null}
        {map.plies.length > 1 ? (
          <Choice
            label="Ply, from the foam"
            value={`${ply.ply}`}
            options={map.plies.map((one) => ({ value: `${one.ply}`, word: one.name }))}
            onChange={setPly}
          />
        ) : null}
      </div>
      <div ref={ref}>
        {bounds && widthPx > 0 ? (
          <PatchMapPicture
            map={map}
            ply={ply}
            scale={fitScale(bounds, { widthPx, heightPx: HEIGHT_PX, marginPx: 10 })}
            chosenId={patchId}
            onChoose={setPatch}
          />
        ) : null}
      </div>
      <p className="pencil">{`${mapWords(map)} Hatched one way: laps laid wet on wet; both ways: laps onto cured cloth.`}</p>
      <p aria-live="polite" data-testid="patch-figures">
        {figuresOf(face, patchId) ?? "Choose a patch to see its figures."}
      </p>
    </div>
  );
}

const HEIGHT_PX = 420;

const nameOf = (map: PatchMap): string =>
  map.frame === "plan" ? "the whole face in plan" : `${map.id}, laid flat`;

/** A patch in one sentence; undefined where it is not of this face. */
function figuresOf(face: SkinFace, patchId: string | undefined): string | undefined {
  const patch = face.fields.flatMap(({ patches }) => patches).find(({ id }) => id === patchId);
  if (!patch) return undefined;
  const { code, warp, size, area } = patchWords(patch);
  const cloth = clothNameOn(face, patch.clothId);
  const session = face.sessions.findIndex(({ fieldIds }) => fieldIds.includes(patch.fieldId));
  const laid = session < 0 ? "" : ` Laid in session ${session + 1}.`;
  return `${code}: ${cloth}, ${size}${THIN_SPACE}mm along and across the warp, ${area}${THIN_SPACE}m², warp at ${warp} in the flat.${laid}`;
}
