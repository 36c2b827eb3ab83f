import type { PlanPoint } from "../../../core/foundation/index.ts";
import type { MappedPatch, MappedPly, PatchMap } from "../../../core/skins/index.ts";
import { pathOf, type Scale } from "../../drawings/index.ts";

interface PatchMapPictureProps {
  readonly map: PatchMap;
  readonly ply: MappedPly;
  readonly scale: Scale;
  readonly chosenId: string | undefined;
  readonly onChoose: (patchId: string) => void;
}

/** One ply of a face: joints and edges of the foam, patches that can be chosen, laps hatched. */
export function PatchMapPicture({ map, ply, scale, chosenId, onChoose }: PatchMapPictureProps) {
  const path = (loops: readonly (readonly PlanPoint[])[]) =>
    loops
      .map((loop) =>
        pathOf(
          loop.map(({ x, y }) => [x, y] as const),
          scale,
          "closed",
        ),
      )
      .join("");
  return (
    <svg
      className="patch-map-picture"
      width={scale.widthPx}
      height={scale.heightPx}
      role="group"
      aria-label={`Patches of ply ${ply.ply}`}
    >
      <defs>
        <pattern
          id="lap-wet"
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <line x1="0" y1="0" x2="0" y2="6" />
        </pattern>
        <pattern
          id="lap-cured"
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <line x1="0" y1="0" x2="0" y2="6" />
          <line x1="0" y1="0" x2="6" y2="0" />
        </pattern>
      </defs>
      {ply.patches.map((patch) =>
        patch.isOfNeighbour ? (
          <path key={patch.patchId} className="patch-beside" d={path(patch.loopsMm)} />
        ) : (
          <path
            key={patch.patchId}
            className="patch"
            fillRule="evenodd"
            d={path(patch.loopsMm)}
            role="button"
            tabIndex={0}
            aria-label={wordsOf(patch)}
            aria-pressed={patch.patchId === chosenId}
            data-testid={`patch-${patch.patchId}`}
            onFocus={() => onChoose(patch.patchId)}
            onClick={() => onChoose(patch.patchId)}
          />
        ),
      )}
      {ply.laps.map(({ patchIds, loopsMm, isOnCured }) => (
        <path
          key={patchIds.join()}
          className="lap"
          fill={`url(#${isOnCured ? "lap-cured" : "lap-wet"})`}
          d={path(loopsMm)}
        />
      ))}
      {map.grounds.map(({ partId, loopsMm }) => (
        <path key={partId} className="patch-ground" d={path(loopsMm)} />
      ))}
      {ply.patches.flatMap((patch) => {
        const [x, y] = scale.toPx([patch.middle.x, patch.middle.y]);
        const isRoomy = patch.roomMm * scale.pixelsPerMm > LEAST_ROOM_PX;
        return isRoomy || patch.patchId === chosenId ? (
          <text key={patch.patchId} className="code patch-code" x={x} y={y + 4} textAnchor="middle">
            {patch.patchId}
          </text>
        ) : (
          []
        );
      })}
    </svg>
  );
}

/** In less room than this a code would lie over lines: it shows when its patch is chosen. */
const LEAST_ROOM_PX = 6;

const wordsOf = ({ patchId, session }: MappedPatch): string =>
  session > 0 ? `${patchId}, session ${session}` : patchId;
