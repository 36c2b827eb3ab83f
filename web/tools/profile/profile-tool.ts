import { type Command, newProfile, type Profile } from "../../../core/project/index.ts";
import { chosenProfile } from "../chosen-profile.ts";
import { type Drawing, draw, EMPTY_DRAWING, sightOfDrawing } from "../drawing.ts";
import { newId, profileIdsOf } from "../new-id.ts";
import type { DraftNode, Sight, Step, Tool, ToolContext, ToolEvent } from "../types.ts";
import { extendProfile } from "./extend-profile.ts";

export interface ProfileState {
  readonly drawing: Drawing;
  /** Draws a profile of its own although one is chosen. */
  readonly draftsNew: boolean;
}

const NEW_RULES = { view: "side", closes: false, leastNodes: 2 } as const;
/** While a profile is extended every node goes straight into it: none is kept back. */
const EXTEND_RULES = { view: "side", closes: false, leastNodes: 1 } as const;

/** Draws a profile in the side view, or puts nodes into the chosen one and on to its ends. */
export const profileTool: Tool<ProfileState> = {
  start: { drawing: EMPTY_DRAWING, draftsNew: false },
  step,
  sight,
};

function step(state: ProfileState, event: ToolEvent, context: ToolContext): Step<ProfileState> {
  if (event.kind === "choose-profile") return choose(state, event.choice);
  const profile = extendedProfile(state, context);
  return profile ? extend(state, event, context, profile) : draftNew(state, event, context);
}

const extendedProfile = (state: ProfileState, context: ToolContext): Profile | undefined =>
  state.draftsNew ? undefined : chosenProfile(context.project, context.selection);

function choose(
  state: ProfileState,
  choice: Extract<ToolEvent, { kind: "choose-profile" }>["choice"],
): Step<ProfileState> {
  const fresh = { ...state, drawing: EMPTY_DRAWING };
  if (choice.kind === "new") return { state: { ...fresh, draftsNew: true }, commands: [] };
  return {
    state: { ...fresh, draftsNew: false },
    commands: [],
    selection: { kind: "profile", profileId: choice.profileId },
  };
}

function extend(
  state: ProfileState,
  event: ToolEvent,
  context: ToolContext,
  profile: Profile,
): Step<ProfileState> {
  const { drawing, outcome } = draw(state.drawing, event, context, EXTEND_RULES);
  const placed = drawing.nodes.at(-1);
  const rest = { ...state, drawing: { ...drawing, nodes: [] } };
  if (outcome === "leave" || event.kind === "finish") {
    return { state: profileTool.start, commands: [], tool: "select" };
  }
  if (!placed) return { state: rest, commands: [] };
  const { commands, nodeId } = extendProfile(profile, placed.at, drawing.nextSegment, context.scene);
  if (commands.length === 0) return { state: rest, commands: [] };
  return { state: rest, commands, selection: { kind: "profile", profileId: profile.id, nodeId } };
}

function draftNew(state: ProfileState, event: ToolEvent, context: ToolContext): Step<ProfileState> {
  const { drawing, outcome } = draw(state.drawing, event, context, NEW_RULES);
  if (outcome === "leave") return { state: profileTool.start, commands: [], tool: "select" };
  const sorted = { ...drawing, nodes: rearward(drawing.nodes) };
  if (outcome === "going") return { state: { ...state, drawing: sorted }, commands: [] };
  const id = newId("p", profileIdsOf(context.project));
  return {
    state: profileTool.start,
    commands: addProfile(id, sorted.nodes, context),
    selection: { kind: "profile", profileId: id },
    tool: "select",
  };
}

/** A profile runs rearward only: nodes stand in order of x, and a second node at one x replaces the first. */
function rearward(nodes: readonly DraftNode[]): readonly DraftNode[] {
  const latest = nodes.filter(
    (node, index) => !nodes.slice(index + 1).some((later) => later.at[0] === node.at[0]),
  );
  return latest.length === nodes.length && nodes.every(isBehind(nodes))
    ? nodes
    : [...latest].sort((a, b) => a.at[0] - b.at[0]);
}

const isBehind =
  (nodes: readonly DraftNode[]) =>
  (node: DraftNode, index: number): boolean =>
    node.at[0] > (nodes[index - 1]?.at[0] ?? Number.NEGATIVE_INFINITY);

/** The new profile; a section that is chosen takes it. */
function addProfile(id: string, nodes: readonly DraftNode[], context: ToolContext): readonly Command[] {
  const { project, selection } = context;
  const profile = newProfile({
    id,
    name: `Profile ${project.profiles.length + 1}`,
    nodes: nodes.map((node, index) => ({
      kind: "node",
      id: `n${index + 1}`,
      x: node.at[0],
      z: node.at[1],
      next: node.next,
    })),
  });
  const add: Command = { kind: "add-profile", profile };
  const item = project.items.find((other) => selection?.kind === "item" && other.id === selection.itemId);
  if (item?.kind !== "section") return [add];
  return [add, { kind: "change-section", itemId: item.id, changes: { profileId: id } }];
}

function sight(state: ProfileState, context: ToolContext): Sight {
  const profile = extendedProfile(state, context);
  const rules = profile ? EXTEND_RULES : NEW_RULES;
  const canEnd = profile !== undefined || state.drawing.nodes.length >= NEW_RULES.leastNodes;
  return {
    ...sightOfDrawing(state.drawing, rules),
    prompt: profile ? extendPrompt(profile) : newPrompt(state.drawing),
    profile: profile ? { kind: "existing", profileId: profile.id } : { kind: "new", zMm: 0 },
    ...(canEnd ? { finish: profile ? "Done" : "End the profile" } : {}),
  };
}

const extendPrompt = (profile: Profile): string =>
  `Click in the side view to put a node into ${profile.name}, before its front or behind its rear.`;

function newPrompt({ nodes }: Drawing): string {
  if (nodes.length === 0) return "Click where the profile begins in the side view, or type x and z.";
  return nodes.length < NEW_RULES.leastNodes
    ? "Click the next node, further to the rear."
    : "Click on toward the rear, or press Enter to end the profile.";
}
