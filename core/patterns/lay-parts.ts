import type { BendVerdict } from "../bending/index.ts";
import { at, type Memory, NO_MEMORY, type Problem } from "../foundation/index.ts";
import type { SetBack } from "../joints/index.ts";
import type { Project } from "../project/index.ts";
import {
  areaInSpace,
  bordersOf,
  type FenceSheet,
  type FibreStretch,
  fenceAreaInSpace,
  partIdOf,
  type Sheet,
  transitionAreaInSpace,
} from "../surfaces/index.ts";
import { loopsAreaMm2 } from "./flat-loops.ts";
import { flatRulings } from "./flat-rulings.ts";
import { type FlatGround, type LaidSheet, layFlat, plainLoops } from "./lay-flat.ts";
import { type LetInEdges, letInOf } from "./let-in-of-sheet.ts";
import { mirrorEdge, mirrorLoop, mirrorRuling, mirrorSeat, mirrorWeb } from "./mirror-part.ts";
import { openingWebs } from "./opening-webs.ts";
import { bendProblems, choicesOf, choicesWithoutBend } from "./part-bends.ts";
import { partEdges, seatOnFlat } from "./part-edges.ts";
import type { FlatLoop, OpeningWeb, Part } from "./types.ts";

/**
 * Every part of the tray: each sheet laid flat at its neutral fibre, once for each hand. Edges at joints are set
 * back; their lengths in space change with the flat ones, since the set-back is measured along the sheet. The left
 * hand is the mirror image of the right. A bend tighter than the foam allows is a problem and the part still made.
 */
export function layParts(
  project: Project,
  sheets: readonly Sheet[],
  setBacks: readonly SetBack[],
  memory: Memory = NO_MEMORY,
): { readonly parts: readonly Part[]; readonly problems: readonly Problem[] } {
  const laid = sheets.map((sheet) => {
    const own = setBacks.filter(({ sheetId }) => sheetId === sheet.id);
    const { materials, openingSettings, bending } = project;
    const choices = choicesOf(project.items.find(({ id }) => id === sheet.itemId));
    const letIn = letInOf(project, sheet);
    const from = [sheet, materials, openingSettings, bending, choices, letInKey(letIn), ...own];
    const ground = { materials, openingSettings, bending, choices, letIn };
    return memory.recall(`parts of ${sheet.id}`, from, () => layPart(ground, sheet, own));
  });
  const parts = laid.flatMap((one) => one.parts);
  return {
    parts,
    problems: [...laid.flatMap(({ problems }) => problems), ...choicesWithoutBend(project, parts)],
  };
}

/** The same where the same is let in. */
const letInKey = (letIn: LetInEdges): string =>
  [...letIn].map(([edgeId, { of, widthMm }]) => `${edgeId} ${of} ${widthMm}`).join();

interface Laid {
  readonly parts: readonly Part[];
  readonly problems: readonly Problem[];
}

/** What of a project the parts of a sheet follow from, besides the sheet and its set-backs. */
interface PartGround extends FlatGround, Pick<Project, "openingSettings"> {}

/** The parts of one sheet, one for each hand. */
function layPart(project: PartGround, sheet: Sheet, own: readonly SetBack[]): Laid {
  const problems: Problem[] = [];
  const { failed, ...flat } = layFlat(project, sheet, own);
  for (const edgeId of failed) {
    problems.push({
      kind: "edge-cannot-be-set-back",
      place: { itemId: sheet.itemId },
      name: sheet.name,
      edgeName: edgeId,
    });
  }
  const part = partOf(sheet, flat);
  problems.push(...bendProblems(project, sheet, part), ...narrowWebs(project, part));
  const parts = sheet.hands.map((hand) =>
    hand === "left"
      ? leftHand(part, sheet)
      : { ...part, hand, id: partIdOf(sheet.id, hand), name: handName(sheet.name, hand) },
  );
  return { parts, problems };
}

const handName = (name: string, hand: Part["hand"]): string => (hand === "whole" ? name : `${name}, ${hand}`);

/** The openings that leave a part less foam than the setting asks for. */
function narrowWebs(project: PartGround, { id, itemId, webs }: Part): readonly Problem[] {
  const leastMm = project.openingSettings.webMm;
  const narrowest = new Map<string, OpeningWeb>();
  for (const web of webs ?? []) {
    const known = narrowest.get(web.openingId);
    if (!known || web.webMm < known.webMm) narrowest.set(web.openingId, web);
  }
  return [...narrowest.values()].flatMap(({ openingId, name, otherName, webMm }): Problem[] =>
    webMm < leastMm
      ? [
          {
            kind: "web-too-narrow",
            place: { openingId, itemId, partId: id },
            name,
            otherName,
            webMm,
            leastMm,
          },
        ]
      : [],
  );
}

