import type { SheetBends } from "../bending/index.ts";
import { at, distanceFlat } from "../foundation/index.ts";
import {
  edgeLengthsInSpace,
  type FenceSheet,
  type FibreStretch,
  fenceEdgeLengthInSpace,
  fibreOf,
  type LengthsInSpace,
  type RegionEdge,
  type SeatStation,
  type Sheet,
  seatBevelRad,
  transitionEdgeInSpace,
} from "../surfaces/index.ts";
import { flatLengthMm, type LaidEdge, type LaidLoop } from "./flat-loops.ts";
import { thinBevels } from "./thin-bevels.ts";
import type { BevelStation, PartEdge } from "./types.ts";

/** The three lengths of every edge; edges in several pieces with one id are added up. */
export function partEdges(
  sheet: Sheet,
  { stretches }: SheetBends,
  laid: readonly LaidLoop[],
  moved: readonly LaidLoop[],
): readonly PartEdge[] {
  const drawn = edgesById(sheet.loops);
  const before = edgesById(laid);
  return [...edgesById(moved)].map(([edgeId, after]): PartEdge => {
    const lengthOf = (edges: readonly LaidEdge[]) =>
      edges.reduce((sum, { points }) => sum + flatLengthMm(points), 0);
    const flatMm = lengthOf(after);
    const inSpace = lengthsOfEdge(sheet, stretches, drawn.get(edgeId) ?? []);
    const { name, role, letIn } = at(after, 0);
    const bevels = bevelsOf(sheet, stretches, edgeId, after);
    return {
      edgeId,
      name,
      role,
      drawnLengthMm: inSpace.drawnMm,
      spaceLengthMm: inSpace.atDepthMm + flatMm - lengthOf(before.get(edgeId) ?? []),
      flatLengthMm: flatMm,
      bevelRad: [bevels[0]?.bevelRad ?? 0, bevels.at(-1)?.bevelRad ?? 0],
      bevels,
      ...(letIn && { letIn }),
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
function bevelsOf(
  sheet: Sheet,
  stretches: readonly FibreStretch[],
  edgeId: string,
  edges: readonly LaidEdge[],
): readonly BevelStation[] {
  const all =
    sheet.kind === "fence" && edgeId === "upper"
      ? seatBevels(sheet, stretches, edges)
      : edges.flatMap(bevelsAlong(edges));
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

/** The seat of a fence by its length along the flat. */
export function seatOnFlat(sheet: Sheet, stretches: readonly FibreStretch[]): readonly SeatStation[] {
  if (sheet.kind !== "fence") return [];
  if (stretches.length === 0) return sheet.seat;
  const { flatAt } = fibreOf(sheet, stretches);
  return sheet.seat.map((station) => ({ ...station, alongMm: flatAt(station.alongMm) }));
}

/** The bevels of a fence's upper edge, from its rear end to its front, of what is left between its ends. */
function seatBevels(
  sheet: FenceSheet,
  stretches: readonly FibreStretch[],
  upper: readonly LaidEdge[],
): readonly BevelStation[] {
  const us = upper.flatMap(({ points }) => points.map(({ u }) => u));
  const [frontMm, rearMm] = [Math.min(...us), Math.max(...us)];
  const seat = seatOnFlat(sheet, stretches).toReversed();
  const bevelOf = (station: SeatStation) => seatBevelRad(station.bevelRad, sheet.thicknessMm);
  const bevelAt = (uMm: number): BevelStation => {
    const next = Math.max(
      1,
      seat.findIndex(({ alongMm }) => alongMm <= uMm),
    );
    const [a, b] = [at(seat, next - 1), at(seat, next)];
    const share = a.alongMm === b.alongMm ? 0 : (a.alongMm - uMm) / (a.alongMm - b.alongMm);
    return { alongMm: rearMm - uMm, bevelRad: bevelOf(a) + share * (bevelOf(b) - bevelOf(a)) };
  };
  const inside = seat.filter(({ alongMm }) => alongMm > frontMm + ENDS_MM && alongMm < rearMm - ENDS_MM);
  return [
    bevelAt(rearMm),
    ...inside.map((station) => ({ alongMm: rearMm - station.alongMm, bevelRad: bevelOf(station) })),
    bevelAt(frontMm),
  ];
}

/** A station nearer to an end than this is the end, mm. */
const ENDS_MM = 1e-6;

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
function lengthsOfEdge(
  sheet: Sheet,
  stretches: readonly FibreStretch[],
  edges: readonly RegionEdge[],
): LengthsInSpace {
  const each = edges.map((edge): LengthsInSpace => {
    if (sheet.kind === "transition") return transitionEdgeInSpace(sheet, edge);
    if (sheet.kind === "section") return edgeLengthsInSpace(sheet, edge, stretches);
    return fenceEdgeLengthInSpace(sheet, edge.points, stretches);
  });
  const sum = (key: keyof LengthsInSpace) => each.reduce((total, lengths) => total + lengths[key], 0);
  return { drawnMm: sum("drawnMm"), atDepthMm: sum("atDepthMm") };
}
