import type { CurvePiece } from "../../../core/curves/index.ts";
import { interpolate2, type Vec2 } from "../../../core/foundation/index.ts";
import { alongChord, awayPx } from "../nearest.ts";
import type { SceneEdge, SceneLine, Stretch } from "../scene.ts";
import type { Place } from "../types.ts";

/** An edge near a place: its piece that is nearest, the place on it as it is drawn, and how far off it is. */
export interface NearEdge {
  readonly line: SceneLine;
  readonly edge: SceneEdge;
  readonly piece: CurvePiece;
  readonly at: Vec2;
  readonly awayPx: number;
}

/** More edges than these at one place are not told apart. */
const MOST_EDGES = 8;

/** The edges of lines within reach of a place, the nearest first. Boxes keep it cheap over a thousand nodes. */
export function nearEdges(
  lines: readonly SceneLine[],
  place: Pick<Place, "at" | "mmPerPx">,
  reachPx: number,
): readonly NearEdge[] {
  const found: NearEdge[] = [];
  for (const line of lines) {
    if (line.broken) continue;
    for (const edge of line.edges) {
      for (const stretch of edge.stretches) {
        if (!isNearBox(boxOf(stretch), place, reachPx)) continue;
        const here = nearestOfStretch(stretch, place);
        if (here && here.awayPx <= reachPx) found.push({ line, edge, piece: stretch.piece, ...here });
      }
    }
  }
  return found.sort((a, b) => a.awayPx - b.awayPx).slice(0, MOST_EDGES);
}

interface Box {
  readonly low: Vec2;
  readonly high: Vec2;
}

const boxes = new WeakMap<Stretch, Box>();

function boxOf(stretch: Stretch): Box {
  const known = boxes.get(stretch);
  if (known) return known;
  const [xs, ys] = [stretch.points.map((point) => point[0]), stretch.points.map((point) => point[1])];
  const box: Box = { low: [Math.min(...xs), Math.min(...ys)], high: [Math.max(...xs), Math.max(...ys)] };
  boxes.set(stretch, box);
  return box;
}

function isNearBox(
  { low, high }: Box,
  { at, mmPerPx }: Pick<Place, "at" | "mmPerPx">,
  reachPx: number,
): boolean {
  const [x, y] = [reachPx * mmPerPx[0], reachPx * mmPerPx[1]];
  return at[0] >= low[0] - x && at[0] <= high[0] + x && at[1] >= low[1] - y && at[1] <= high[1] + y;
}

function nearestOfStretch({ points }: Stretch, place: Pick<Place, "at" | "mmPerPx">) {
  let best: { readonly at: Vec2; readonly awayPx: number } | undefined;
  for (let index = 1; index < points.length; index += 1) {
    const [from, to] = [points[index - 1], points[index]];
    if (!from || !to) continue;
    const at = interpolate2(from, to, alongChord(from, to, place));
    const away = awayPx(at, place.at, place.mmPerPx);
    if (best === undefined || away < best.awayPx) best = { at, awayPx: away };
  }
  return best;
}
