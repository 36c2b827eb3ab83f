import { bendZones } from "../bending/index.ts";
import { at, distanceFlat, type Memory, NO_MEMORY, type Problem } from "../foundation/index.ts";
import type { SetBack } from "../joints/index.ts";
import { foamOf, leastBendRatioOf, type Project } from "../project/index.ts";
import {
  areaInSpace,
  bordersOf,
  edgeLengthsInSpace,
  type FenceSheet,
  fenceAreaInSpace,
  fenceEdgeLengthInSpace,
  type LengthsInSpace,
  partIdOf,
  type RegionEdge,
  type Sheet,
  seatBevelRad,
  transitionAreaInSpace,
  transitionEdgeInSpace,
} from "../surfaces/index.ts";
import {
  flatLengthMm,
  type LaidEdge,
  type LaidLoop,
  layLoopsFlat,
  loopAreaMm2,
  loopsAreaMm2,
} from "./flat-loops.ts";
import { flatRulings } from "./flat-rulings.ts";
import { mirrorEdge, mirrorLoop, mirrorRuling, mirrorSeat, mirrorWeb } from "./mirror-part.ts";
import { openingWebs } from "./opening-webs.ts";
import { setBackEdges } from "./set-back-edges.ts";
import { thinBevels } from "./thin-bevels.ts";
import type { BevelStation, FlatLoop, OpeningWeb, Part, PartEdge } from "./types.ts";

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
    const from = [sheet, project.materials, project.openingSettings, ...own];
    return memory.recall(`parts of ${sheet.id}`, from, () => layPart(project, sheet, own));
  });
  return {
    parts: laid.flatMap(({ parts }) => parts),
    problems: laid.flatMap(({ problems }) => problems),
  };
}

interface Laid {
  readonly parts: readonly Part[];
  readonly problems: readonly Problem[];
}

/** What of a project the parts of a sheet follow from, besides the sheet and its set-backs. */
type PartGround = Pick<Project, "materials" | "openingSettings">;

/** The parts of one sheet, one for each hand. */
function layPart(project: PartGround, sheet: Sheet, own: readonly SetBack[]): Laid {
  const problems: Problem[] = [];
  const laid = layLoopsFlat(sheet, own);
  const moved = laid.map(setBackEdges);
  for (const edgeId of moved.flatMap(({ failed }) => failed)) {
    problems.push({
      kind: "edge-cannot-be-set-back",
      place: { itemId: sheet.itemId },
      name: sheet.name,
      edgeName: edgeId,
    });
  }
  const part = partOf(
    project,
    sheet,
    laid,
    moved.map(({ loop }) => loop),
  );
  if (part.verdict === "too tight" && part.minRadiusMm !== undefined) {
    const foam = foamOf(project, sheet.foamId);
    const ratio = foam ? leastBendRatioOf(foam) : 0;
    problems.push({
      kind: "bend-too-tight",
      place: { itemId: sheet.itemId, partId: part.id },
      name: sheet.name,
      radiusMm: part.minRadiusMm,
      leastRadiusMm: ratio * sheet.thicknessMm,
    });
  }
  problems.push(...narrowWebs(project, part));
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

/** The part of the right (or whole) hand. */
function partOf(
  project: PartGround,
  sheet: Sheet,
  laid: readonly LaidLoop[],
  moved: readonly LaidLoop[],
): Part {
  const loops = largestFirst(moved.map(plainLoop));
  const flatAreaMm2 = loopsAreaMm2(loops);
  const [fromU, toU] = uSpan(loops);
  const foam = foamOf(project, sheet.foamId);
  const ratio = foam ? leastBendRatioOf(foam) : 0;
  const zones = bendZones(sheet, ratio)
    .filter((zone) => zone.toUMm > fromU + 1e-6 && zone.fromUMm < toU - 1e-6)
    .map((zone) => ({ ...zone, fromUMm: Math.max(zone.fromUMm, fromU), toUMm: Math.min(zone.toUMm, toU) }));
  const radii = zones.flatMap(({ leastRadiusMm }) => leastRadiusMm ?? []);
  const verdicts = zones.map(({ verdict }) => verdict);
  const id = partIdOf(sheet.id, at(sheet.hands, 0));
  const edges = partEdges(sheet, laid, moved);
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
    loops,
    edges,
    spaceAreaMm2: drawnAreaMm2(sheet) + flatAreaMm2 - loopsAreaMm2(laid),
    flatAreaMm2,
    zones,
    ...(radii.length > 0 && { minRadiusMm: Math.min(...radii) }),
    maxStrain: Math.max(0, ...zones.map(({ strain }) => strain)),
    verdict: verdicts.includes("too tight")
      ? "too tight"
      : verdicts.includes("bend cold")
        ? "bend cold"
        : "flat",
    seat: sheet.kind === "fence" ? sheet.seat : [],
    ...(sheet.kind === "transition" && { twist: sheet.judgement }),
    rulings: sheet.kind === "transition" ? flatRulings(sheet, loops) : [],
    ...(webs.length > 0 && { webs }),
  };
}

const plainLoop = ({ edges }: LaidLoop): FlatLoop => ({
  edges: edges.map(({ edgeId, name, role, points }) => ({ edgeId, name, role, points })),
});

const largestFirst = (loops: readonly FlatLoop[]): readonly FlatLoop[] =>
  loops
    .map((loop) => ({ loop, area: loopAreaMm2(loop) }))
    .sort((a, b) => b.area - a.area)
    .map(({ loop }) => loop);

