import { at, COINCIDENT_POINTS_MM, leftOf2, type Vec2 } from "../foundation/index.ts";
import { type ArrangedEdge, type Arrangement, arrangePieces } from "./arrange-pieces.ts";
import { enclosedAreaMm2, type WalkedPiece } from "./enclosed-area.ts";
import { type Box, boxesMeet, boxOfPiece, boxOfPoints } from "./piece-box.ts";
import { trimPiece } from "./piece-changes.ts";
import { pieceLengthMm } from "./piece-length.ts";
import { frameOnPiece, pointOnPiece } from "./pieces.ts";
import { type LoopSets, setsAround, sidesOfEdge } from "./sides-of-edges.ts";
import { type HalfEdge, walkFaces } from "./walk-faces.ts";

/** One connected area: its outline, counter-clockwise, and the holes in it, clockwise. */
export interface Island<Piece extends WalkedPiece> {
  readonly outline: readonly Piece[];
  readonly holes: readonly (readonly Piece[])[];
}

/**
 * What openings leave of a region, as islands in the order of the region's pieces. The region's loops (even-odd) may
 * be walked either way, and so may the openings, each of which takes away what it goes round; openings may overlap
 * each other, touch, share stretches with the region's edge, cut it in two or swallow it. Pieces that are cut keep
 * their labels and are trimmed exactly; where a piece of the region and of an opening lie on each other the
 * region's is kept. Islands and holes so thin that nobody can mark them are left out.
 */
export function subtractLoops<Piece extends WalkedPiece>(
  region: readonly (readonly Piece[])[],
  openings: readonly (readonly Piece[])[],
): readonly Island<Piece>[] {
  const kept = loopsLeft(region, nearOpenings(region, openings));
  const loops = kept.flatMap((loop) => {
    const areaMm2 = enclosedAreaMm2(loop);
    const lengthMm = loop.reduce((sum, { piece }) => sum + pieceLengthMm(piece), 0);
    return 2 * Math.abs(areaMm2) > THINNEST_MM * lengthMm ? [{ loop, areaMm2 }] : [];
  });
  const outlines = loops.filter(({ areaMm2 }) => areaMm2 > 0);
  const holes = new Map(outlines.map((outline) => [outline, [] as (readonly Piece[])[]]));
  for (const hole of loops) {
    if (hole.areaMm2 > 0) continue;
    const around = outlines.filter(
      ({ loop, areaMm2 }) => areaMm2 > -hole.areaMm2 && goesRound(loop, hole.loop),
    );
    const [nearest] = around.sort((a, b) => a.areaMm2 - b.areaMm2);
    if (nearest) holes.get(nearest)?.push(hole.loop);
  }
  return outlines.map((outline) => ({ outline: outline.loop, holes: holes.get(outline) ?? [] }));
}

/** A loop whose mean width is less is dust between two lines that were meant to be one, mm. */
const THINNEST_MM = COINCIDENT_POINTS_MM / 10;

/** Distances within which places are one, tried in turn until every vertex is left as often as it is reached, mm. */
const NEAR_MM = [1e-7, 1e-6, 1e-5, 1e-8, 1e-4, 1e-3];

function nearOpenings<Piece extends WalkedPiece>(
  region: readonly (readonly Piece[])[],
  openings: readonly (readonly Piece[])[],
): readonly (readonly Piece[])[] {
  const box = boxOfLoop(region.flat());
  return openings.filter((opening) => boxesMeet(boxOfLoop(opening), box, at(NEAR_MM, -1)));
}

function boxOfLoop(loop: readonly WalkedPiece[]): Box {
  const boxes = loop.map(({ piece }) => boxOfPiece(piece));
  return boxOfPoints(
    boxes.flatMap(({ lowX, highX, lowY, highY }): Vec2[] => [
      [lowX, lowY],
      [highX, highY],
    ]),
  );
}

/** An edge that borders what is left, walked with that on its left. */
interface Border<Piece> extends HalfEdge {
  readonly walked: Piece;
  readonly source: number;
  readonly from: number;
  readonly to: number;
}

function loopsLeft<Piece extends WalkedPiece>(
  region: readonly (readonly Piece[])[],
  openings: readonly (readonly Piece[])[],
): readonly (readonly Piece[])[] {
  const walked = [...region.flat(), ...openings.flat()];
  const sets: LoopSets = {
    pieces: walked.map(({ piece }) => piece),
    boxes: walked.map(({ piece }) => boxOfPiece(piece)),
    setOf: [...region.flat().map(() => 0), ...openings.flatMap((opening, i) => opening.map(() => i + 1))],
    setCount: openings.length + 1,
  };
  let best: { readonly loops: readonly (readonly Piece[])[]; readonly astray: number } | undefined;
  for (const nearMm of NEAR_MM) {
    const arrangement = arrangePieces(sets.pieces, sets.boxes, nearMm);
    const borders = bordersOf(sets, arrangement, walked);
    const loops = walkFaces(borders, arrangement.vertices).map(joinRuns);
    const astray = countAstray(borders);
    if (astray === 0) return loops;
    if (!best || astray < best.astray) best = { loops, astray };
  }
  return best?.loops ?? [];
}

/** How often vertices are left without being reached or reached without being left. */
function countAstray(borders: readonly HalfEdge[]): number {
  const surplus = new Map<number, number>();
  for (const { start, end } of borders) {
    surplus.set(start, (surplus.get(start) ?? 0) + 1);
    surplus.set(end, (surplus.get(end) ?? 0) - 1);
  }
  return [...surplus.values()].reduce((sum, count) => sum + Math.abs(count), 0);
}

