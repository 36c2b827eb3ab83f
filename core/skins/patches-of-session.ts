import type { SkinFace, SkinPatch, SkinSession } from "./types.ts";

/** The patches of a session in the order in which they are laid: ply by ply from the foam. */
export const patchesOfSession = (
  { fields }: Pick<SkinFace, "fields">,
  { fieldIds }: SkinSession,
): readonly SkinPatch[] =>
  fieldIds
    .flatMap((fieldId) => fields.filter(({ id }) => id === fieldId))
    .flatMap(({ patches }) => patches)
    .toSorted((a, b) => a.ply - b.ply);
