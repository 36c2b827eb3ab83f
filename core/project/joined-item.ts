import { mapEdges } from "./delete-node.ts";
import type { EdgeRef, Fence, Project, Section } from "./schema.ts";

/** Why two things cannot be joined. */
export type JoinRefusal =
  | "not two of a kind"
  | "no shared edge"
  | "several shared edges"
  | "different profile"
  | "an end follows an edge"
  | "different lower edges"
  | "lower edges do not meet";

export type JoinResult =
  | { readonly ok: true; readonly project: Project; readonly keptId: string }
  | { readonly ok: false; readonly reason: JoinRefusal };

export const refuse = (reason: JoinRefusal): JoinResult => ({ ok: false, reason });

/** For each id that is taken a new one: its own letters and the next free count. */
export function freshIds(
  elements: readonly { readonly id: string }[],
  taken: ReadonlySet<string>,
): Map<string, string> {
  const used = new Set([...taken, ...elements.map(({ id }) => id)]);
  const names = new Map<string, string>();
  for (const { id } of elements) {
    if (!taken.has(id)) continue;
    const stem = id.replace(/\d+$/, "").slice(0, 30) || "n";
    let count = 1;
    while (used.has(`${stem}${count}`)) count++;
    names.set(id, `${stem}${count}`);
    used.add(`${stem}${count}`);
  }
  return names;
}

export function withJoined(
  project: Project,
  joined: Section | Fence,
  goneId: string,
  lead: (edge: EdgeRef) => EdgeRef,
): JoinResult {
  const items = project.items.flatMap((item) =>
    item.id === goneId ? [] : [mapEdges(item.id === joined.id ? joined : item, lead)],
  );
  const openings = project.openings.map((opening) =>
    opening.itemId === goneId ? { ...opening, itemId: joined.id } : opening,
  );
  return { ok: true, project: { ...project, items, openings }, keptId: joined.id };
}
