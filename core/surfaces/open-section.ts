import { type Curve, enclosedAreaMm2, subtractLoops } from "../curves/index.ts";
import type { Project, Section } from "../project/index.ts";
import type { DrawnPiece } from "./drawn-loops.ts";
import { openingLoops } from "./opening-loops.ts";

type Loops = readonly (readonly DrawnPiece[])[];

/** A section with its openings cut out, in plan on the air side. */
export interface OpenedSection {
  /** What is left: outlines counter-clockwise, each followed by its holes. */
  readonly loops: Loops;
  /** The section with its square openings alone. */
  readonly squareLoops: Loops;
  /** Upright openings. */
  readonly uprightLoops: Loops;
  /** The openings that take something away. */
  readonly openingIds: readonly string[];
}

/** Cuts a section's openings out of its loops; undefined where none takes anything away. */
export function openSection(
  project: Pick<Project, "openings">,
  section: Section,
  loops: Loops,
  { curves, isJoined }: { readonly curves: Readonly<Record<string, Curve>>; readonly isJoined: boolean },
): OpenedSection | undefined {
  const candidates = openingLoops(project, section, curves, isJoined);
  if (candidates.length === 0) return undefined;
  const loopsOf = (cut: "square" | "upright"): Loops =>
    candidates.flatMap((one) => (one.opening.cut === cut ? one.loops : []));
  const squareLoops = subtracted(loops, loopsOf("square"));
  const uprightLoops = loopsOf("upright");
  const left = subtracted(squareLoops, uprightLoops);
  if (areaOf(loops) - areaOf(left) <= LEAST_CUT_MM2) return undefined;
  // An opening has edges in what is left, or it lies within another and is asked alone.
  const seen = new Set(left.flat().map(({ openingId }) => openingId));
  const cutting = candidates.filter(
    ({ opening, loops: own }) =>
      seen.has(opening.id) || areaOf(loops) - areaOf(subtracted(loops, own)) > LEAST_CUT_MM2,
  );
  return { loops: left, squareLoops, uprightLoops, openingIds: cutting.map(({ opening }) => opening.id) };
}

/** What takes away less is a line along an edge that was meant to lie on it. */
const LEAST_CUT_MM2 = 1;

const subtracted = (region: Loops, openings: Loops): Loops =>
  openings.length === 0
    ? region
    : subtractLoops(region, openings).flatMap(({ outline, holes }) => [outline, ...holes]);

const areaOf = (loops: Loops): number => loops.reduce((sum, loop) => sum + enclosedAreaMm2(loop), 0);
