import { at, type PlanPoint } from "../foundation/index.ts";
import { makingOf } from "../project/index.ts";
import type { BoardHeight } from "./board-height.ts";
import { boardSheets } from "./board-sheets.ts";
import type { BoardSlot, SquareCheck } from "./board-types.ts";
import { bodyOfRib } from "./body-of-rib.ts";
import type { JigGround } from "./jig-ground.ts";
import { planPoint } from "./jig-piece.ts";
import { boardShims } from "./shims.ts";
import type { Baseboard, Rib } from "./types.ts";

/** The baseboard reaches beyond the ribs by this, mm. */
const BASE_MARGIN_MM = 50;
/** The marks that are measured across lie so far inside the board's edges, mm. */
const MARK_INSET_MM = 20;

export interface BaseSettings extends Pick<Baseboard, "attitude" | "levelZMm"> {
  readonly project: JigGround;
  readonly boardAt: BoardHeight;
}

/**
 * The board under some ribs: 50 mm wider all round, the sheets it is made of, the line that each rib stands on, the slots
 * for tabs, marks to measure across, and what its measured heights ask for.
 */
export function baseOfRibs(
  ribs: readonly Rib[],
  { attitude, levelZMm, project, boardAt }: BaseSettings,
): Baseboard {
  const making = makingOf(project);
  const lines = ribs.map(({ id, runs, atMm, outlineMm, stationFace }) => {
    const along = outlineMm.map(({ u }) => u);
    return {
      ribId: id,
      from: planPoint(runs, atMm, Math.min(...along)),
      to: planPoint(runs, atMm, Math.max(...along)),
      toward: OPPOSITE[stationFace],
    };
  });
  const corners = cornersAround(lines.flatMap(({ from, to }) => [from, to]));
  return {
    attitude,
    levelZMm,
    corners,
    lines,
    thicknessMm: making.baseThicknessMm,
    sheets: boardSheets(corners, ribs, making),
    square: squareCheck(corners),
    slots: ribs.flatMap((rib) => slotsFor(rib, making.slotClearanceMm)),
    shims: boardShims(ribs, making.boardHeights.length === 0 ? undefined : boardAt),
  };
}

const OPPOSITE = { front: "rear", rear: "front", right: "left", left: "right" } as const;

function cornersAround(ends: readonly PlanPoint[]): Baseboard["corners"] {
  const edge = (pick: (...values: number[]) => number, axis: "x" | "y", marginMm: number) =>
    ends.length === 0 ? 0 : pick(...ends.map((p) => p[axis])) + marginMm;
  return [
    { x: edge(Math.min, "x", -BASE_MARGIN_MM), y: edge(Math.min, "y", -BASE_MARGIN_MM) },
    { x: edge(Math.max, "x", BASE_MARGIN_MM), y: edge(Math.max, "y", BASE_MARGIN_MM) },
  ];
}

/** Marks inside the four corners; front left first, then around by the front right. */
function squareCheck([least, most]: Baseboard["corners"]): SquareCheck {
  const insetMm = Math.min(MARK_INSET_MM, (most.x - least.x) / 2, (most.y - least.y) / 2);
  const [x0, x1] = [least.x + insetMm, most.x - insetMm];
  const [y0, y1] = [least.y + insetMm, most.y - insetMm];
  return {
    marks: [
      { x: x0, y: y0 },
      { x: x0, y: y1 },
      { x: x1, y: y1 },
      { x: x1, y: y0 },
    ],
    diagonalMm: Math.hypot(x1 - x0, y1 - y0),
  };
}

/** A slot is larger than its tab by the clearance, all round by half of it. */
function slotsFor(rib: Rib, clearanceMm: number): BoardSlot[] {
  const body = bodyOfRib(rib);
  const half = clearanceMm / 2;
  return rib.tabs.map((tab) => ({
    ribId: rib.id,
    corners: [
      planPoint(rib.runs, at(body, 0) - half, at(tab, 0) - half),
      planPoint(rib.runs, at(body, 1) + half, at(tab, 1) + half),
    ],
  }));
}
