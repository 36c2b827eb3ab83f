import { moveReferences } from "./delete-node.ts";
import { editPlanLine } from "./edit-lines.ts";
import type { FollowPiece, PlanElement, PlanLine, Project } from "./schema.ts";

/**
 * The document with the stretch of a line from one node to another replaced by a piece that follows an edge:
 * both end nodes and those between give way to it, round the end of a closed line too. References that ended
 * on a node that is gone move on. The same document where there is no such stretch.
 */
export function followEdge(
  project: Project,
  itemId: string,
  stretch: { readonly afterNodeId: string; readonly beforeNodeId: string },
  piece: Omit<FollowPiece, "kind" | "next">,
): Project {
  const edited = editPlanLine(project, itemId, (line) => {
    const elements = replaceStretch(line, stretch, piece);
    return elements === line.elements ? line : { ...line, elements };
  });
  return edited === project ? project : moveReferences(project, edited, itemId);
}

function replaceStretch(
  line: PlanLine,
  { afterNodeId, beforeNodeId }: { readonly afterNodeId: string; readonly beforeNodeId: string },
  piece: Omit<FollowPiece, "kind" | "next">,
): readonly PlanElement[] {
  const { elements } = line;
  const first = elements.findIndex(({ id }) => id === afterNodeId);
  const last = elements.findIndex(({ id }) => id === beforeNodeId);
  const end = elements[last];
  const isTaken = elements.some(({ id }) => id === piece.id);
  if (first < 0 || end === undefined || first === last || isTaken) return elements;
  const follow: FollowPiece = { kind: "follow", ...piece, next: end.next };
  if (first < last) return [...elements.slice(0, first), follow, ...elements.slice(last + 1)];
  return line.closed ? [...elements.slice(last + 1, first), follow] : elements;
}
