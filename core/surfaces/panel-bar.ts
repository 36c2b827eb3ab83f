import { pointOnPiece } from "../curves/index.ts";
import { at, type PanelBar } from "../foundation/index.ts";
import { PANEL_GROUND, panelMake } from "../laminate/index.ts";
import { coreOf, type Fence, type Project } from "../project/index.ts";
import type { FenceSheet } from "./types.ts";

/** So much is trimmed off a cured panel all round: cloth frays there, and resin runs (common practice), mm. */
export const PANEL_EDGE_MM = 15;
/** A cured panel is sprung so little along its length, mm. */
const STRAIGHT_MM = 0.2;
/** A curved line is looked at in so many places along each of its pieces. */
const LOOKS = 16;

/** What of a project decides whether a fence can be cut from a panel. */
export const PANEL_SOURCE = [...PANEL_GROUND, "stock", "cutting"] as const;
export type PanelSource = Pick<Project, (typeof PANEL_SOURCE)[number]>;

/** The largest face of a panel inside its trimmed edges that a foam sheet of some length and width gives, mm. */
export function panelRoom(
  { lengthMm, widthMm }: { readonly lengthMm: number; readonly widthMm: number },
  { cutting }: Pick<Project, "cutting">,
): { readonly longMm: number; readonly shortMm: number } {
  const lostMm = 2 * (PANEL_EDGE_MM + Math.max(0, cutting.stockEdgeMm));
  return {
    longMm: Math.max(lengthMm, widthMm) - lostMm,
    shortMm: Math.min(lengthMm, widthMm) - lostMm,
  };
}

/**
 * Why a fence cannot be cut from a flat panel; undefined where it can. `sheet` is the fence as it is drawn, made either way:
 * it has to be straight in plan and sit on the skin, and with its bevel and its saw cuts lie along a foam sheet in stock.
 */
export function panelBar(
  project: PanelSource,
  fence: Fence,
  sheet: Pick<FenceSheet, "chart" | "loops" | "seat">,
): PanelBar | undefined {
  if (fence.seat === "core") return { why: "seat" };
  const offMm = offStraightMm(sheet.chart);
  if (offMm > STRAIGHT_MM) return { why: "curve", offMm };
  const { plies, foamMm, thicknessMm } = panelMake(project, fence);
  if (plies.length === 0) return { why: "cloth" };
  const { foamId } = coreOf(project, fence);
  const rooms = project.stock
    .filter((one) => one.foamId === foamId && Math.abs(one.thicknessMm - foamMm) < 1e-6)
    .map((one) => panelRoom(one, project))
    .filter(({ longMm, shortMm }) => longMm > 0 && shortMm > 0);
  if (rooms.length === 0) return { why: "stock", foamMm };
  const { lengthMm, heightMm } = sizeWithCuts(sheet, thicknessMm, project);
  if (rooms.some(({ longMm, shortMm }) => longMm >= lengthMm && shortMm >= heightMm)) return undefined;
  const [largest] = rooms.toSorted((a, b) => b.longMm * b.shortMm - a.longMm * a.shortMm);
  const { longMm: longestMm, shortMm: highestMm } = largest ?? { longMm: 0, shortMm: 0 };
  return { why: "size", lengthMm, heightMm, longestMm, highestMm };
}

/** How far a fence's line leaves the straight from its start to its end, mm. */
function offStraightMm({ pieces }: FenceSheet["chart"]): number {
  const points = pieces.flatMap(({ piece }) =>
    Array.from({ length: LOOKS + 1 }, (_, i) => pointOnPiece(piece, i / LOOKS)),
  );
  const [from, to] = [at(points, 0), at(points, -1)];
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const lengthMm = Math.hypot(dx, dy) || 1;
  return points.reduce(
    (most, [x, y]) => Math.max(most, Math.abs((x - from[0]) * dy - (y - from[1]) * dx) / lengthMm),
    0,
  );
}

/** The box round a fence as it is cut: its steepest bevel reaches beyond the mid-plane, and the blade takes its kerf. */
function sizeWithCuts(
  { loops, seat }: Pick<FenceSheet, "loops" | "seat">,
  thicknessMm: number,
  { cutting }: Pick<Project, "cutting">,
): { readonly lengthMm: number; readonly heightMm: number } {
  const points = loops.flatMap(({ edges }) => edges.flatMap((edge) => edge.points));
  const span = (of: readonly number[]) =>
    of.reduce((a, b) => Math.max(a, b), -Infinity) - of.reduce((a, b) => Math.min(a, b), Infinity);
  const steepest = seat.reduce((most, { bevelRad }) => Math.max(most, Math.abs(bevelRad)), 0);
  const moreMm = 2 * Math.max(0, cutting.kerfMm) + thicknessMm * Math.tan(steepest);
  return {
    lengthMm: span(points.map(({ u }) => u)) + moreMm,
    heightMm: span(points.map(({ v }) => v)) + moreMm,
  };
}
