import type { Command } from "../../../core/project/index.ts";
import { newProfile, newSection } from "../../../core/project/index.ts";
import { type Drawing, draw, EMPTY_DRAWING, elementsOfDrawing, sightOfDrawing } from "../drawing.ts";
import { itemIdsOf, newId, profileIdsOf } from "../new-id.ts";
import type { ProfileChoice, Sight, Step, Tool, ToolContext, ToolEvent } from "../types.ts";

export interface SectionState {
  readonly drawing: Drawing;
  /** Undefined until the builder chooses: then the profile of what is chosen, else a new flat one. */
  readonly choice: ProfileChoice | undefined;
}

/** Height above the ground of the profile that a first section is given. */
const FIRST_HEIGHT_MM = 60;
/** A new flat profile reaches past the outline by this, so that its edges may still be moved. */
const PROFILE_SPARE_MM = 100;
const RULES = { view: "plan", closes: true, leastNodes: 3 } as const;

/** Draws the outline of a section in plan and gives it a profile. */
export const sectionTool: Tool<SectionState> = {
  start: { drawing: EMPTY_DRAWING, choice: undefined },
  step,
  sight,
};

function step(state: SectionState, event: ToolEvent, context: ToolContext): Step<SectionState> {
  if (event.kind === "choose-profile") return { state: { ...state, choice: event.choice }, commands: [] };
  const { drawing, outcome } = draw(state.drawing, event, context, RULES);
  if (outcome === "leave") return { state: sectionTool.start, commands: [], tool: "select" };
  if (outcome === "going") return { state: { ...state, drawing }, commands: [] };
  const id = newId("s", itemIdsOf(context.project));
  return {
    state: sectionTool.start,
    commands: [addSection(id, drawing, choiceOf(state, context), context)],
    selection: { kind: "item", itemId: id },
    tool: "select",
  };
}

function sight(state: SectionState, context: ToolContext): Sight {
  return {
    ...sightOfDrawing(state.drawing, RULES),
    prompt: promptFor(state.drawing),
    profile: choiceOf(state, context),
    ...(state.drawing.nodes.length >= RULES.leastNodes ? { finish: "Close the outline" } : {}),
  };
}

function promptFor({ nodes }: Drawing): string {
  if (nodes.length === 0) return "Click the first corner of the section in the plan, or type it.";
  if (nodes.length < RULES.leastNodes) return "Click the next corner, or type where it lies.";
  return "Click the first node, or press Enter, to close the outline.";
}

function choiceOf(state: SectionState, { project, selection }: ToolContext): ProfileChoice {
  if (state.choice) return state.choice;
  const chosen = project.items.find((item) => selection?.kind === "item" && item.id === selection.itemId);
  if (chosen?.kind === "section") return { kind: "existing", profileId: chosen.profileId };
  if (selection?.kind === "profile") return { kind: "existing", profileId: selection.profileId };
  return { kind: "new", zMm: project.profiles[0]?.nodes[0]?.z ?? FIRST_HEIGHT_MM };
}

function addSection(id: string, drawing: Drawing, choice: ProfileChoice, context: ToolContext): Command {
  const { project } = context;
  const sections = project.items.filter((item) => item.kind === "section");
  const number = Math.max(0, ...sections.map((section) => section.number)) + 1;
  const name = `Section ${number}`;
  const profileId = choice.kind === "existing" ? choice.profileId : newId("p", profileIdsOf(project));
  const elements = elementsOfDrawing(drawing);
  const section = newSection({ id, number, name, profileId, elements, closed: true });
  if (choice.kind === "existing") return { kind: "add-section", section };
  return { kind: "add-section", section, profile: flatProfile(profileId, name, drawing, choice.zMm) };
}

function flatProfile(id: string, sectionName: string, { nodes }: Drawing, zMm: number) {
  const xs = nodes.map((node) => node.at[0]);
  const ends = [Math.min(...xs) - PROFILE_SPARE_MM, Math.max(...xs) + PROFILE_SPARE_MM];
  return newProfile({
    id,
    name: `Profile of ${sectionName}`,
    nodes: ends.map((x, index) => ({ kind: "node", id: `n${index + 1}`, x, z: zMm, next: "line" })),
  });
}
