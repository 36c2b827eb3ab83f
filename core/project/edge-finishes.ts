import { type LaminateSettings, laminateOf } from "./laminate-settings.ts";
import type { EdgeFinish, Project } from "./schema.ts";

/** How a drawn edge of an item is finished if it is free: its own way, or that of all edges. An edge on the left hand goes with its image. */
export function finishOfEdge(
  { edgeFinish, edgeFinishes }: Pick<LaminateSettings, "edgeFinish" | "edgeFinishes">,
  itemId: string,
  edgeId: string,
): EdgeFinish {
  const plain = edgeId.replace(/\.left$/, "");
  const own = edgeFinishes.find((one) => one.itemId === itemId && one.edgeId === plain);
  return own?.finish ?? edgeFinish;
}

/** What stands along a free edge in place of foam, out to the drawn edge: a strip that is glued on, or both skins alone. */
export interface LetIn {
  readonly of: "insert" | "flange";
  readonly widthMm: number;
}

/**
 * What is let in along an edge of an item if it is free. A lying sheet with a flange is none: its foam is taken off when the
 * first skin is hard; a fence is skinned on both sides at once, and its foam ends before the flange.
 */
export function letInAt(
  { items, ...project }: Pick<Project, "laminate" | "materials" | "items">,
  itemId: string,
): (edgeId: string) => LetIn | undefined {
  const laminate = laminateOf(project);
  const isFence = items.some(({ id, kind }) => id === itemId && kind === "fence");
  return (edgeId) => {
    const finish = finishOfEdge(laminate, itemId, edgeId);
    if (finish === "insert") return { of: "insert", widthMm: laminate.insertMm };
    return finish === "flange" && isFence ? { of: "flange", widthMm: laminate.flangeMm } : undefined;
  };
}
