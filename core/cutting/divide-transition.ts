import { at, type FlatPoint } from "../foundation/index.ts";
import type { FlatEdge, FlatLoop, FlatRuling, Part } from "../patterns/index.ts";
import { polygonOfLoop } from "../patterns/index.ts";
import { divideLoops } from "./divide-loops.ts";
import { type Island, isInside } from "./group-islands.ts";
import { boundsOfLoops, lengthOfEdgeMm } from "./loop-measures.ts";

/** More pieces than this of one strip mean that the stock was typed wrongly. */
const MOST_PIECES = 24;
/** A cut may leave its even place by this share of a piece to keep out of a bend. */
const LEEWAY = 0.2;

/**
 * A strip of a transition divided along rulings into the fewest pieces that fit: cuts near even places, where the
 * sheet bends least. Undefined where no number of pieces fits. New edges are called `cut-<n>` from the front.
 */
export function divideAlongRulings(
  island: Island,
  part: Part,
  fits: (piece: Island) => boolean,
): readonly Island[] | undefined {
  const outline = polygonOfLoop(at(island, 0));
  const rulings = part.rulings
    .filter((ruling) => isInside(middleOf(ruling), outline))
    .sort((a, b) => middleOf(a).u - middleOf(b).u);
  const { leastUMm, mostUMm } = boundsOfLoops(island);
  for (let count = 2; count <= Math.min(MOST_PIECES, rulings.length + 1); count++) {
    const stepMm = (mostUMm - leastUMm) / count;
    const cuts = Array.from({ length: count - 1 }, (_, k) =>
      quietRuling(rulings, leastUMm + (k + 1) * stepMm, LEEWAY * stepMm, part),
    );
    const pieces = cuts.reduce<readonly Island[]>(
      (rest, cut, k) => (cut ? rest.flatMap((piece) => cutAt(piece, cut, `cut-${k + 1}`)) : rest),
      [island],
    );
    if (pieces.every(fits)) return pieces;
  }
  return undefined;
}

const middleOf = ({ from, to }: FlatRuling): FlatPoint => ({
  u: (from.u + to.u) / 2,
  v: (from.v + to.v) / 2,
});

/** The ruling near a place where the sheet bends least; the nearest of those that bend alike. */
function quietRuling(
  rulings: readonly FlatRuling[],
  atMm: number,
  leewayMm: number,
  { zones }: Part,
): FlatRuling | undefined {
  const off = (ruling: FlatRuling) => Math.abs(middleOf(ruling).u - atMm);
  const strainAt = (ruling: FlatRuling) => {
    const { u } = middleOf(ruling);
    return zones.find(({ fromUMm, toUMm }) => u >= fromUMm && u <= toUMm)?.strain ?? 0;
  };
  const near = rulings.filter((ruling) => off(ruling) <= leewayMm);
  const choice = near.length > 0 ? near : rulings;
  return [...choice].sort((a, b) => strainAt(a) - strainAt(b) || off(a) - off(b))[0];
}

/** Loops cut along a straight line: turned so that it runs along v, cut there, and turned back. */
function cutAt(island: Island, { from, to }: FlatRuling, edgeId: string): readonly Island[] {
  const angle = Math.PI / 2 - Math.atan2(to.v - from.v, to.u - from.u);
  const turn = (by: number) => turnLoops(island, by);
  const line = turnPoint(from, angle);
  const { below, above } = divideLoops(turn(angle), "u", line.u, edgeId);
  return [...below, ...above].map((piece) => turnLoops(piece, -angle));
}

const turnPoint = ({ u, v }: FlatPoint, by: number): FlatPoint => ({
  u: u * Math.cos(by) - v * Math.sin(by),
  v: u * Math.sin(by) + v * Math.cos(by),
});

const turnLoops = (loops: Island, by: number): Island =>
  loops.map(
    (loop): FlatLoop => ({
      edges: loop.edges.map((edge) => ({
        ...edge,
        points: edge.points.map((point) => turnPoint(point, by)),
      })),
    }),
  );

/** A piece with its name. */
interface Named {
  readonly id: string;
  readonly loops: Island;
}

/** Where two pieces of one part touch along a cut or a dividing line. */
export interface Contact {
  readonly pieceIds: readonly [string, string];
  readonly runs: "along ruling" | "across rulings";
  readonly atMm: number;
  readonly lengthMm: number;
  /** The edges on both sides, as they are now called. */
  readonly edges: readonly [FlatEdge, FlatEdge];
}

/** Shorter contact than this is a corner touching a corner, mm. */
const LEAST_CONTACT_MM = 0.5;

/**
 * Where the pieces of a transition touch: along the rulings that they were cut at, where both sides lie on one line,
 * and along its dividing lines, whose two sides are as long as each other though they lie apart in the flat.
 */
export function contactsBetween(pieces: readonly Named[]): readonly Contact[] {
  const sides = pieces.flatMap(({ id, loops }) =>
    loops.flatMap(({ edges }) =>
      edges.filter(({ role }) => role === "seam").map((edge) => ({ pieceId: id, edge, ...spanOf(edge) })),
    ),
  );
  const contacts: Contact[] = [];
  sides.forEach((a, i) => {
    for (const b of sides.slice(i + 1)) {
      if (a.edge.edgeId !== b.edge.edgeId || a.pieceId === b.pieceId) continue;
      const isCut = a.edge.edgeId.startsWith("cut-");
      if (isCut && !isSamePlace(a.middle, b.middle)) continue;
      const overlapMm = isCut ? lengthOfEdgeMm(a.edge) : Math.min(a.toU, b.toU) - Math.max(a.fromU, b.fromU);
      if (overlapMm < LEAST_CONTACT_MM || (!isCut && Math.abs(a.middle.v - b.middle.v) < 1e-9)) continue;
      contacts.push({
        pieceIds: [a.pieceId, b.pieceId],
        runs: isCut ? "along ruling" : "across rulings",
        atMm: isCut ? a.middle.u : (a.middle.v + b.middle.v) / 2,
        lengthMm: isCut ? overlapMm : Math.min(lengthOfEdgeMm(a.edge), lengthOfEdgeMm(b.edge)),
        edges: [a.edge, b.edge],
      });
    }
  });
  return contacts;
}

const isSamePlace = (a: FlatPoint, b: FlatPoint): boolean => Math.hypot(a.u - b.u, a.v - b.v) < 1e-6;

function spanOf({ points }: FlatEdge) {
  const [first, last] = [at(points, 0), at(points, -1)];
  const us = points.map(({ u }) => u);
  return {
    middle: { u: (first.u + last.u) / 2, v: (first.v + last.v) / 2 },
    fromU: Math.min(...us),
    toU: Math.max(...us),
  };
}
