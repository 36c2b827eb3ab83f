import type { Problem, ProblemPlace } from "../../core/foundation/index.ts";
import { type Selection, type StageName, useView } from "../stores/index.ts";

/** Chooses the thing that a problem names, opens the stage where it can be put right, and goes to the field. */
export function goToProblem(problem: Problem): void {
  const view = useView.getState();
  const { stage, selection } = whereToLook(problem);
  view.setStage(stage);
  view.select(selection);
  if (problem.kind === "nothing-drawn") view.setTool("section");
  if (problem.place.setting !== undefined) focusSetting(problem.place.setting);
  view.setPhoneView(selection?.kind === "part" ? "parts" : "drawing");
}

/** The stage where a problem is put right, and what is chosen there. */
export function whereToLook(problem: Pick<Problem, "place">): {
  readonly stage: StageName;
  readonly selection: Selection | undefined;
} {
  const { place } = problem;
  if (place.setting !== undefined)
    return { stage: stageOfSetting(place.setting), selection: selectionOf(place) };
  if (place.ribId !== undefined) return { stage: "jig", selection: selectionOf(place) };
  if (place.itemId === undefined && place.profileId === undefined && place.partId !== undefined)
    return { stage: "sheets", selection: selectionOf(place) };
  return { stage: "draw", selection: selectionOf(place) };
}

function selectionOf(place: ProblemPlace): Selection | undefined {
  const node = place.nodeId === undefined ? {} : { nodeId: place.nodeId };
  const line = place.line === undefined ? {} : { line: place.line };
  // A node of a section's profile is shown on the profile.
  if (place.profileId !== undefined && place.nodeId !== undefined)
    return { kind: "profile", profileId: place.profileId, ...node };
  if (place.openingId !== undefined) return { kind: "opening", openingId: place.openingId, ...node };
  if (place.itemId !== undefined) return { kind: "item", itemId: place.itemId, ...node, ...line };
  if (place.profileId !== undefined) return { kind: "profile", profileId: place.profileId, ...node };
  if (place.noteId !== undefined) return { kind: "note", noteId: place.noteId };
  if (place.underlayId !== undefined) return { kind: "underlay", underlayId: place.underlayId };
  if (place.ribId !== undefined) return { kind: "rib", ribId: place.ribId };
  if (place.partId !== undefined) return { kind: "part", partId: place.partId };
  return undefined;
}

/** Settings by the beginning of their dotted name, the longer ones first. */
const STAGES_OF_SETTINGS: readonly (readonly [string, StageName])[] = [
  ["materials.boards", "jig"],
  ["materials.glues", "glue"],
  ["jig", "jig"],
  ["glue", "glue"],
  ["schedule", "glue"],
  ["laminate", "skin"],
  ["shopping", "buy"],
  ["paper", "print"],
  ["titleBlock", "print"],
  ["marking", "sheets"],
  ["bending", "sheets"],
];

const stageOfSetting = (setting: string): StageName =>
  STAGES_OF_SETTINGS.find(([start]) => setting.startsWith(start))?.[1] ?? "stock";

function focusSetting(setting: string): void {
  requestAnimationFrame(() => {
    const field = document.querySelector<HTMLElement>(`[data-setting="${CSS.escape(setting)}"]`);
    field?.closest("details")?.setAttribute("open", "");
    field?.scrollIntoView({ block: "center" });
    field?.focus();
  });
}
