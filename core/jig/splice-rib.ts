import { at, type FlatPoint } from "../foundation/index.ts";
import type { Making } from "../project/index.ts";
import { type RibCut, type RibEdges, ribOutline } from "./rib-outline.ts";
import { heightOnTop } from "./simplify-top.ts";
import type { RibPiece, RibSplice } from "./types.ts";

/** A plate reaches so far on both sides of its splice, and ends so far below the top and above the foot, mm (common practice). */
export const PLATE_REACH_MM = 100;
const PLATE_INSET_MM = 12;
/** A dovetail's tail: its length, its neck as a share of the rib's height, and how it flares on each side (1 in 5). */
export const TAIL_MM = 45;
const NECK_SHARE = 0.3;
const FLARE = 1 / 5;
/** Around a tail so much is kept free, mm. */
const TAIL_CLEAR_MM = 15;

/** What a splice keeps free on both sides of its line. */
export const spliceReachMm = (way: Making["spliceBy"]): number =>
  way === "plate" ? PLATE_REACH_MM : TAIL_MM + TAIL_CLEAR_MM;

/** What of a rib is cut apart from each other, and what joins it again. */
export interface SplicedRib {
  readonly pieces: readonly RibPiece[];
  readonly splices: readonly RibSplice[];
}

export interface SpliceSettings {
  readonly id: string;
  readonly way: Making["spliceBy"];
  readonly clearanceMm: number;
  readonly holes: readonly (readonly FlatPoint[])[];
}

/**
 * A rib divided at some places along it: butted with a plate over the joint, on the face away from the station face, or
 * with a dovetail whose tail belongs to the left-hand piece; its socket is wider by the clearance. Pieces are lettered
 * from left to right in the rib's own direction; one piece keeps the rib's id.
 */
export function spliceRib(
  edges: RibEdges,
  cuts: readonly RibCut[],
  placesMm: readonly number[],
  settings: SpliceSettings,
): SplicedRib {
  const { id, way, holes } = settings;
  const ends = [at(edges.top, 0).u, ...placesMm, at(edges.top, -1).u];
  const splices = placesMm.map((atMm, i) => spliceAt(edges, atMm, `${id}-p${i + 1}`, settings));
  const pieces = ends.slice(1).map((toMm, i): RibPiece => {
    const fromMm = at(ends, i);
    const own: RibEdges = { top: between(edges.top, fromMm, toMm), foot: between(edges.foot, fromMm, toMm) };
    const plain = ribOutline(own, cuts);
    const [before, after] = [splices[i - 1]?.socketMm ?? [], splices[i]?.tailMm ?? []];
    const outlineMm =
      way === "plate" ? plain : withEnds(plain, { first: before, last: after }, [fromMm, toMm]);
    return {
      id: placesMm.length === 0 ? id : `${id}-${letter(i)}`,
      outlineMm,
      holesMm: holes.filter((hole) => {
        const { u } = at(hole, 0);
        return u > fromMm && u < toMm;
      }),
    };
  });
  return { pieces, splices };
}

const letter = (i: number): string => String.fromCharCode(97 + (i % 26));

function spliceAt(edges: RibEdges, atMm: number, plateId: string, settings: SpliceSettings): RibSplice {
  const low = heightOnTop(edges.foot, atMm);
  const high = heightOnTop(edges.top, atMm);
  if (settings.way === "dovetail") {
    const shape = { atMm, low, high };
    return {
      atMm,
      way: "dovetail",
      tailMm: tail(shape, 0),
      socketMm: tail(shape, settings.clearanceMm),
    };
  }
  const [fromMm, toMm] = [atMm - PLATE_REACH_MM, atMm + PLATE_REACH_MM];
  const topMm = Math.min(...between(edges.top, fromMm, toMm).map(({ v }) => v)) - PLATE_INSET_MM;
  const footMm = Math.max(...between(edges.foot, fromMm, toMm).map(({ v }) => v)) + PLATE_INSET_MM;
  const plateMm = [
    { u: fromMm, v: footMm },
    { u: toMm, v: footMm },
    { u: toMm, v: topMm },
    { u: fromMm, v: topMm },
  ];
  return { atMm, way: "plate", plate: { id: plateId, outlineMm: plateMm, holesMm: [] } };
}

/** A tail from its lower root to its upper one; larger all round by half a clearance, and longer by a whole one. */
function tail(
  { atMm, low, high }: { readonly atMm: number; readonly low: number; readonly high: number },
  clearanceMm: number,
): FlatPoint[] {
  const middle = (low + high) / 2;
  const neck = ((high - low) * NECK_SHARE) / 2 + clearanceMm / 2;
  const longMm = TAIL_MM + clearanceMm;
  const wide = neck + longMm * FLARE;
  return [
    { u: atMm, v: middle - neck },
    { u: atMm + longMm, v: middle - wide },
    { u: atMm + longMm, v: middle + wide },
    { u: atMm, v: middle + neck },
  ];
}

/** A long edge between two places along it. */
function between(edge: readonly FlatPoint[], fromMm: number, toMm: number): FlatPoint[] {
  const inside = edge.filter(({ u }) => u > fromMm && u < toMm);
  const end = (u: number): FlatPoint => {
    const own = edge.filter((point) => point.u === u);
    return own[0] ?? { u, v: heightOnTop(edge, u) };
  };
  return [end(fromMm), ...inside, end(toMm)];
}

/** The outline of a piece with the socket in its left end and the tail on its right end. */
function withEnds(
  outline: readonly FlatPoint[],
  { first, last }: { readonly first: readonly FlatPoint[]; readonly last: readonly FlatPoint[] },
  [fromMm, toMm]: readonly [number, number],
): FlatPoint[] {
  return outline.flatMap((point, i) => {
    const next = at(outline, (i + 1) % outline.length);
    if (point.u === toMm && next.u === toMm && next.v > point.v) return [point, ...last];
    if (point.u === fromMm && next.u === fromMm && next.v < point.v) return [point, ...[...first].reverse()];
    return [point];
  });
}
