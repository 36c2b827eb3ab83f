import type { Vec2 } from "../../core/foundation/index.ts";
import type { ChartPiece, FenceSheet } from "../../core/surfaces/index.ts";
import { flattenForScreen } from "../tools/index.ts";

/** The foam of a fence as the side view sees it: its outline in (x, z), mm. */
export function fenceSilhouette(fence: FenceSheet): readonly Vec2[] {
  const marks = fence.chart.pieces.flatMap(marksAlong);
  return fence.loops.flatMap((loop) =>
    loop.edges.flatMap(({ points }) =>
      points.flatMap(({ u, v }): readonly Vec2[] => {
        const x = xAlong(marks, u);
        return x === undefined ? [] : [[x, v]];
      }),
    ),
  );
}

interface Mark {
  readonly uMm: number;
  readonly xMm: number;
}

/** Places along one piece of the line, by length along its chords stretched to its own length. */
function marksAlong({ piece, startUMm, lengthUMm }: ChartPiece): readonly Mark[] {
  const { points } = flattenForScreen(piece);
  let run = 0;
  const runs = points.map((point, index) => {
    const before = points[index - 1];
    if (before) run += Math.hypot(point[0] - before[0], point[1] - before[1]);
    return { run, xMm: point[0] };
  });
  const stretch = run > 0 ? lengthUMm / run : 0;
  return runs.map((mark) => ({ uMm: startUMm + mark.run * stretch, xMm: mark.xMm }));
}

/** x at a length along the line, between the two marks around it; beyond the ends it goes on straight. */
function xAlong(marks: readonly Mark[], uMm: number): number | undefined {
  const found = marks.findIndex((mark, index) => index > 0 && mark.uMm >= uMm);
  const after = marks[found < 0 ? marks.length - 1 : found];
  const before = marks[(found < 0 ? marks.length - 1 : found) - 1];
  if (!before || !after || after.uMm === before.uMm) return after?.xMm;
  return before.xMm + ((uMm - before.uMm) / (after.uMm - before.uMm)) * (after.xMm - before.xMm);
}
