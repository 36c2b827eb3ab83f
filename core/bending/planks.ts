import { at } from "../foundation/index.ts";
import { type BentCurve, type Chord, chordBetween } from "./bent-curve.ts";

/** A narrow flat strip that stands for a stretch of a bend. */
export interface Plank {
  /** Where its edges stand on the bent middle of the foam, mm along it from the start of the stretch. */
  readonly fromMm: number;
  readonly toMm: number;
  /** Its flat width at mid-thickness. */
  readonly widthMm: number;
  readonly sagittaMm: number;
  /** Bevel of its two edges off square, rad: half of the fold to its neighbour there. */
  readonly bevelsRad: readonly [number, number];
}

/** The longest chord of a circle that stands off it by no more than s: 2 √(2 R s − s²). */
export const longestChordMm = (radiusMm: number, sagittaMm: number): number =>
  sagittaMm >= radiusMm ? 2 * radiusMm : 2 * Math.sqrt(2 * radiusMm * sagittaMm - sagittaMm * sagittaMm);

/** More planks than this in one stretch are a slip of the keyboard. */
const MOST_PLANKS = 400;

/**
 * Flat planks in place of a bend, told along the middle of the foam: as few as stand off it by no more than the
 * permitted sagitta, all by nearly the same, so that where the bend is tighter they are narrower. Their edges lie on the
 * curve.
 */
export function layPlanks(middle: BentCurve, sagittaMm: number): readonly Plank[] {
  const edgesOf = edgesFollowing(middle);
  let count = 1;
  let edges = edgesOf(count);
  let chords = chordsOf(middle, edges);
  for (let most = mostSagitta(chords); most > sagittaMm * (1 + 1e-9) && count < MOST_PLANKS; ) {
    count = Math.max(count + 1, Math.floor(count * Math.sqrt(most / sagittaMm)));
    edges = edgesOf(count);
    chords = chordsOf(middle, edges);
    most = mostSagitta(chords);
  }
  return chords.map((chord, i) => ({
    fromMm: at(edges, i),
    toMm: at(edges, i + 1),
    widthMm: chord.chordMm,
    sagittaMm: chord.sagittaMm,
    bevelsRad: [foldBefore(chords, i) / 2, foldBefore(chords, i + 1) / 2],
  }));
}

const chordsOf = (middle: BentCurve, edges: readonly number[]): readonly Chord[] =>
  edges.slice(1).map((to, i) => chordBetween(middle, at(edges, i), to));

const mostSagitta = (chords: readonly Chord[]): number => Math.max(...chords.map((chord) => chord.sagittaMm));

/** The fold at the edge before plank i: between two planks, or between the end of the stretch and its plank. */
const foldBefore = (chords: readonly Chord[], i: number): number =>
  (chords[i - 1]?.endRad ?? 0) + (chords[i]?.startRad ?? 0);

/** Steps of the table of √κ along the stretch. */
const STEPS = 512;

/**
 * Edges of a number of planks of even sagitta: a chord of length c stands off a curvature κ by κ c² / 8, so the edges lie
 * at even steps of ∫ √κ ds.
 */
function edgesFollowing({ lengthMm, turnAt }: BentCurve): (count: number) => readonly number[] {
  const step = lengthMm / STEPS;
  const grown = [0];
  for (let i = 0; i < STEPS; i++) {
    const turned = Math.max(0, turnAt((i + 1) * step) - turnAt(i * step));
    grown.push(at(grown, i) + Math.sqrt(turned * step));
  }
  return (count) => {
    const edges = [0];
    let i = 0;
    for (let edge = 1; edge < count; edge++) {
      const wanted = (at(grown, STEPS) * edge) / count;
      while (at(grown, i + 1) < wanted) i++;
      const [low, high] = [at(grown, i), at(grown, i + 1)];
      edges.push((i + (wanted - low) / (high - low)) * step);
    }
    return [...edges, lengthMm];
  };
}