function drawnAreaMm2(sheet: Sheet): number {
  switch (sheet.kind) {
    case "section":
      return areaInSpace(sheet.chart, bordersOf(sheet), sheet.depths.neutralMm);
    case "fence":
      return fenceArea(sheet);
    case "transition":
      return transitionAreaInSpace(sheet);
  }
}

function fenceArea(sheet: FenceSheet): number {
  const edge = (edgeId: string) =>
    sheet.loops.flatMap(({ edges }) => edges).find((one) => one.edgeId === edgeId);
  return fenceAreaInSpace(sheet, edge("lower")?.points ?? [], [...(edge("upper")?.points ?? [])].reverse());
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

/** The three lengths of every edge; edges in several pieces with one id are added up. */
function partEdges(sheet: Sheet, laid: readonly LaidLoop[], moved: readonly LaidLoop[]): readonly PartEdge[] {
  const drawn = edgesById(sheet.loops);
  const before = edgesById(laid);
  return [...edgesById(moved)].map(([edgeId, after]): PartEdge => {
    const lengthOf = (edges: readonly LaidEdge[]) =>
      edges.reduce((sum, { points }) => sum + flatLengthMm(points), 0);
    const flatMm = lengthOf(after);
    const inSpace = lengthsOfEdge(sheet, drawn.get(edgeId) ?? []);
    const { name, role } = at(after, 0);
    const bevels = bevelsOf(sheet, edgeId, after);
    return {
      edgeId,
      name,
      role,
      drawnLengthMm: inSpace.drawnMm,
      spaceLengthMm: inSpace.atDepthMm + flatMm - lengthOf(before.get(edgeId) ?? []),
      flatLengthMm: flatMm,
      bevelRad: [bevels[0]?.bevelRad ?? 0, bevels.at(-1)?.bevelRad ?? 0],
      bevels,
      ...openingOf(drawn.get(edgeId)?.[0]),
    };
  });
}

function openingOf(edge: RegionEdge | undefined): Pick<PartEdge, "opening"> {
  if (edge?.openingId === undefined) return {};
  return { opening: { id: edge.openingId, cut: edge.trace?.kind === "plumb" ? "upright" : "square" } };
}

/**
 * The bevel along an edge, by flat length from its start; a fence's upper edge runs from its rear end to its front.
 * Empty where it is square all along.
 */
function bevelsOf(sheet: Sheet, edgeId: string, edges: readonly LaidEdge[]): readonly BevelStation[] {
  const all =
    sheet.kind === "fence" && edgeId === "upper" ? seatBevels(sheet) : edges.flatMap(bevelsAlong(edges));
  return all.every(({ bevelRad }) => bevelRad === 0) ? [] : thinBevels(all);
}

/** Bevels of one of several pieces of an edge, counted on from the pieces before it. */
const bevelsAlong =
  (edges: readonly LaidEdge[]) =>
  ({ points, bevelsRad }: LaidEdge, index: number): readonly BevelStation[] => {
    let alongMm = edges.slice(0, index).reduce((sum, edge) => sum + flatLengthMm(edge.points), 0);
    return points.map((point, i) => {
      if (i > 0) alongMm += distanceFlat(at(points, i - 1), point);
      return { alongMm, bevelRad: at(bevelsRad, i) };
    });
  };

function seatBevels(sheet: FenceSheet): readonly BevelStation[] {
  const lengthMm = sheet.seat.at(-1)?.alongMm ?? 0;
  return sheet.seat.toReversed().map((station) => ({
    alongMm: lengthMm - station.alongMm,
    bevelRad: seatBevelRad(station.bevelRad, sheet.thicknessMm),
  }));
}

/** The edges of loops by their ids, in the order in which these first come. */
function edgesById<Edge extends { readonly edgeId: string }>(
  loops: readonly { readonly edges: readonly Edge[] }[],
): ReadonlyMap<string, readonly Edge[]> {
  const byId = new Map<string, Edge[]>();
  for (const edge of loops.flatMap(({ edges }) => edges)) {
    const known = byId.get(edge.edgeId);
    if (known) known.push(edge);
    else byId.set(edge.edgeId, [edge]);
  }
  return byId;
}

/** Drawn and neutral length in space of all region edges of one drawn edge. */
function lengthsOfEdge(sheet: Sheet, edges: readonly RegionEdge[]): LengthsInSpace {
  const each = edges.map((edge): LengthsInSpace => {
    if (sheet.kind === "transition") return transitionEdgeInSpace(sheet, edge);
    if (sheet.kind === "section") return edgeLengthsInSpace(sheet.chart, edge, sheet.depths.neutralMm);
    const lengthMm = fenceEdgeLengthInSpace(sheet, edge.points);
    return { drawnMm: lengthMm, atDepthMm: lengthMm };
  });
  const sum = (key: keyof LengthsInSpace) => each.reduce((total, lengths) => total + lengths[key], 0);
  return { drawnMm: sum("drawnMm"), atDepthMm: sum("atDepthMm") };
}

/** The mirror image of a right-hand part. */
function leftHand(part: Part, sheet: Sheet): Part {
  return {
    ...part,
    hand: "left",
    id: partIdOf(sheet.id, "left"),
    name: handName(sheet.name, "left"),
    loops: part.loops.map(mirrorLoop),
    edges: part.edges.map(mirrorEdge),
    rulings: part.rulings.map(mirrorRuling),
    ...(part.webs && { webs: part.webs.map(mirrorWeb) }),
    seat: part.seat.map(mirrorSeat),
  };
}
