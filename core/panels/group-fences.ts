import type { Strip } from "../cutting/index.ts";
import type { PanelMake } from "../laminate/index.ts";
import type { Part } from "../patterns/index.ts";

/** Strips that can share a panel: of one foam and thickness, with the same plies. */
export interface PanelGroup {
  readonly foamId: string;
  readonly make: PanelMake;
  readonly pieces: readonly { readonly part: Part; readonly strip: Strip }[];
}

/** The strips of all fences that are cut from panels, by what they are made of. */
export function groupFences(parts: readonly Part[], strips: readonly Strip[]): readonly PanelGroup[] {
  const groups = new Map<
    string,
    { foamId: string; make: PanelMake; pieces: { part: Part; strip: Strip }[] }
  >();
  for (const strip of strips) {
    const part = parts.find(({ id }) => id === strip.partId);
    if (part?.panel === undefined || strip.outlineMm.length < 3) continue;
    const key = keyOf(part.foamId, part.panel);
    const group = groups.get(key) ?? { foamId: part.foamId, make: part.panel, pieces: [] };
    group.pieces.push({ part, strip });
    groups.set(key, group);
  }
  return [...groups.values()];
}

const keyOf = (foamId: string, { foamMm, plies }: PanelMake): string =>
  JSON.stringify([foamId, foamMm, plies.map(({ cloth, warpRad }) => [cloth.id, warpRad])]);
