import { type Problem, toDegrees } from "../foundation/index.ts";
import type { Metal, Plate, Wing } from "../project/index.ts";
import { bendFigures, deductionRangeMm, LEAST_BEND_RAD, MOST_BEND_RAD } from "./bend-figures.ts";
import type { DrawnWing } from "./course.ts";
import type { BaseEdge, BendFigures } from "./types.ts";
import { type WingOwner, wingName, wingOwner } from "./wing-owner.ts";
import { wingPlaces } from "./wing-places.ts";

/** The wings of a plate on the edges of its base, and what is wrong with those that are not there. */
export interface DrawnWings {
  readonly wings: readonly DrawnWing[];
  readonly problems: readonly Problem[];
}

/**
 * Puts each wing on its edge, and its image where the base is joined to its own. Problems: wing-edge-missing,
 * wing-edge-not-straight, number-out-of-range (angle, deduction), wing-radius-too-small, wing-flange-too-short.
 */
export function placeWings(plate: Plate, loops: readonly (readonly BaseEdge[])[], metal: Metal): DrawnWings {
  const wings: DrawnWing[] = [];
  const problems: Problem[] = [];
  for (const wing of plate.wings) {
    const owner = wingOwner(plate, wing.id);
    const places = wingPlaces(wing, loops);
    const unfit =
      angleProblem(wing, owner) ?? (places.length === 0 ? edgeProblem(wing, owner, loops) : undefined);
    if (unfit) {
      problems.push(unfit);
      continue;
    }
    const figures = bendFigures(wing, metal, plate.thicknessMm);
    problems.push(...figureProblems(wing, figures, metal, owner));
    if (figures.flangeMm <= 0) continue;
    const named = { wingId: wing.id, figures };
    for (const place of places) {
      const side = places.length === 1 ? "" : place.half === "drawn" ? ", right" : ", left";
      wings.push({ ...place, ...named, name: `${wingName(plate, wing.id)}${side}` });
    }
  }
  return { wings, problems };
}

function angleProblem({ angleRad }: Wing, owner: WingOwner): Problem | undefined {
  const sizeRad = Math.abs(angleRad);
  if (sizeRad >= LEAST_BEND_RAD && sizeRad <= MOST_BEND_RAD) return undefined;
  const most = toDegrees(MOST_BEND_RAD);
  const least = sizeRad < LEAST_BEND_RAD ? toDegrees(LEAST_BEND_RAD) : -most;
  return {
    ...owner,
    kind: "number-out-of-range",
    field: "The angle in degrees",
    value: toDegrees(angleRad),
    least,
    most,
  };
}

function edgeProblem({ edgeId }: Wing, owner: WingOwner, loops: readonly (readonly BaseEdge[])[]): Problem {
  const isThere = loops.flat().some((edge) => edge.edgeId === edgeId);
  return { ...owner, kind: isThere ? "wing-edge-not-straight" : "wing-edge-missing", edgeId };
}

/**
 * The least flat of a wing that a brake or a vice can hold, beyond the bend: 2 t + R (common practice; a workshop's
 * own tool may do less or need more).
 */
const leastFlangeMm = ({ thicknessMm, insideRadiusMm }: BendFigures): number =>
  2 * thicknessMm + insideRadiusMm;

/** Lengths that differ by less are one. */
const NOTHING_MM = 1e-9;

function figureProblems(
  wing: Wing,
  figures: BendFigures,
  metal: Metal,
  owner: WingOwner,
): readonly Problem[] {
  const problems: Problem[] = [];
  const leastRadiusMm = metal.leastRadiusRatio * figures.thicknessMm;
  if (figures.insideRadiusMm < leastRadiusMm - NOTHING_MM) {
    const { insideRadiusMm: radiusMm } = figures;
    problems.push({ ...owner, kind: "wing-radius-too-small", radiusMm, leastMm: leastRadiusMm });
  }
  if (figures.flangeMm < leastFlangeMm(figures) - NOTHING_MM) {
    const leastMm = figures.setBackMm + leastFlangeMm(figures);
    const isMade = figures.flangeMm > 0;
    problems.push({ ...owner, kind: "wing-flange-too-short", lengthMm: wing.lengthMm, leastMm, isMade });
  }
  if (wing.deductionMm !== undefined && figures.kFactorFrom === "metal") {
    const { leastMm: least, mostMm: most } = deductionRangeMm(figures);
    const value = wing.deductionMm;
    const used = figures.deductionMm;
    problems.push({
      ...owner,
      kind: "number-out-of-range",
      field: "The bend deduction",
      value,
      least,
      most,
      used,
    });
  }
  return problems;
}
