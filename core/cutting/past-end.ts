import { at, type PlanPoint } from "../foundation/index.ts";
import { type FlatEdge, type Part, partPlaces } from "../patterns/index.ts";
import { type Project, ribBoardOf } from "../project/index.ts";
import {
  type LyingSheet,
  pastLine,
  polygonsContain,
  type RunningPast,
  type SectionSheet,
} from "../surfaces/index.ts";
import type { BentEnd } from "./bent-ends.ts";

/** Foam that runs past the trim line of a bent free edge, over a rib of its own. */
export interface RunPast extends RunningPast {
  readonly sheetId: string;
  readonly partIds: readonly string[];
  readonly edgeId: string;
  readonly edgeName: string;
  /** Least and greatest x at which a rib across stands past all of the edge and under the foam. */
  readonly ribXMm: readonly [number, number];
}

export interface PastSettings {
  readonly project: Pick<Project, "jig" | "materials">;
  /** All that lies on the jig. */
  readonly lying: readonly LyingSheet[];
  readonly lengthMm: number;
}

/** The blade wants room between the trim line and the wood of the rib past it, mm. */
const CLEAR_OF_BLADE_MM = 5;
/** The rib stands this far inside the end of the foam, to be strapped down by (common practice), mm. */
const INSIDE_MM = 25;

/** Foam past one edge, and what is in its way; `hands` are the parts of the sheet, the right or whole one first. */
export function pastEnd(
  sheet: SectionSheet,
  hands: readonly Part[],
  { edge, toward }: BentEnd,
  { project, lying, lengthMm }: PastSettings,
): { readonly past: RunPast; readonly why?: "part" | "slant" } {
  const running = { line: planOf(sheet, at(hands, 0), edge), toward, lengthMm };
  const far = pastLine(sheet, running);
  const clearMm = CLEAR_OF_BLADE_MM + (ribBoardOf(project)?.thicknessMm ?? 0);
  // So far inside the end along the foam, which may run steeply.
  const inside = pastLine(sheet, { ...running, lengthMm: lengthMm - INSIDE_MM });
  const [near, end] = [running.line.map(({ x }) => x), inside.map(({ x }) => x)];
  const ribXMm =
    toward === "last"
      ? ([Math.max(...near) + clearMm, Math.min(...end)] as const)
      : ([Math.max(...end), Math.min(...near) - clearMm] as const);
  const past: RunPast = {
    ...running,
    sheetId: sheet.id,
    partIds: hands.map(({ id }) => id),
    edgeId: edge.edgeId,
    edgeName: edge.name,
    ribXMm,
  };
  if (isTaken(running.line, far, lying)) return { past, why: "part" };
  return ribXMm[0] > ribXMm[1] ? { past, why: "slant" } : { past };
}

/** An edge of a flat part where it lies on the drawn surface, in plan. */
function planOf(sheet: SectionSheet, part: Part, { points }: FlatEdge): readonly PlanPoint[] {
  const place = partPlaces([sheet], part);
  return points.flatMap((flat) => {
    const spot = place?.(flat, 0);
    return spot ? [{ x: spot.x, y: spot.y }] : [];
  });
}

/** Shares of the way out, and along the edge, at which room is looked for. */
const LOOKS = [0.05, 0.35, 0.7, 1] as const;
const LOOKS_ALONG = 12;

/** Whether any foam of the tray lies where this would run. */
function isTaken(
  near: readonly PlanPoint[],
  far: readonly PlanPoint[],
  lying: readonly LyingSheet[],
): boolean {
  return LOOKS.some((share) =>
    Array.from({ length: LOOKS_ALONG - 1 }, (_, k) => (k + 1) / LOOKS_ALONG).some((along) => {
      const [a, b] = [pointAlong(near, along), pointAlong(far, along)];
      const p = { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
      return lying.some(({ planLoops }) => polygonsContain(planLoops, p));
    }),
  );
}

/** The point at a share of a line's points; both lines of a band have as many. */
function pointAlong(line: readonly PlanPoint[], share: number): PlanPoint {
  const place = share * (line.length - 1);
  const i = Math.min(line.length - 2, Math.floor(place));
  const [a, b] = [at(line, i), at(line, i + 1)];
  return { x: a.x + (b.x - a.x) * (place - i), y: a.y + (b.y - a.y) * (place - i) };
}
