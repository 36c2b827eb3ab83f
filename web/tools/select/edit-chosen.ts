import { add2, type Vec2 } from "../../../core/foundation/index.ts";
import type { Command, LineRef } from "../../../core/project/index.ts";
import { elementsOfLine } from "../elements-of-line.ts";
import { newId } from "../new-id.ts";
import { findLine, type SceneLine } from "../scene.ts";
import { lineOfSelection, selectLine } from "../selected-line.ts";
import type { Selection, Target, ToolContext } from "../types.ts";
import { moveItemCommands, startOfItem } from "./move-item-commands.ts";
import { moveNodeCommands } from "./move-node-commands.ts";

interface Edit {
  readonly commands: readonly Command[];
  readonly selection?: Selection | null;
}

/** Takes away the chosen node, else the chosen item or profile. */
export function deleteChosen({ project, selection }: ToolContext): Edit {
  const line = lineOfSelection(selection);
  if (!line || (selection?.kind !== "item" && selection?.kind !== "profile")) return { commands: [] };
  if (selection.nodeId !== undefined) {
    return {
      commands: [{ kind: "delete-node", line, nodeId: selection.nodeId }],
      selection: selectLine(line),
    };
  }
  if (line.of === "profile") {
    const isUsed = project.items.some((item) => item.kind === "section" && item.profileId === line.profileId);
    return isUsed ? { commands: [] } : { commands: [{ kind: "delete-profile", ...line }], selection: null };
  }
  return { commands: [{ kind: "delete-item", itemId: line.itemId }], selection: null };
}

/** The next or the previous node of the chosen line, round and round. */
export function nextNode({ scene, selection }: ToolContext, by: 1 | -1): { readonly selection?: Selection } {
  const line = lineOfSelection(selection);
  const nodes = line ? (findLine(scene, line)?.nodes ?? []) : [];
  if (!line || nodes.length === 0) return {};
  const current = nodes.findIndex((node) => node.nodeId === chosenNodeId(selection));
  const next = current < 0 && by < 0 ? nodes.length - 1 : (current + by + nodes.length) % nodes.length;
  const nodeId = nodes[next]?.nodeId;
  return nodeId === undefined ? {} : { selection: { ...selectLine(line), nodeId } };
}

/** Moves the chosen node, else the whole chosen item, by a distance of its view. */
export function nudgeChosen({ project, scene, selection }: ToolContext, by: Vec2): readonly Command[] {
  const line = lineOfSelection(selection);
  if (!line) return [];
  const nodeId = chosenNodeId(selection);
  const node = findLine(scene, line)?.nodes.find((other) => other.nodeId === nodeId);
  if (node) return moveNodeCommands(project, line, node.nodeId, add2(node.at, by));
  return line.of === "item" && nodeId === undefined
    ? moveItemCommands(project, startOfItem(scene, line.itemId), by)
    : [];
}

/** Turns the chosen edge, else the edge that leaves the chosen node, between straight and curved. */
export function bendEdge({ scene, selection }: ToolContext): readonly Command[] {
  const chosen = chosenEdge(scene.lines, selection);
  if (!chosen || chosen.edge.kind === "follow") return [];
  const next = chosen.edge.kind === "line" ? "curve" : "line";
  return [{ kind: "change-node", line: chosen.line, nodeId: chosen.edge.edgeId, changes: { next } }];
}

/** Puts a node into an edge at the target, else into the middle of the chosen edge, and chooses it. */
export function insertNode(context: ToolContext, target: Extract<Target, { on: "edge" }> | undefined): Edit {
  const place = target ?? middleOfChosen(context);
  if (!place) return { commands: [] };
  const { line, edgeId, t } = place;
  const newNodeId = newId(
    "n",
    elementsOfLine(context.project, line).map((element) => element.id),
  );
  return {
    commands: [{ kind: "split-segment", line, afterNodeId: edgeId, t, newNodeId }],
    selection: { ...selectLine(line), nodeId: newNodeId },
  };
}

const chosenNodeId = (selection: Selection | undefined): string | undefined =>
  selection?.kind === "item" || selection?.kind === "profile" ? selection.nodeId : undefined;

function middleOfChosen({ scene, selection }: ToolContext) {
  const chosen = chosenEdge(scene.lines, selection);
  return chosen && chosen.edge.kind !== "follow"
    ? { line: chosen.line, edgeId: chosen.edge.edgeId, t: 0.5 }
    : undefined;
}

function chosenEdge(lines: readonly SceneLine[], selection: Selection | undefined) {
  const line: LineRef | undefined = lineOfSelection(selection);
  if (!line || (selection?.kind !== "item" && selection?.kind !== "profile")) return undefined;
  const edgeId = selection.edgeId ?? selection.nodeId;
  const edge = findLine({ mirrored: false, lines }, line)?.edges.find((other) => other.edgeId === edgeId);
  return edge && { line, edge };
}
