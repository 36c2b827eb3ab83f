import { bendZones } from "../bending/index.ts";
import { at, type Problem } from "../foundation/index.ts";
import type { SetBack } from "../joints/index.ts";
import { foamOf, type Project } from "../project/index.ts";
import {
  areaInSpace,
  edgeLengthsInSpace,
  type FenceSheet,
  fenceAreaInSpace,
  fenceEdgeLengthInSpace,
  type LengthsInSpace,
  partIdOf,
  type RegionEdge,
  type SeatStation,
  type SectionSheet,
  type Sheet,
  seatBevelRad,
} from "../surfaces/index.ts";
import {
  flatLengthMm,
  type LaidEdge,
  type LaidLoop,
  layLoopsFlat,
  loopAreaMm2,
  loopsAreaMm2,
} from "./flat-loops.ts";
import { mirrorLoop, mirrorSeat } from "./mirror-part.ts";
import { setBackEdges } from "./set-back-edges.ts";
import type { FlatLoop, Part, PartEdge } from "./types.ts";

/**
 * Every part of the tray: each sheet laid flat at its neutral fibre, once for each hand. Edges at joints are set
 * back; their lengths in space change with the flat ones, since the set-back is measured along the sheet. The left
 * hand is the mirror image of the right. A bend tighter than the foam allows is a problem and the part still made.
 */
export function layParts(
  project: Project,
  sheets: readonly Sheet[],
  setBacks: readonly SetBack[],
): { readonly parts: readonly Part[]; readonly problems: readonly Problem[] } {
  const parts: Part[] = [];
  const problems: Problem[] = [];
  for (const sheet of sheets) {
    const own = setBacks.filter(({ sheetId }) => sheetId === sheet.id);
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
      own,
    );
    if (part.verdict === "too tight" && part.minRadiusMm !== undefined) {
      const ratio = foamOf(project, sheet.foamId)?.leastBendRatio ?? 0;
      problems.push({
        kind: "bend-too-tight",
        place: { itemId: sheet.itemId, partId: part.id },
        name: sheet.name,
        radiusMm: part.minRadiusMm,
        leastRadiusMm: ratio * sheet.thicknessMm,
      });
    }
    for (const hand of sheet.hands)
      parts.push(
        hand === "left"
          ? leftHand(part, sheet)
          : { ...part, hand, id: partIdOf(sheet.id, hand), name: handName(sheet.name, hand) },
      );
  }
  return { parts, problems };
}

const handName = (name: string, hand: Part["hand"]): string => (hand === "whole" ? name : `${name}, ${hand}`);

/** The part of the right (or whole) hand. */
function partOf(
  project: Project,
  sheet: Sheet,
  laid: readonly LaidLoop[],
  moved: readonly LaidLoop[],
  setBacks: readonly SetBack[],
): Part {
  const loops = largestFirst(moved.map(plainLoop));
  const flatAreaMm2 = loopsAreaMm2(loops);
  const drawnArea = sheet.kind === "section" ? sectionArea(sheet) : fenceArea(sheet);
  const [fromU, toU] = uSpan(loops);
  const ratio = foamOf(project, sheet.foamId)?.leastBendRatio ?? 0;
  const zones = bendZones(sheet, ratio)
    .filter((zone) => zone.toUMm > fromU + 1e-6 && zone.fromUMm < toU - 1e-6)
    .map((zone) => ({ ...zone, fromUMm: Math.max(zone.fromUMm, fromU), toUMm: Math.min(zone.toUMm, toU) }));
  const radii = zones.flatMap(({ leastRadiusMm }) => leastRadiusMm ?? []);
  const verdicts = zones.map(({ verdict }) => verdict);
  const id = partIdOf(sheet.id, at(sheet.hands, 0));
  return {
    id,
    sheetId: sheet.id,
    itemId: sheet.itemId,
    name: sheet.name,
    kind: sheet.kind,
    hand: at(sheet.hands, 0),
    faceShown: sheet.kind === "section" ? "upper face" : "inboard face",
    foamId: sheet.foamId,
    thicknessMm: sheet.thicknessMm,
    loops,
    edges: partEdges(sheet, laid, moved, setBacks),
    spaceAreaMm2: drawnArea + flatAreaMm2 - loopsAreaMm2(laid),
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

const sectionArea = (sheet: SectionSheet): number =>
  areaInSpace(sheet.chart, sheet.planPieces, sheet.depths.neutralMm);

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
function partEdges(
  sheet: Sheet,
  laid: readonly LaidLoop[],
  moved: readonly LaidLoop[],
  setBacks: readonly SetBack[],
): readonly PartEdge[] {
  const drawn = edgesById(sheet.loops);
  const before = edgesById(laid);
  return [...edgesById(moved)].map(([edgeId, after]): PartEdge => {
    const lengthOf = (edges: readonly LaidEdge[]) =>
      edges.reduce((sum, { points }) => sum + flatLengthMm(points), 0);
    const flatMm = lengthOf(after);
    const inSpace = (drawn.get(edgeId) ?? []).map((edge) => lengthsInSpace(sheet, edge));
    const sum = (key: keyof LengthsInSpace) => inSpace.reduce((total, lengths) => total + lengths[key], 0);
    const { name, role } = at(after, 0);
    return {
      edgeId,
      name,
      role,
      drawnLengthMm: sum("drawnMm"),
      spaceLengthMm: sum("atDepthMm") + flatMm - lengthOf(before.get(edgeId) ?? []),
      flatLengthMm: flatMm,
      bevelRad: bevelOf(sheet, edgeId, setBacks),
    };
  });
}

/** The bevel at the start and end of an edge; a fence's upper edge runs from its rear end to its front. */
function bevelOf(sheet: Sheet, edgeId: string, setBacks: readonly SetBack[]): readonly [number, number] {
  if (sheet.kind === "fence" && edgeId === "upper") {
    const bevelAt = (station: SeatStation | undefined) =>
      seatBevelRad(station?.bevelRad ?? 0, sheet.thicknessMm);
    return [bevelAt(sheet.seat.at(-1)), bevelAt(sheet.seat[0])];
  }
  return setBacks.find((setBack) => setBack.edgeId === edgeId)?.bevelRad ?? [0, 0];
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

function lengthsInSpace(sheet: Sheet, edge: RegionEdge): LengthsInSpace {
  if (sheet.kind === "section") return edgeLengthsInSpace(sheet.chart, edge, sheet.depths.neutralMm);
  const lengthMm = fenceEdgeLengthInSpace(sheet, edge.points);
  return { drawnMm: lengthMm, atDepthMm: lengthMm };
}

/** The mirror image of a right-hand part. */
function leftHand(part: Part, sheet: Sheet): Part {
  return {
    ...part,
    hand: "left",
    id: partIdOf(sheet.id, "left"),
    name: handName(sheet.name, "left"),
    loops: part.loops.map(mirrorLoop),
    edges: part.edges.map((edge) => ({ ...edge, bevelRad: [edge.bevelRad[1], edge.bevelRad[0]] })),
    seat: part.seat.map(mirrorSeat),
  };
}
