import type { Command, Grip, Project } from "../../../core/project/index.ts";
import { newId, takenIds } from "../new-id.ts";
import { lineKey, type Scene, type SceneEdge, type SceneLine } from "../scene.ts";
import { gripKey, gripsOf, selectGrips } from "../several.ts";
import type { Selection, ToolContext } from "../types.ts";

/** Takes away all that is chosen; of profiles those that no section needs any longer. */
export function deleteSeveral(project: Project, grips: readonly Grip[]): readonly Command[] {
  const itemIds = new Set(
    grips.flatMap(({ line, nodeId }) => (nodeId === undefined && line.of === "item" ? [line.itemId] : [])),
  );
  const needed = new Set(
    project.items.flatMap((item) =>
      item.kind === "section" && !itemIds.has(item.id) ? [item.profileId] : [],
    ),
  );
  const commands = grips.flatMap(({ line, nodeId }): readonly Command[] => {
    if (nodeId !== undefined) return [{ kind: "delete-node", line, nodeId }];
    if (line.of === "opening") return [{ kind: "delete-opening", openingId: line.openingId }];
    if (line.of === "item") return [{ kind: "delete-item", itemId: line.itemId }];
    const isFree = line.of === "profile" && !needed.has(line.profileId);
    return isFree ? [{ kind: "delete-profile", profileId: line.profileId }] : [];
  });
  // What follows an edge goes before what it follows, so that nothing is given nodes only to be taken away.
  return commands.toReversed();
}

/** Turns the edges between chosen nodes straight if all are curved, else curved. */
export function bendSeveral(scene: Scene, grips: readonly Grip[]): readonly Command[] {
  const chosen = edgesBetween(scene, grips);
  const next = chosen.every(({ edge }) => edge.kind === "curve") ? "line" : "curve";
  return chosen.flatMap(({ line, edge }): readonly Command[] =>
    edge.kind === next
      ? []
      : [{ kind: "change-node", line: line.line, nodeId: edge.edgeId, changes: { next } }],
  );
}

/** Puts a node into the middle of each edge between chosen nodes, and chooses these nodes too. */
export function insertSeveral(
  { project, scene, selection }: ToolContext,
  grips: readonly Grip[],
): { readonly commands: readonly Command[]; readonly selection?: Selection | null } {
  const taken = new Map<string, string[]>();
  const added = edgesBetween(scene, grips).map(({ line: { line }, edge }) => {
    const key = lineKey(line);
    const ids = taken.get(key) ?? [...takenIds(project, line)];
    const newNodeId = newId("n", ids);
    taken.set(key, [...ids, newNodeId]);
    return { line, afterNodeId: edge.edgeId, newNodeId };
  });
  if (added.length === 0) return { commands: [] };
  return {
    commands: added.map((split): Command => ({ kind: "split-segment", t: 0.5, ...split })),
    selection:
      selectGrips([
        ...gripsOf(selection),
        ...added.map(({ line, newNodeId }): Grip => ({ line, nodeId: newNodeId })),
      ]) ?? null,
  };
}

/**
 * The edges whose both ends are chosen, each once; where no two chosen nodes are neighbours, the edges that leave
 * them. Edges without nodes of their own are left out.
 */
function edgesBetween(
  scene: Scene,
  grips: readonly Grip[],
): readonly { readonly line: SceneLine; readonly edge: SceneEdge }[] {
  const keys = new Set(grips.map(gripKey));
  const isChosen = (line: SceneLine, nodeId: string | undefined) =>
    nodeId !== undefined && keys.has(gripKey({ line: line.line, nodeId }));
  const seen = new Set<string>();
  const leaving = scene.lines.flatMap((line) =>
    line.edges.flatMap((edge) => {
      const key = gripKey({ line: line.line, nodeId: edge.edgeId });
      const hasOwnNodes = edge.kind === "line" || edge.kind === "curve";
      if (!hasOwnNodes || !isChosen(line, edge.edgeId) || seen.has(key)) return [];
      seen.add(key);
      return [{ line, edge }];
    }),
  );
  const between = leaving.filter(({ line, edge }) => isChosen(line, endOfEdge(line, edge)));
  return between.length > 0 ? between : leaving;
}

function endOfEdge(line: SceneLine, edge: SceneEdge): string | undefined {
  const index = line.nodes.findIndex(({ nodeId }) => nodeId === edge.edgeId);
  return line.nodes[index + 1]?.nodeId ?? (line.closed ? line.nodes[0]?.nodeId : undefined);
}
