import { nodeLabel } from "../../../core/foundation/index.ts";
import type { LineRef, PlanElement, Project, SideNode, SpaceNode } from "../../../core/project/index.ts";
import { elementsOfLine } from "../elements-of-line.ts";

/** What stands in a column of a table of nodes. */
export type NodeColumn = "x" | "y" | "z" | "radius" | "along" | "depth";

/** The nodes of a line as a table of lengths in mm; a piece that follows another edge has no numbers of its own. */
export interface NodeTable {
  readonly columns: readonly NodeColumn[];
  readonly rows: readonly NodeTableRow[];
}

export interface NodeTableRow {
  readonly id: string;
  readonly label: string;
  /** By column; a node without a radius has none there. Undefined for a piece that follows. */
  readonly values: readonly (number | undefined)[] | undefined;
}

/** The table of a line, as the chosen panel shows it. */
export function nodeTableOf(project: Project, line: LineRef): NodeTable {
  const item = line.of === "edge" || line.of === "lower-edge" ? itemOf(project, line.itemId) : undefined;
  if (line.of === "edge" && item?.kind === "transition") {
    const edge = item[line.side];
    return edge.kind === "free" ? ofSpace(edge.nodes) : { columns: ["x", "y", "z", "radius"], rows: [] };
  }
  if (item?.kind === "fence" && item.lowerEdge.kind === "depths") {
    const rows = item.lowerEdge.nodes.map(({ id, alongMm, depthMm }) => row(id, [alongMm, depthMm]));
    return { columns: ["along", "depth"], rows };
  }
  const isPlan = line.of === "item" || line.of === "opening";
  return {
    columns: ["x", isPlan ? "y" : "z", "radius"],
    rows: elementsOfLine(project, line).map(rowOfElement),
  };
}

const itemOf = (project: Project, itemId: string) => project.items.find(({ id }) => id === itemId);

const ofSpace = (nodes: readonly SpaceNode[]): NodeTable => ({
  columns: ["x", "y", "z", "radius"],
  rows: nodes.map(({ id, x, y, z, radiusMm }) => row(id, [x, y, z, radiusMm])),
});

function rowOfElement(element: PlanElement | SideNode): NodeTableRow {
  if (element.kind === "follow") return row(element.id, undefined);
  return row(element.id, [element.x, "y" in element ? element.y : element.z, element.radiusMm]);
}

const row = (id: string, values: NodeTableRow["values"]): NodeTableRow => ({
  id,
  label: nodeLabel(id),
  values,
});
