import type { CutFace, CutField } from "./lay-face.ts";
import { type Area, areaMm2 } from "./polygons.ts";
import type { LaidPly, SkinField, SkinPatch } from "./types.ts";
import type { ZoneCloth } from "./zone-cloth.ts";

const SIDE_LETTERS = {
  "lower face": "L",
  "upper face": "U",
  "inboard face": "I",
  "outboard face": "O",
} as const;

/** The fields of a cut face under their codes, with their patches under theirs. */
export function fieldsOfCut(
  { region, fields }: CutFace,
  plies: readonly LaidPly[],
  work: (field: CutField) => Pick<SkinField, "workMinutes" | "mixedKg">,
): readonly SkinField[] {
  const { part, side, rearwardRad } = region;
  const letter = SIDE_LETTERS[side];
  return fields.map((field, i): SkinField => {
    const id = `${part.id}-${letter}${fields.length > 1 ? i + 1 : ""}`;
    return {
      id,
      partId: part.id,
      side,
      areaMm2: field.own.areaMm2,
      isNarrow: field.own.narrowMm2 > 0,
      ...work(field),
      patches: field.plies.flatMap((pieces, ply) => {
        const laid = plies[ply];
        if (!laid) return [];
        return pieces.map(
          (piece, k): SkinPatch => ({
            id: `${id}.${ply + 1}${pieces.length > 1 ? letterOf(k) : ""}`,
            fieldId: id,
            partId: part.id,
            ply: ply + 1,
            clothId: laid.clothId,
            warpRad: rearwardRad + laid.warpRad,
            ...loopsOf(piece),
            areaMm2: areaMm2(piece),
          }),
        );
      }),
    };
  });
}

/** The patches of a zone, in the field that it is laid with. */
export const patchesOfZone = (
  { id, zone, cloth, region, plies }: ZoneCloth,
  fieldId: string,
  pliesBelow: number,
): readonly SkinPatch[] =>
  plies.flatMap((pieces, ply) =>
    pieces.map(
      (piece, k): SkinPatch => ({
        id: `${id}.${ply + 1}${pieces.length > 1 ? letterOf(k) : ""}`,
        fieldId,
        partId: region.part.id,
        ply: pliesBelow + ply + 1,
        zoneId: id,
        clothId: cloth.id,
        warpRad: region.rearwardRad + zone.warpRad,
        ...loopsOf(piece),
        areaMm2: areaMm2(piece),
      }),
    ),
  );

const loopsOf = ([outlineMm = [], ...holesMm]: Area): Pick<SkinPatch, "outlineMm" | "holesMm"> => ({
  outlineMm,
  holesMm,
});

/** a, b … z, aa, ab … */
const letterOf = (k: number): string =>
  (k >= 26 ? letterOf(Math.floor(k / 26) - 1) : "") + String.fromCharCode(97 + (k % 26));
