import {
  applyCommand,
  type Command,
  coversWhole,
  type Grip,
  type JoinRefusal,
  joinItems,
  type Project,
  resolveLines,
} from "../../core/project/index.ts";
import { drawnSelection } from "../hand/index.ts";
import { useDocument, useView } from "../stores/index.ts";
import {
  chosenEdgeId,
  insertIntoEdge,
  itemIdsOf,
  newId,
  type Selection,
  selectGrips,
} from "../tools/index.ts";
import { chosenGrips, doAll } from "./edit-deeds-of.ts";
import { useEdit } from "./edit-store.ts";

/** What a split or a join comes to, or why it cannot be. */
export type Planned =
  | { readonly ok: true; readonly commands: readonly Command[]; readonly chosen: readonly Grip[] }
  | { readonly ok: false; readonly words: string };

/** Splits a fence at the chosen node or in the middle of the chosen edge, a section between two chosen nodes. */
export function splitChosen(): void {
  const { project } = useDocument.getState();
  carry(planSplit(project, chosenGrips(), drawnSelection()));
}

/** Joins the two chosen things. */
export function joinChosen(): void {
  carry(planJoin(useDocument.getState().project, chosenGrips()));
}

function carry(planned: Planned): void {
  if (planned.ok) {
    doAll(planned.commands);
    useView.getState().select(selectGrips(planned.chosen));
  } else useEdit.getState().tell(planned.words);
}

/** The commands that split what is chosen. */
export function planSplit(
  project: Project,
  grips: readonly Grip[],
  selection: Selection | undefined,
): Planned {
  const [first, second] = grips;
  const itemId = first?.line.of === "item" ? first.line.itemId : undefined;
  const item = project.items.find(({ id }) => id === itemId);
  if (!first || !item || grips.length > 2) return refuse(HOW_TO_SPLIT);
  const half = halfOf(project, item.id);
  if (item.kind === "fence") {
    const edgeId = chosenEdgeId(selection);
    const made = edgeId === undefined ? undefined : insertIntoEdge(project, first.line, edgeId);
    const nodeId = made?.newNodeId ?? first.nodeId;
    if (nodeId === undefined || second) return refuse(HOW_TO_SPLIT);
    const before = made ? [made.command] : [];
    return checked(project, [...before, { kind: "split-item", itemId: item.id, nodeIds: [nodeId], half }]);
  }
  const isPair =
    second?.line.of === "item" &&
    second.line.itemId === item.id &&
    first.nodeId !== undefined &&
    second.nodeId !== undefined;
  if (item.kind !== "section" || !isPair) return refuse(HOW_TO_SPLIT);
  const nodeIds = [first.nodeId, second.nodeId].filter((id) => id !== undefined);
  return checked(project, [{ kind: "split-item", itemId: item.id, nodeIds, half }]);
}

const HOW_TO_SPLIT =
  "Choose a node or an edge of a fence to split it there, or two nodes of a section to cut it from one to the other.";

const refuse = (words: string): Planned => ({ ok: false, words });

function checked(project: Project, commands: readonly Command[]): Planned {
  const last = commands.at(-1);
  const before = commands.slice(0, -1).reduce(applyCommand, project);
  const after = last ? applyCommand(before, last) : before;
  if (last?.kind !== "split-item") return refuse(HOW_TO_SPLIT);
  if (after === before)
    return refuse(
      "It cannot be split there: take a node between two others, or two nodes that are no neighbours.",
    );
  const halves = [last.itemId, last.half.id];
  const plan = resolveLines(after).plan;
  const isLost = resolveLines(project).plan[last.itemId] !== undefined && halves.some((id) => !plan[id]);
  const isCovered = last.nodeIds.length < 2 || coversWhole(before, after, last.itemId, last.half.id);
  if (isLost || !isCovered)
    return refuse(
      "The straight cut would leave the outline. Choose two nodes that see each other inside it.",
    );
  return {
    ok: true,
    commands,
    chosen: halves.map((itemId): Grip => ({ line: { of: "item", itemId } })),
  };
}

function halfOf(project: Project, itemId: string) {
  const item = project.items.find(({ id }) => id === itemId);
  const letter = item?.kind === "fence" ? "f" : "s";
  const numbers = project.items.flatMap((one) => (one.kind === item?.kind ? [one.number] : []));
  const number = Math.max(0, ...numbers) + 1;
  const stem = (item?.name ?? "").replace(/ \d+$/, "");
  const name = stem.trim() === "" ? "" : `${stem.slice(0, 55)} ${number}`;
  return { id: newId(letter, itemIdsOf(project)), number, name };
}

/** The command that joins what is chosen. */
export function planJoin(project: Project, grips: readonly Grip[]): Planned {
  const ids = grips.flatMap(({ line, nodeId }) =>
    nodeId === undefined && line.of === "item" ? [line.itemId] : [],
  );
  const [firstId, secondId] = ids;
  if (grips.length !== 2 || firstId === undefined || secondId === undefined)
    return refuse("Choose two fences, or two sections that share an edge, to make one of them.");
  const joined = joinItems(project, firstId, secondId);
  if (!joined.ok) return refuse(WORDS[joined.reason]);
  return {
    ok: true,
    commands: [{ kind: "join-items", firstId, secondId }],
    chosen: [{ line: { of: "item", itemId: joined.keptId } }],
  };
}

const WORDS: Readonly<Record<JoinRefusal, string>> = {
  "not two of a kind": "Two fences can be joined, or two sections; not one with the other.",
  "no shared edge": "These sections share no edge. Let an edge of one follow the other first.",
  "several shared edges": "These sections share more than one edge. Join them where they share one only.",
  "different profile":
    "These sections differ in profile, tilt or heading. Give both the same, and they can be one.",
  "an end follows an edge": "A fence that follows an edge is joined after it has nodes of its own.",
  "different lower edges":
    "One lower edge is given as heights, the other as depths. Give both the same way first.",
  "lower edges do not meet": "Their lower edges do not meet. Bring their ends to one height first.",
};
