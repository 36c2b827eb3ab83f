import { add2, type Vec2 } from "../../../core/foundation/index.ts";
import type { Command, Grip, LineRef, Project } from "../../../core/project/index.ts";
import { newId, takenIds } from "../new-id.ts";
import { findLine, isSameLine, ownerKey, type Scene, type SceneEdge, type SceneLine } from "../scene.ts";
import { chosenEdgeId, chosenNodeId, lineOfSelection, selectLine } from "../selected-line.ts";
import { wholeOf } from "../several.ts";
import type { Selection, Target, ToolContext } from "../types.ts";
import { bendSeveral, deleteSeveral, insertSeveral } from "./edit-several.ts";
import { moveNodeCommands } from "./move-node-commands.ts";
import { allowedMove, moveWholeCommands, startOfGrips, viewOfStart } from "./move-whole-commands.ts";

interface Edit {
  readonly commands: readonly Command[];
  readonly selection?: Selection | null;
}

/** Takes away the chosen node, else the chosen item, opening or profile. */
export function deleteChosen({ project, selection }: ToolContext): Edit {
  if (selection?.kind === "note")
    return { commands: [{ kind: "delete-note", noteId: selection.noteId }], selection: null };
  if (selection?.kind === "several")
    return { commands: deleteSeveral(project, selection.grips), selection: null };
  const line = lineOfSelection(selection);
  const nodeId = chosenNodeId(selection);
  if (!line) return { commands: [] };
  if (nodeId !== undefined) {
    return { commands: [{ kind: "delete-node", line, nodeId }], selection: selectLine(line) };
  }
  if (line.of === "opening") {
    return { commands: [{ kind: "delete-opening", openingId: line.openingId }], selection: null };
  }
  if (line.of !== "profile") {
    return { commands: [{ kind: "delete-item", itemId: line.itemId }], selection: null };
  }
  const isUsed = project.items.some((item) => item.kind === "section" && item.profileId === line.profileId);
  return isUsed
    ? { commands: [] }
    : { commands: [{ kind: "delete-profile", profileId: line.profileId }], selection: null };
}

/** The next or the previous node of the chosen line, round and round; of a transition, of all its free edges. */
export function nextNode({ scene, selection }: ToolContext, by: 1 | -1): { readonly selection?: Selection } {
  const line = lineOfSelection(selection);
  const nodes = line ? nodesRound(scene, line) : [];
  if (!line || nodes.length === 0) return {};
  const nodeId = chosenNodeId(selection);
  const current = nodes.findIndex((node) => node.nodeId === nodeId && isSameLine(node.line, line));
  const next = current < 0 && by < 0 ? nodes.length - 1 : (current + by + nodes.length) % nodes.length;
  const node = nodes[next];
  return node ? { selection: { ...selectLine(node.line), nodeId: node.nodeId } } : {};
}

function nodesRound(scene: Scene, line: LineRef): readonly { line: LineRef; nodeId: string }[] {
  const own = findLine(scene, line);
  const lines =
    own?.kind === "transition" || own?.kind === "free-edge"
      ? scene.lines.filter((other) => other.view === own.view && ownerKey(other.line) === ownerKey(line))
      : own
        ? [own]
        : [];
  return lines.flatMap((other) => other.nodes.map(({ nodeId }) => ({ line: other.line, nodeId })));
}

/** Moves the chosen node, else all that is chosen, by a distance of its view. */
export function nudgeChosen({ project, scene, selection }: ToolContext, by: Vec2): readonly Command[] {
  if (selection?.kind === "several") return nudgeGrips(scene, selection.grips, by);
  const line = lineOfSelection(selection);
  if (!line) return [];
  const nodeId = chosenNodeId(selection);
  const node = findLine(scene, line)?.nodes.find((other) => other.nodeId === nodeId);
  if (node) return moveNodeCommands(project, line, node.nodeId, add2(node.at, by));
  const isWhole = nodeId === undefined && (line.of === "item" || line.of === "opening");
  return isWhole ? nudgeGrips(scene, [wholeOf(line)], by) : [];
}

function nudgeGrips(scene: Scene, grips: readonly Grip[], by: Vec2): readonly Command[] {
  const start = startOfGrips(scene, grips);
  const view = viewOfStart(start);
  return moveWholeCommands(start, view === "plan" ? allowedMove(start, by, scene.mirrored) : by, view);
}

/** Turns the chosen edge, else the edge that leaves the chosen node, between straight and curved. */
export function bendEdge({ scene, selection }: ToolContext): readonly Command[] {
  if (selection?.kind === "several") return bendSeveral(scene, selection.grips);
  const chosen = chosenEdge(scene.lines, selection);
  if (!chosen || !hasOwnNodes(chosen.edge)) return [];
  const next = chosen.edge.kind === "line" ? "curve" : "line";
  return [{ kind: "change-node", line: chosen.line, nodeId: chosen.edge.edgeId, changes: { next } }];
}

/** Puts a node into an edge at the target, else into the middle of the chosen edge, and chooses it. */
export function insertNode(context: ToolContext, target: Extract<Target, { on: "edge" }> | undefined): Edit {
  const { selection } = context;
  if (!target && selection?.kind === "several") return insertSeveral(context, selection.grips);
  const place = target ?? middleOfChosen(context);
  if (!place) return { commands: [] };
  const { line, edgeId, t } = place;
  const newNodeId = newId("n", takenIds(context.project, line));
  return {
    commands: [{ kind: "split-segment", line, afterNodeId: edgeId, t, newNodeId }],
    selection: { ...selectLine(line), nodeId: newNodeId },
  };
}

/** The command that puts a node into the middle of an edge, and the node's id. */
export function insertIntoEdge(
  project: Project,
  line: LineRef,
  edgeId: string,
): { readonly command: Command; readonly newNodeId: string } {
  const newNodeId = newId("n", takenIds(project, line));
  return { command: { kind: "split-segment", line, afterNodeId: edgeId, t: 0.5, newNodeId }, newNodeId };
}

const hasOwnNodes = (edge: SceneEdge): boolean => edge.kind === "line" || edge.kind === "curve";

function middleOfChosen({ scene, selection }: ToolContext) {
  const chosen = chosenEdge(scene.lines, selection);
  return chosen && hasOwnNodes(chosen.edge)
    ? { line: chosen.line, edgeId: chosen.edge.edgeId, t: 0.5 }
    : undefined;
}

function chosenEdge(lines: readonly SceneLine[], selection: Selection | undefined) {
  const line = lineOfSelection(selection);
  if (!line) return undefined;
  const edgeId = chosenEdgeId(selection) ?? chosenNodeId(selection);
  const edge = findLine({ mirrored: false, lines }, line)?.edges.find((other) => other.edgeId === edgeId);
  return edge && { line, edge };
}
