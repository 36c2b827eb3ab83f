import { at } from "../foundation/index.ts";

/**
 * A curve as chords: chord i runs from point i to point i + 1. Neighbours share a point bit for bit, and the last
 * point of a closed curve repeats the first.
 */
export interface ChordLine {
  readonly xs: readonly number[];
  readonly ys: readonly number[];
  /** The piece of the curve that each chord belongs to. */
  readonly pieceIndices: readonly number[];
  /** Length of the chords before each point. */
  readonly alongMm: readonly number[];
}

/**
 * Calls `meet(i, j)`, i < j, for every two chords whose boxes come within `gapMm` of each other, until it answers
 * false. Successive chords lie near each other, so boxes around halves of the list, halved again, make a tree
 * that needs no grid; two branches whose boxes are apart are passed over whole.
 */
export function visitNearChords(
  line: ChordLine,
  gapMm: number,
  meet: (i: number, j: number) => boolean,
): void {
  const meetAll = (a: Branch, b: Branch): boolean => {
    for (let i = a.first; i < a.end; i++) {
      for (let j = Math.max(b.first, i + 1); j < b.end; j++) {
        if (!chordsApart(line, gapMm, i, j) && !meet(i, j)) return false;
      }
    }
    return true;
  };
  const within = (branch: Branch): boolean => {
    const { halves } = branch;
    if (!halves) return meetAll(branch, branch);
    return within(halves[0]) && within(halves[1]) && between(halves[0], halves[1]);
  };
  const between = (a: Branch, b: Branch): boolean => {
    if (boxesApart(a, b, gapMm)) return true;
    if (a.halves && (!b.halves || sizeOf(a) >= sizeOf(b))) {
      return between(a.halves[0], b) && between(a.halves[1], b);
    }
    if (b.halves) return between(a, b.halves[0]) && between(a, b.halves[1]);
    return meetAll(a, b);
  };
  within(growBranch(line, 0, line.xs.length - 1));
}

/** Chords first to end − 1, and the box around them. */
interface Branch {
  readonly first: number;
  readonly end: number;
  readonly lowX: number;
  readonly highX: number;
  readonly lowY: number;
  readonly highY: number;
  readonly halves: readonly [Branch, Branch] | undefined;
}

/** So few chords are looked at one by one. */
const LEAF_CHORDS = 8;

function growBranch(line: ChordLine, first: number, end: number): Branch {
  if (end - first <= LEAF_CHORDS) return leaf(line, first, end);
  const middle = (first + end) >> 1;
  const a = growBranch(line, first, middle);
  const b = growBranch(line, middle, end);
  return {
    first,
    end,
    lowX: Math.min(a.lowX, b.lowX),
    highX: Math.max(a.highX, b.highX),
    lowY: Math.min(a.lowY, b.lowY),
    highY: Math.max(a.highY, b.highY),
    halves: [a, b],
  };
}

function leaf(line: ChordLine, first: number, end: number): Branch {
  const xs = line.xs.slice(first, end + 1);
  const ys = line.ys.slice(first, end + 1);
  return {
    first,
    end,
    lowX: Math.min(...xs),
    highX: Math.max(...xs),
    lowY: Math.min(...ys),
    highY: Math.max(...ys),
    halves: undefined,
  };
}

const sizeOf = (branch: Branch): number => branch.highX - branch.lowX + branch.highY - branch.lowY;

const boxesApart = (a: Branch, b: Branch, gapMm: number): boolean =>
  a.lowX > b.highX + gapMm ||
  b.lowX > a.highX + gapMm ||
  a.lowY > b.highY + gapMm ||
  b.lowY > a.highY + gapMm;

const chordsApart = (line: ChordLine, gapMm: number, i: number, j: number): boolean =>
  rangesApart(line.xs, gapMm, i, j) || rangesApart(line.ys, gapMm, i, j);

function rangesApart(values: readonly number[], gapMm: number, i: number, j: number): boolean {
  const a0 = at(values, i);
  const a1 = at(values, i + 1);
  const b0 = at(values, j);
  const b1 = at(values, j + 1);
  return Math.min(a0, a1) > Math.max(b0, b1) + gapMm || Math.min(b0, b1) > Math.max(a0, a1) + gapMm;
}
