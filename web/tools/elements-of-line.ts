import type { LineRef, PlanElement, Project, SideNode } from "../../core/project/index.ts";

/** The nodes and followed pieces of a line of the document; none where the line has no heights of its own. */
export function elementsOfLine(project: Project, line: LineRef): readonly (PlanElement | SideNode)[] {
  if (line.of === "profile") {
    return project.profiles.find((profile) => profile.id === line.profileId)?.nodes ?? [];
  }
  const item = project.items.find((other) => other.id === line.itemId);
  if (item === undefined) return [];
  if (line.of === "item") return item.kind === "section" ? item.outline.elements : item.line.elements;
  return item.kind === "fence" && item.lowerEdge.kind === "heights" ? item.lowerEdge.nodes : [];
}
