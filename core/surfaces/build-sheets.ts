import { type Memory, NO_MEMORY, type Problem } from "../foundation/index.ts";
import {
  nameOfItem,
  nameOfOpening,
  type Project,
  type ResolvedLines,
  type Transition,
  type TransitionEdges,
} from "../project/index.ts";
import type { RuledSurface } from "../rulings/index.ts";
import { edgeGround, type WingEdge } from "./edge-ground.ts";
import { FENCE_GROUND, fenceSheet } from "./fence-sheet.ts";
import { PANEL_SOURCE } from "./panel-bar.ts";
import { SECTION_GROUND, type SectionGround, sectionSheets } from "./section-sheets.ts";
import { type EdgeGround, TRANSITION_GROUND } from "./transition-edges.ts";
import { transitionSheet } from "./transition-sheet.ts";
import type { CornerFold, LyingSheet, Sheet } from "./types.ts";

/**
 * Every sheet of the tray, sections before transitions before fences, each in the order of the document; the folds that
 * divide sections; and a problem for each item that could not be made. An item without a usable line has its problem
 * already. Sections are as fine as the project says, which matters only while the hand drags. What is made of the same things as the last time is taken from `memory`.
 */
export function buildSheets(
  project: Project & Pick<SectionGround, "fineness">,
  lines: ResolvedLines,
  wingEdge: WingEdge = () => undefined,
  memory: Memory = NO_MEMORY,
): {
  readonly sheets: readonly Sheet[];
  readonly folds: readonly CornerFold[];
  readonly problems: readonly Problem[];
} {
  const lying: LyingSheet[] = [];
  const folds: CornerFold[] = [];
  const problems: Problem[] = [];
  const cutting = new Set<string>();
  const ground = edgeGround(project, lines, wingEdge);
  for (const item of project.items) {
    if (item.kind !== "section") continue;
    const outline = lines.plan[item.id];
    const profile = lines.profiles[item.profileId];
    if (!outline?.closed || !profile) continue;
    const from = [item, outline, profile, lines.openings, ...SECTION_GROUND.map((field) => project[field])];
    const made = memory.recall(`section ${item.id} ${project.fineness ?? ""}`, from, () =>
      sectionSheets(project, item, outline, profile, lines.openings),
    );
    for (const openingId of made.openingIds) cutting.add(openingId);
    lying.push(...made.sheets);
    folds.push(...made.folds);
    problems.push(...made.problems);
  }
  const surfaces = new Map<string, RuledSurface>();
  const uncut: { readonly openingId: string; readonly item: Transition }[] = [];
  for (const item of transitionsInOrder(project)) {
    const edges = lines.transitions[item.id];
    if (!edges) continue;
    const on = { ...ground, surfaces };
    const from = [item, edges, lines.openings, ...groundOfTransition(project, lines, edges, on)];
    const made = memory.recall(`transition ${item.id}`, from, () =>
      transitionSheet(item, edges, on, lines.openings),
    );
    if (made.surface) surfaces.set(item.id, made.surface);
    for (const openingId of made.openingIds) cutting.add(openingId);
    for (const openingId of made.uncutIds) uncut.push({ openingId, item });
    lying.push(...made.sheets);
    problems.push(...made.problems);
  }
  for (const opening of project.openings) {
    if (!lines.openings[opening.id]) continue;
    const place = { openingId: opening.id };
    const name = nameOfOpening(opening);
    const over = uncut.filter(({ openingId }) => openingId === opening.id);
    for (const { item } of over) {
      const otherName = nameOfItem(item);
      problems.push({
        kind: "opening-not-on-pattern",
        place: { ...place, itemId: item.id },
        name,
        otherName,
      });
    }
    if (!cutting.has(opening.id) && over.length === 0)
      problems.push({ kind: "opening-cuts-nothing", place, name });
  }
  const sheets: Sheet[] = [...lying];
  for (const item of project.items) {
    if (item.kind !== "fence") continue;
    const line = lines.plan[item.id];
    if (!line || line.closed) continue;
    const lowerEdge = lines.lowerEdges[item.id];
    const fields = item.panel ? [...FENCE_GROUND, ...PANEL_SOURCE] : FENCE_GROUND;
    const from = [item, line, lowerEdge, ...fields.map((field) => project[field]), ...lying];
    const made = memory.recall(`fence ${item.id}`, from, () =>
      fenceSheet(project, item, line, lowerEdge, lying),
    );
    if (made.sheet) sheets.push(made.sheet);
    problems.push(...made.problems);
  }
  return { sheets, folds, problems };
}

/** Everything else that a transition follows from: what its edges lie on, and the settings. */
function groundOfTransition(
  project: Project,
  lines: ResolvedLines,
  { first, second }: TransitionEdges,
  { surfaces, wingEdge }: EdgeGround,
): readonly unknown[] {
  const below = [first, second].flatMap((edge): readonly unknown[] => {
    if (edge.kind === "free") return [];
    const item = project.items.find(({ id }) => id === edge.itemId);
    const profile = item?.kind === "section" ? lines.profiles[item.profileId] : undefined;
    const wing = edge.kind === "wing" ? wingEdge(edge.itemId, edge.wingId) : undefined;
    const places = wing?.flatMap(({ x, y, z }) => [x, y, z]) ?? [];
    return [item, lines.plan[edge.itemId], profile, surfaces.get(edge.itemId), ...places];
  });
  return [...below, ...TRANSITION_GROUND.map((field) => project[field])];
}

/** Transitions after those whose edges they use; references in a circle were left out before. */
function transitionsInOrder(project: Project): readonly Transition[] {
  const all = project.items.filter((item): item is Transition => item.kind === "transition");
  const done: Transition[] = [];
  const visit = (item: Transition): void => {
    if (done.includes(item)) return;
    for (const edge of [item.first, item.second]) {
      const other = edge.kind === "stretch" && all.find(({ id }) => id === edge.edge.itemId);
      if (other && other !== item && !isWaiting.has(other.id)) {
        isWaiting.add(item.id);
        visit(other);
      }
    }
    done.push(item);
  };
  const isWaiting = new Set<string>();
  for (const item of all) visit(item);
  return done;
}
