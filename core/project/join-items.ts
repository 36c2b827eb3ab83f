import { joinFences } from "./join-fences.ts";
import { followsOf, joinSections } from "./join-sections.ts";
import { type JoinResult, refuse } from "./joined-item.ts";
import type { Project } from "./schema.ts";

/**
 * Two fences made one, end to end at the two ends nearest to each other (a straight between them where they lie
 * apart), or two sections that share an edge made one without it. The one that is followed, else the first, keeps its
 * name; what followed the other follows the whole. The joined outline has both outlines' other edges as they were.
 */
export function joinItems(project: Project, firstId: string, secondId: string): JoinResult {
  const first = project.items.find(({ id }) => id === firstId);
  const second = project.items.find(({ id }) => id === secondId);
  if (!first || !second || first === second) return refuse("not two of a kind");
  if (first.kind === "fence" && second.kind === "fence") return joinFences(project, first, second);
  if (first.kind !== "section" || second.kind !== "section") return refuse("not two of a kind");
  return followsOf(second, first.id).length > 0
    ? joinSections(project, first, second)
    : joinSections(project, second, first);
}
