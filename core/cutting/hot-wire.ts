import type { Problem } from "../foundation/index.ts";
import type { Part } from "../patterns/index.ts";
import type { Project } from "../project/index.ts";

/**
 * Each foam among the parts that the chosen hot wire must not touch, once. The hot wire is for polystyrene alone (the
 * same published guidance as its caution); a foam that the builder added says for itself.
 */
export function foamsNotForHotWire(
  parts: readonly Part[],
  { cutting, materials }: Pick<Project, "cutting" | "materials">,
): readonly Problem[] {
  if (cutting.tool !== "hot-wire") return [];
  const used = new Set(parts.map(({ foamId }) => foamId));
  return materials.foams
    .filter(({ id, hotWire }) => used.has(id) && hotWire === "never")
    .map(({ name }) => ({ kind: "foam-not-for-hot-wire", place: { setting: "cutting.tool" }, name }));
}
