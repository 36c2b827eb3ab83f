import { at } from "../../foundation/index.ts";
import { type Part, partPlaces } from "../../patterns/index.ts";
import { ribBoardOf } from "../../project/index.ts";
import type { Sheet } from "../../surfaces/index.ts";
import { fenceBands } from "../fence-notches.ts";
import type { JigGround } from "../jig-ground.ts";

/** From where to where along x (across) or y (along) a rib's station plane had better not stand. */
export type Obstacle = readonly [fromMm: number, toMm: number];

export interface Obstacles {
  readonly across: readonly Obstacle[];
  readonly along: readonly Obstacle[];
}

/** A board keeps so far from a wall, beside its own thickness, mm. */
const CLEAR_MM = 3;
/** A fence that wanders aside by more than this is crossed by ribs along in any case, mm. */
const STRAIGHT_MM = 40;

/**
 * What ribs are to stand clear of where that costs nothing: openings, over which a rib is cut in two, and fences that stand in
 * the jig first, in which a rib along would stand.
 */
export function obstaclesOf(
  { sheets, parts }: { readonly sheets: readonly Sheet[]; readonly parts: readonly Part[] },
  project: JigGround,
): Obstacles {
  const thicknessMm = (ribBoardOf(project)?.thicknessMm ?? 0) + CLEAR_MM;
  const around = (values: readonly number[]): Obstacle => [
    Math.min(...values) - thicknessMm,
    Math.max(...values) + thicknessMm,
  ];
  const openings = openingPoints(sheets, parts);
  const standing =
    project.jig.attitude === "upright"
      ? sheets.filter((sheet) => sheet.kind === "fence" && sheet.standsFirst)
      : [];
  const fences = fenceBands(standing, project).map(({ lines }) => lines.flat().map(({ y }) => y));
  return {
    across: openings.map((points) => around(points.map(({ x }) => x))),
    along: [
      ...openings.map((points) => around(points.map(({ y }) => y))),
      ...fences.filter((ys) => Math.max(...ys) - Math.min(...ys) < STRAIGHT_MM).map(around),
    ],
  };
}

/** The plan points around every opening on every part. */
function openingPoints(sheets: readonly Sheet[], parts: readonly Part[]) {
  return parts.flatMap((part) => {
    if (part.kind === "fence" || !part.webs) return [];
    const place = partPlaces(sheets, part);
    const ids = new Set(part.edges.flatMap(({ opening }) => (opening ? [opening.id] : [])));
    return [...ids].flatMap((id) => {
      const edges = part.loops
        .flatMap((loop) => loop.edges)
        .filter((edge) =>
          part.edges.some(({ edgeId, opening }) => edgeId === edge.edgeId && opening?.id === id),
        );
      const points = edges.flatMap((edge) =>
        edge.points.flatMap((flat) => {
          const spot = place?.(flat, 0);
          return spot ? [{ x: spot.x, y: spot.y }] : [];
        }),
      );
      return points.length > 0 ? [points] : [];
    });
  });
}

/** A place is shifted by no more than this to stand clear, mm. */
const MOST_SHIFT_MM = 45;

/** Places shifted clear of obstacles, one by one, wherever that leaves enough of them; `isEnough` judges all together. */
export function shiftedClear(
  placesMm: readonly number[],
  fixed: readonly number[],
  obstacles: readonly Obstacle[],
  isEnough: (placesMm: readonly number[]) => boolean,
): readonly number[] {
  let best = placesMm;
  for (const [i, mm] of placesMm.entries()) {
    if (fixed.includes(mm) || isClear(mm, obstacles)) continue;
    const tries = obstacles
      .flatMap(([from, to]) => [Math.floor(from), Math.ceil(to)])
      .filter((to) => Math.abs(to - mm) <= MOST_SHIFT_MM && isClear(to, obstacles))
      .toSorted((a, b) => Math.abs(a - mm) - Math.abs(b - mm));
    const before = best;
    const moved = tries
      .map((to) => before.map((one, k) => (k === i ? to : one)))
      .find((places) => isApart(places, i) && isEnough(places));
    best = moved ?? best;
  }
  return best;
}

/** Whether a place stands clear of all of them. */
export const isClear = (mm: number, obstacles: readonly Obstacle[]): boolean =>
  obstacles.every(([from, to]) => mm <= from || mm >= to);

/** Nearer together no hand reaches between, mm. */
const LEAST_PITCH_MM = 40;

const isApart = (placesMm: readonly number[], i: number): boolean => {
  const mm = at(placesMm, i);
  return (
    mm - (placesMm[i - 1] ?? Number.NEGATIVE_INFINITY) >= LEAST_PITCH_MM &&
    (placesMm[i + 1] ?? Number.POSITIVE_INFINITY) - mm >= LEAST_PITCH_MM
  );
};