function bordersOf<Piece extends WalkedPiece>(
  sets: LoopSets,
  { edges }: Arrangement,
  walked: readonly Piece[],
): readonly Border<Piece>[] {
  const isLeft = ([inRegion, ...inOpenings]: readonly boolean[]): boolean =>
    inRegion === true && !inOpenings.includes(true);
  const borders = new Map<ArrangedEdge, Border<Piece>>();
  for (const run of runsOf(edges)) {
    const judged = longestOf(sets, run);
    const { left, right } = sidesOfEdge(sets, judged.edge);
    const [onLeft, onRight] = [isLeft(left), isLeft(right)];
    if (onLeft === onRight) continue;
    for (const { edge, isAlong } of run) {
      borders.set(edge, borderOf(walked, edge, isAlong === judged.isAlong ? onLeft : onRight));
    }
  }
  return edges.flatMap((edge) => borders.get(edge) ?? []);
}

function borderOf<Piece extends WalkedPiece>(
  walked: readonly Piece[],
  { fragments: [{ source, from, to, start, end }] }: ArrangedEdge,
  isForward: boolean,
): Border<Piece> {
  const own = at(walked, source);
  const [first, last] = isForward ? [from, to] : [to, from];
  return {
    walked: own,
    source,
    from: first,
    to: last,
    start: isForward ? start : end,
    end: isForward ? end : start,
    pointAt: (share) => pointOnPiece(own.piece, first + (last - first) * share),
  };
}

/** An edge in a run, and whether the run goes along it the way of its first fragment. */
interface RunStep {
  readonly edge: ArrangedEdge;
  readonly isAlong: boolean;
}

/** Edges in a row between vertices where only two meet: one judgement holds for all of them. */
function runsOf(edges: readonly ArrangedEdge[]): readonly (readonly RunStep[])[] {
  const around = new Map<number, ArrangedEdge[]>();
  const note = (vertex: number, edge: ArrangedEdge) => {
    const known = around.get(vertex);
    if (known) known.push(edge);
    else around.set(vertex, [edge]);
  };
  for (const edge of edges) {
    note(edge.start, edge);
    note(edge.end, edge);
  }
  const taken = new Set<ArrangedEdge>();
  const follow = (from: ArrangedEdge, isAlong: boolean): RunStep[] => {
    const steps: RunStep[] = [];
    let step: RunStep = { edge: from, isAlong };
    for (;;) {
      const vertex = step.isAlong ? step.edge.end : step.edge.start;
      const ways: readonly ArrangedEdge[] = around.get(vertex) ?? [];
      const next = ways.find((edge) => edge !== step.edge);
      if (ways.length !== 2 || !next || taken.has(next)) return steps;
      taken.add(next);
      step = { edge: next, isAlong: next.start === vertex };
      steps.push(step);
    }
  };
  return edges.flatMap((edge) => {
    if (taken.has(edge)) return [];
    taken.add(edge);
    const ahead = follow(edge, true);
    const behind = follow(edge, false).map((step) => ({ ...step, isAlong: !step.isAlong }));
    return [[{ edge, isAlong: true }, ...ahead, ...behind]];
  });
}

/** The longest edge of a run by its chord over the middle, where a judgement is surest. */
function longestOf({ pieces }: LoopSets, run: readonly RunStep[]): RunStep {
  let best = at(run, 0);
  let longestMm = -1;
  for (const step of run) {
    const { source, from, to } = step.edge.fragments[0];
    const piece = at(pieces, source);
    const [a, b] = [pointOnPiece(piece, from), pointOnPiece(piece, (from + to) / 2)];
    const lengthMm = Math.hypot(b[0] - a[0], b[1] - a[1]);
    if (lengthMm > longestMm) [best, longestMm] = [step, lengthMm];
  }
  return best;
}

/** Stretches of one piece in a row become one again, and a loop is begun where a piece is. */
function joinRuns<Piece extends WalkedPiece>(loop: readonly Border<Piece>[]): readonly Piece[] {
  const goesOn = (a: Border<Piece>, b: Border<Piece>) => a.source === b.source && a.to === b.from && a !== b;
  const first = loop.findIndex((border, i) => !goesOn(at(loop, i - 1), border));
  const turned = [...loop.slice(Math.max(0, first)), ...loop.slice(0, Math.max(0, first))];
  const joined: Border<Piece>[] = [];
  for (const border of turned) {
    const last = joined.at(-1);
    if (last && goesOn(last, border)) joined[joined.length - 1] = { ...last, to: border.to };
    else joined.push(border);
  }
  return joined.map(({ walked, from, to }) => {
    const isWhole = Math.min(from, to) === 0 && Math.max(from, to) === 1;
    const piece = isWhole ? walked.piece : trimPiece(walked.piece, Math.min(from, to), Math.max(from, to));
    return { ...walked, piece, reversed: from > to };
  });
}

/** Whether a loop goes round another that does not cross it. */
function goesRound(loop: readonly WalkedPiece[], other: readonly WalkedPiece[]): boolean {
  const sets: LoopSets = {
    pieces: loop.map(({ piece }) => piece),
    boxes: loop.map(({ piece }) => boxOfPiece(piece)),
    setOf: loop.map(() => 0),
    setCount: 1,
  };
  const { at: point, tangent } = frameOnPiece(at(other, 0).piece, 0.5);
  return setsAround(sets, point, leftOf2(tangent), [])[0] === true;
}
