import type { PlanPoint, Vec2 } from "../../core/foundation/index.ts";
import {
  type CylinderChart,
  faceOver,
  heightAtPlace,
  placeOfXi,
  type Sheet,
  xiOfPlan,
} from "../../core/surfaces/index.ts";
import { useDesign } from "../stores/index.ts";

/** The lowest drawn surface over a place in plan, as the tray was last computed; undefined over none. */
export function drawnHeight(at: Vec2): number | undefined {
  const sheets = useDesign.getState().design?.sheets ?? [];
  const heights = sheets.flatMap((sheet) => heightsOver(sheet, at));
  return heights.length > 0 ? Math.min(...heights) : undefined;
}

/** A place on the very edge of a sheet is over it: outlines for the screen miss the true ones by less than this, mm. */
const ON_EDGE_MM = 0.2;
const AROUND: readonly Vec2[] = [
  [0, 0],
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
];

function heightsOver(sheet: Sheet, [x, y]: Vec2): readonly number[] {
  if (sheet.kind === "fence") return [];
  const face = faceOver(sheet, 0);
  const over = AROUND.map(([dx, dy]) => face({ x: x + dx * ON_EDGE_MM, y: y + dy * ON_EDGE_MM })).find(
    (point) => point !== undefined,
  );
  if (!over) return [];
  return [sheet.kind === "section" ? surfaceAt(sheet.chart, { x, y }) : over.z];
}

const surfaceAt = (chart: CylinderChart, at: PlanPoint): number =>
  heightAtPlace(chart, placeOfXi(chart, xiOfPlan(chart, at)), at.y);
