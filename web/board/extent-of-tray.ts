import { pointOnPiece } from "../../core/curves/index.ts";
import type { Design } from "../../core/design.ts";
import type { Vec2 } from "../../core/foundation/index.ts";
import type { LyingSheet } from "../../core/surfaces/index.ts";
import { extentOf } from "./extents.ts";
import type { Extent } from "./viewport.ts";

const heightsOf = (sheet: LyingSheet): readonly number[] =>
  sheet.kind === "section"
    ? sheet.chart.pieces.flatMap(({ piece }) => [0, 0.5, 1].map((t) => pointOnPiece(piece, t)[1]))
    : sheet.rulings.flatMap(({ from, to }) => [from.z, to.z]);

/** The same box at every station, so that the section keeps its scale while the hairline moves. */
export function extentOfTray(design: Design): Extent {
  const points: Vec2[] = [];
  for (const sheet of design.sheets) {
    if (sheet.kind === "fence") continue;
    const ys = sheet.planLoops.flatMap((loop) => loop.map((point) => point.y));
    const widest = Math.max(0, ...ys.map(Math.abs));
    points.push([-widest, 0], [widest, Math.max(...heightsOf(sheet))]);
  }
  for (const { wings, zMm } of design.plates) {
    const corners = wings.flatMap((wing) => wing.upperFace);
    points.push([0, zMm], ...corners.map(({ y, z }): Vec2 => [y, z]));
  }
  return extentOf(points) ?? { left: -600, right: 600, bottom: 0, top: 100 };
}
