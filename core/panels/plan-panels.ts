import { lengthOfEdgeMm, type Strip } from "../cutting/index.ts";
import { type Memory, NO_MEMORY, type Problem } from "../foundation/index.ts";
import { allRibs, type Jig } from "../jig/index.ts";
import type { Joint } from "../joints/index.ts";
import type { Part } from "../patterns/index.ts";
import { foamOf, laminateOf, type Project } from "../project/index.ts";
import { dissolvedFoams, potCards, type SkinPlan, sessionMinutes } from "../skins/index.ts";
import { PANEL_EDGE_MM } from "../surfaces/index.ts";
import { bondFences, bondSteps } from "./bond-fences.ts";
import { groupFences, type PanelGroup } from "./group-fences.ts";
import { type LaidPanel, layPanels } from "./lay-panels.ts";
import { largestFaceMm2, panelLaminate } from "./panel-laminate.ts";
import { panelSteps } from "./panel-steps.ts";
import { panelTasks } from "./panel-tasks.ts";
import { NO_PANELS, type Panel, type PanelPlan } from "./types.ts";

/** What panels are planned from. */
export interface PanelSources {
  readonly parts: readonly Part[];
  readonly strips: readonly Strip[];
  readonly joints: readonly Joint[];
  readonly jig: Jig;
  readonly skins: Pick<SkinPlan, "fillets">;
}

/** What of the document panels follow from, besides the pieces. */
const PANEL_FIELDS = ["laminate", "materials", "skins", "stock", "cutting", "laying"] as const;

/**
 * The panels that fences are cut from, what is cut from each, how they are laid, and how the fences are bonded on. Problems:
 * panel-outlasts-film, panel-off-thickness. A fence that no panel can give is not among the parts (see `fenceSheet`).
 */
export function planPanels(
  sources: PanelSources,
  project: Project,
  memory: Memory = NO_MEMORY,
): { readonly plan: PanelPlan; readonly problems: readonly Problem[] } {
  const parts = sources.parts.filter(({ panel }) => panel !== undefined);
  if (parts.length === 0) return { plan: NO_PANELS, problems: [] };
  const own = new Set(parts.map(({ id }) => id));
  const strips = sources.strips.filter(({ partId }) => own.has(partId));
  const joints = sources.joints.filter(({ partIds }) => own.has(partIds[0]));
  const { fillets } = sources.skins;
  const from = [...parts, ...strips, ...joints, ...fillets, ...PANEL_FIELDS.map((field) => project[field])];
  const plan = memory.recall("panels", from, () => panelsOf({ parts, strips, joints, fillets }, project));
  return {
    plan,
    problems: [
      ...plan.panels.flatMap((panel) => outlasted(panel, project)),
      ...offThickness(parts, sources.jig),
      ...withoutPanel(strips, parts, plan),
    ],
  };
}

interface OwnSources extends Omit<PanelSources, "jig" | "skins"> {
  readonly fillets: SkinPlan["fillets"];
}

function panelsOf({ parts, strips, joints, fillets }: OwnSources, project: Project): PanelPlan {
  const laminate = laminateOf(project);
  const laid = groupFences(parts, strips).flatMap((group) =>
    layPanels(group, largestFaceMm2(group.make, project), project).map((panel) => ({ group, panel })),
  );
  const panels = laid.map(({ group, panel }, i) => panelOf(group, panel, `panel ${letter(i)}`, project));
  const bonds = bondFences({ parts, joints, fillets }, project);
  const curedHours = panels[0]?.curedHours ?? 0;
  return {
    panels,
    bonds,
    bondCards:
      sessionMinutes(laminate) > 0
        ? potCards(
            bonds.reduce((sum, { mixedKg }) => sum + mixedKg, 0),
            laminate,
          )
        : [],
    bondSteps: bondSteps(bonds, curedHours),
    tasks: panelTasks(panels, bonds, laminate.hands),
  };
}

/** A, B … Z, AA … */
const letter = (index: number): string =>
  index < LETTERS.length
    ? LETTERS.charAt(index)
    : letter(Math.floor(index / LETTERS.length) - 1) + LETTERS.charAt(index % LETTERS.length);
const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

function panelOf(group: PanelGroup, laid: LaidPanel, id: string, project: Project): Panel {
  const { foamId, make } = group;
  const foam = foamOf(project, foamId);
  const pieces = group.pieces.filter(({ strip }) => laid.pieces.some(({ stripId }) => stripId === strip.id));
  const isSound =
    dissolvedFoams(
      pieces.map(({ part }) => part),
      project,
    ).length === 0;
  const edges = pieces.flatMap(({ strip }) => strip.loops.flatMap((loop) => loop.edges));
  const lengthOf = (of: typeof edges) => of.reduce((sum, edge) => sum + lengthOfEdgeMm(edge), 0);
  const panel = {
    id,
    foamId,
    foamName: foam?.name ?? foamId,
    foamMm: make.foamMm,
    ...laid,
    edgeMm: PANEL_EDGE_MM,
    ...panelLaminate(laid, make, project, isSound),
    thicknessMm: make.reckonedMm,
    pieceMm2: pieces.reduce((sum, { strip }) => sum + strip.areaMm2, 0),
    sawMm: lengthOf(edges) + 2 * (laid.lengthMm + laid.widthMm),
    sealMm: lengthOf(edges.filter(({ role }) => role === "free")),
    foamKg: laid.lengthMm * laid.widthMm * make.foamMm * 1e-9 * (foam?.densityKgPerM3 ?? 0),
  };
  return { ...panel, steps: panelSteps(panel) };
}

function outlasted({ id, faces, pieces }: Panel, project: Project): readonly Problem[] {
  const mostMinutes = sessionMinutes(laminateOf(project));
  const [{ workMinutes: minutes }] = faces;
  if (mostMinutes <= 0 || minutes <= mostMinutes) return [];
  const place = { partId: pieces[0]?.partId ?? "" };
  return [{ kind: "panel-outlasts-film", place, name: id, minutes, mostMinutes }];
}

/** Strips that found no place on any panel. */
const withoutPanel = (
  strips: readonly Strip[],
  parts: readonly Part[],
  { panels }: PanelPlan,
): readonly Problem[] => {
  const placed = new Set(panels.flatMap(({ pieces }) => pieces.map(({ stripId }) => stripId)));
  return strips
    .filter(({ id }) => !placed.has(id))
    .map(({ id: name, partId }) => {
      const itemId = parts.find(({ id }) => id === partId)?.itemId ?? "";
      return { kind: "piece-without-stock", place: { itemId, partId }, name, stockName: "a panel" };
    });
};

/** A notch is 3 mm wider than its fence; a panel goes in while a third of that is left. */
const STILL_FITS_MM = 2;

/** Panels that were measured thicker than ribs were notched for, with the ribs that have a notch for them. */
const offThickness = (parts: readonly Part[], jig: Jig): readonly Problem[] =>
  parts.flatMap(({ id, itemId, name, panel }): readonly Problem[] => {
    if (panel === undefined || panel.thicknessMm - panel.reckonedMm <= STILL_FITS_MM) return [];
    const ribIds = allRibs(jig)
      .filter(({ notches }) => notches.some(({ fencePartId }) => fencePartId === id))
      .map((rib) => rib.id);
    if (ribIds.length === 0) return [];
    const { thicknessMm: measuredMm, reckonedMm } = panel;
    return [
      { kind: "panel-off-thickness", place: { itemId, partId: id }, name, measuredMm, reckonedMm, ribIds },
    ];
  });
