import {
  type LineRef,
  type PlanElement,
  type Project,
  planLineOf,
  type SideNode,
} from "../../core/project/index.ts";
import { elementsOfEdge } from "./elements-of-edge.ts";

type Elements = readonly (PlanElement | SideNode)[];
const NONE: Elements = [];

/** The nodes and followed pieces of a line of the document; none where the line has no nodes of its own. */
export function elementsOfLine(project: Project, line: LineRef): Elements {
  if (line.of === "profile") {
    return project.profiles.find((profile) => profile.id === line.profileId)?.nodes ?? NONE;
  }
  if (line.of === "opening") {
    return project.openings.find((opening) => opening.id === line.openingId)?.outline.elements ?? NONE;
  }
  const item = project.items.find((other) => other.id === line.itemId);
  if (item === undefined) return NONE;
  switch (line.of) {
    case "item":
      return planLineOf(item).elements;
    case "lower-edge":
      return item.kind === "fence" && item.lowerEdge.kind === "heights" ? item.lowerEdge.nodes : NONE;
    case "edge": {
      const edge = item.kind === "transition" ? item[line.side] : undefined;
      return edge?.kind === "free" ? elementsOfEdge(edge.nodes, line.view) : NONE;
    }
  }
}
