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
  /** The upright openings that cut it. */
  readonly uprightLoops: Loops;
  /** The openings that take something away. */
  readonly openingIds: readonly string[];
}

/** Cuts a section's openings out of its loops; undefined where none takes anything away. */
export function openSection(
  project: Project,
  section: Section,
  loops: Loops,
  { curves, isJoined }: { readonly curves: Readonly<Record<string, Curve>>; readonly isJoined: boolean },
): OpenedSection | undefined {
  const wholeMm2 = areaOf(loops);
  const cutting = openingLoops(project, section, curves, isJoined).filter(
    (opening) => wholeMm2 - areaOf(subtracted(loops, opening.loops)) > LEAST_CUT_MM2,
  );
  if (cutting.length === 0) return undefined;
  const loopsOf = (cut: "square" | "upright"): Loops =>
    cutting.flatMap((one) => (one.opening.cut === cut ? one.loops : []));
  const squareLoops = subtracted(loops, loopsOf("square"));
  const uprightLoops = loopsOf("upright");
  return {
    loops: subtracted(squareLoops, uprightLoops),
    squareLoops,
    uprightLoops,
    openingIds: cutting.map(({ opening }) => opening.id),
  };
}

/** What takes away less is a line along an edge that was meant to lie on it. */
const LEAST_CUT_MM2 = 1;

const subtracted = (region: Loops, openings: Loops): Loops =>
  openings.length === 0
    ? region
    : subtractLoops(region, openings).flatMap(({ outline, holes }) => [outline, ...holes]);

const areaOf = (loops: Loops): number => loops.reduce((sum, loop) => sum + enclosedAreaMm2(loop), 0);