/** The part of the right (or whole) hand, from its loops laid flat before and after they were set back. */
function partOf(sheet: Sheet, { bends, laid, moved, finished }: Omit<LaidSheet, "failed">): Part {
  const panel = sheet.kind === "fence" ? sheet.panel : undefined;
  const loops = panel ? plainLoops(moved).map(untrimmed) : plainLoops(moved);
  const flatAreaMm2 = loopsAreaMm2(loops);
  const [fromU, toU] = uSpan(loops);
  const zones = bends.zones
    .filter((zone) => zone.toUMm > fromU + 1e-6 && zone.fromUMm < toU - 1e-6)
    .map((zone) => ({ ...zone, fromUMm: Math.max(zone.fromUMm, fromU), toUMm: Math.min(zone.toUMm, toU) }));
  const radii = zones.flatMap(({ leastRadiusMm }) => leastRadiusMm ?? []);
  const verdicts = zones.map(({ verdict }) => verdict);
  const id = partIdOf(sheet.id, at(sheet.hands, 0));
  const edges = partEdges(sheet, bends, laid, moved);
  const webs = openingWebs(loops, edges);
  return {
    id,
    sheetId: sheet.id,
    itemId: sheet.itemId,
    name: sheet.name,
    kind: sheet.kind,
    hand: at(sheet.hands, 0),
    faceShown: sheet.kind === "fence" ? "inboard face" : "upper face",
    foamId: sheet.foamId,
    thicknessMm: sheet.thicknessMm,
    ...(panel && { panel }),
    loops,
    ...(finished && { finished: plainLoops(finished) }),
    edges,
    spaceAreaMm2: drawnAreaMm2(sheet, bends.stretches) + flatAreaMm2 - loopsAreaMm2(laid),
    flatAreaMm2,
    zones,
    ...(radii.length > 0 && { minRadiusMm: Math.min(...radii) }),
    maxStrain: Math.max(0, ...zones.map(({ strain }) => strain)),
    verdict: HARDEST_FIRST.find((verdict) => verdicts.includes(verdict)) ?? "flat",
    ...(bends.stretches.length > 0 && { stretches: bends.stretches }),
    seat: seatOnFlat(sheet, bends.stretches),
    ...(sheet.kind === "transition" && { twist: sheet.judgement }),
    rulings: sheet.kind === "transition" ? flatRulings(sheet, loops) : [],
    ...(webs.length > 0 && { webs }),
  };
}

/** A loop of a piece that is finished as it is cut. */
const untrimmed = ({ edges }: FlatLoop): FlatLoop => ({
  edges: edges.map((edge) => ({ ...edge, trim: "none" })),
});

const HARDEST_FIRST: readonly BendVerdict[] = ["not with this foam", "planks", "relief slots", "bend cold"];

function drawnAreaMm2(sheet: Sheet, stretches: readonly FibreStretch[]): number {
  switch (sheet.kind) {
    case "section":
      return areaInSpace(sheet, bordersOf(sheet), stretches);
    case "fence":
      return fenceArea(sheet, stretches);
    case "transition":
      return transitionAreaInSpace(sheet);
  }
}

function fenceArea(sheet: FenceSheet, stretches: readonly FibreStretch[]): number {
  const edge = (edgeId: string) =>
    sheet.loops.flatMap(({ edges }) => edges).find((one) => one.edgeId === edgeId);
  return fenceAreaInSpace(
    sheet,
    edge("lower")?.points ?? [],
    [...(edge("upper")?.points ?? [])].reverse(),
    stretches,
  );
}

function uSpan(loops: readonly FlatLoop[]): readonly [number, number] {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { edges } of loops) {
    for (const { points } of edges) {
      for (const { u } of points) {
        least = Math.min(least, u);
        most = Math.max(most, u);
      }
    }
  }
  return [least, most];
}

/** The mirror image of a right-hand part. */
function leftHand(part: Part, sheet: Sheet): Part {
  return {
    ...part,
    hand: "left",
    id: partIdOf(sheet.id, "left"),
    name: handName(sheet.name, "left"),
    loops: part.loops.map(mirrorLoop),
    ...(part.finished && { finished: part.finished.map(mirrorLoop) }),
    edges: part.edges.map(mirrorEdge),
    rulings: part.rulings.map(mirrorRuling),
    ...(part.webs && { webs: part.webs.map(mirrorWeb) }),
    seat: part.seat.map(mirrorSeat),
  };
}
