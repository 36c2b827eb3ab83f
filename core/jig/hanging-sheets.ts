import { addSpace, at, type SpacePoint } from "../foundation/index.ts";
import { pointOnRuled } from "../rulings/index.ts";
import {
  type LyingSheet,
  partIdOf,
  type RegionEdge,
  type Sheet,
  spotOnEdge,
  type TransitionSheet,
} from "../surfaces/index.ts";
import type { HangingFaces } from "./release.ts";
import { type DepthOf, depthIn } from "./resting-depth.ts";

/** Rulings of a transition and places along an edge are looked at this often, mm: a shell grips over far more. */
const STEP_MM = 10;
const MOST_STEPS = 300;
/** A wall that leans by less than this over its foot is upright, mm. */
const LEANS_MM = 0.5;

/**
 * Of all sheets what may reach down beside or under the wood of a rib: both faces of transitions, which may stand upright
 * or turn back under themselves, and the walls of free edges, which lean out over the plan where a sheet is steep. A
 * section is one height over every plan point, so that the rest of it lies over its own resting face. The shell
 * lies between two depths.
 */
export const hangingSheets = (
  sheets: readonly Sheet[],
  [fromOf, toOf]: readonly [DepthOf, DepthOf],
): readonly HangingFaces[] =>
  sheets.flatMap((sheet) => {
    if (sheet.kind === "fence") return [];
    const body = [depthIn(sheet, fromOf), depthIn(sheet, toOf)] as const;
    const own = sheet.kind === "transition" ? facesOf(sheet, body) : [];
    const faces = [...own, ...freeWalls(sheet, body)];
    return sheet.hands.map((hand) => ({
      by: "sheet" as const,
      partId: partIdOf(sheet.id, hand),
      faces: hand === "left" ? faces.map((face) => face.map(({ x, y, z }) => ({ x, y: -y, z }))) : faces,
    }));
  });

type Face = readonly SpacePoint[];
/** The depths of both outer faces. */
type Body = readonly [fromMm: number, toMm: number];

const shares = (lengthMm: number): readonly number[] => {
  const steps = Math.min(MOST_STEPS, Math.max(1, Math.ceil(lengthMm / STEP_MM)));
  return Array.from({ length: steps + 1 }, (_, i) => i / steps);
};

function facesOf({ chart: { surface } }: TransitionSheet, body: Body): readonly Face[] {
  const rulings = shares(surface.lengthSMm).map((share) => share * surface.lengthSMm);
  return body.flatMap((depthMm) => {
    const ends = rulings.map((sMm) => [0, 1].map((t) => pointOnRuled(surface, { sMm, t }, depthMm)));
    return between(ends);
  });
}

/** The square walls of edges to which nothing is joined; one that is cut upright leans over nothing. */
function freeWalls(sheet: LyingSheet, body: Body): readonly Face[] {
  const edges = sheet.loops.flatMap((loop) => loop.edges);
  const thickMm = Math.abs(body[1] - body[0]);
  return edges
    .filter(({ role, trace, isApex }) => role === "free" && trace?.kind !== "plumb" && !isApex)
    .flatMap((edge) => {
      const spots = shares(lengthOf(edge)).map((share) => spotOnEdge(sheet, edge, share));
      if (!spots.some(({ normal }) => Math.hypot(normal.x, normal.y) * thickMm > LEANS_MM)) return [];
      return between(spots.map(({ point, normal }) => body.map((mm) => addSpace(point, normal, mm))));
    });
}

const lengthOf = ({ flat }: RegionEdge): number =>
  flat.reduce(
    (sum, p, i) => sum + (i === 0 ? 0 : Math.hypot(p.u - at(flat, i - 1).u, p.v - at(flat, i - 1).v)),
    0,
  );

/** The patches between straights that follow each other. */
const between = (lines: readonly (readonly SpacePoint[])[]): readonly Face[] =>
  lines.slice(1).map((line, i) => [...at(lines, i), ...line.toReversed()]);
