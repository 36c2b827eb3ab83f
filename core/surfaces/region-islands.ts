import { flattenPiece, pointOnPiece, trimPiece } from "../curves/index.ts";
import { at, type FlatPoint, type PlanPoint } from "../foundation/index.ts";
import { polygonsContain } from "./inside-polygons.ts";
import { boxOf } from "./plan-polygons.ts";
import type { BorderPiece, RegionLoop, SectionSheet } from "./types.ts";

/** One connected piece of a region: its outline and the holes in it, and the same as polygons in plan. */
export interface RegionIsland {
  readonly loops: readonly RegionLoop[];
  readonly planLoops: readonly (readonly PlanPoint[])[];
}

/** The connected pieces of a region, from front to rear and, side by side, from inboard to outboard. */
export function islandsOf(loops: readonly RegionLoop[]): readonly RegionIsland[] {
  const measured = loops.map((loop) => {
    const polygon = flatPolygonOf(loop);
    return { loop, polygon, areaMm2: signedAreaMm2(polygon) };
  });
  const outlines = measured.filter(({ areaMm2 }) => areaMm2 > 0).sort((a, b) => a.areaMm2 - b.areaMm2);
  const islands = outlines.map((outline) => ({ outline, loops: [outline.loop] }));
  for (const hole of measured) {
    if (hole.areaMm2 > 0) continue;
    const around = islands.find(({ outline }) => goesRound(outline.polygon, hole.polygon));
    around?.loops.push(hole.loop);
  }
  return frontToRear(islands.map(({ loops: own }) => ({ loops: own, planLoops: own.map(planPolygonOf) })));
}

/** How many connected pieces a region has. */
export const countIslands = (loops: readonly RegionLoop[]): number =>
  loops.filter((loop) => signedAreaMm2(flatPolygonOf(loop)) > 0).length;

const flatPolygonOf = ({ edges }: RegionLoop): readonly PlanPoint[] =>
  edges.flatMap(({ flat }) => flat.slice(0, -1).map(({ u, v }: FlatPoint) => ({ x: u, y: v })));

function signedAreaMm2(polygon: readonly PlanPoint[]): number {
  return polygon.reduce((sum, p, i) => {
    const before = at(polygon, i - 1);
    return sum + (before.x * p.y - p.x * before.y) / 2;
  }, 0);
}

/** Loops touch in a point at most, so that most points of the inner one tell. */
function goesRound(outline: readonly PlanPoint[], hole: readonly PlanPoint[]): boolean {
  const middles = hole.map((p, i) => {
    const before = at(hole, i - 1);
    return { x: (p.x + before.x) / 2, y: (p.y + before.y) / 2 };
  });
  return middles.filter((p) => polygonsContain([outline], p)).length * 2 > middles.length;
}

/** How exactly a plan polygon knows where its sheet ends, mm. */
const POLYGON_ERROR_MM = 0.02;

/** A loop of a region as a polygon in plan; along a corner ruling it is straight. */
export function planPolygonOf({ edges }: RegionLoop): readonly PlanPoint[] {
  return edges.flatMap(({ trace }): readonly PlanPoint[] => {
    if (!trace || trace.kind === "ruled") return [];
    const { piece, from, to } = trace;
    const stretch = trimPiece(piece, Math.min(from, to), Math.max(from, to));
    const along = flattenPiece(stretch, { chordErrorMm: POLYGON_ERROR_MM, turnRad: 0.2 });
    return (from < to ? along : along.toReversed()).map((t): PlanPoint => {
      const [x, y] = pointOnPiece(stretch, t);
      return { x, y };
    });
  });
}

/** What borders a section's sheet, and how it is cut, as its edges meet at the neutral fibre. */
export const bordersOf = ({ borders, planPieces }: SectionSheet): readonly BorderPiece[] =>
  borders ?? planPieces.map((piece) => ({ piece, wall: "square" }));

/** The stretches of plan curves that border a region, and how each is cut. */
export function bordersOfLoops(loops: readonly RegionLoop[]): readonly BorderPiece[] {
  return loops.flatMap(({ edges }) =>
    edges.flatMap(({ trace }): BorderPiece[] => {
      if (!trace || trace.kind === "ruled") return [];
      const { piece, from, to } = trace;
      const wall = trace.kind === "plumb" ? "upright" : "square";
      return [{ piece: trimPiece(piece, Math.min(from, to), Math.max(from, to)), wall }];
    }),
  );
}

/** Islands that lie over more than this share of the shorter one's length are side by side, not one behind the other. */
const SIDE_BY_SIDE = 0.5;

/**
 * Islands in rows from front to rear, each row from the centre line outward. A row is what lies beside its first
 * island; small changes of the drawing change no row.
 */
export function frontToRear<Island extends Pick<RegionIsland, "planLoops">>(
  islands: readonly Island[],
): readonly Island[] {
  const boxed = islands
    .map((island) => ({ island, box: boxOf(island.planLoops.flat()) }))
    .sort((a, b) => a.box[0].x + a.box[1].x - b.box[0].x - b.box[1].x);
  const rows: (typeof boxed)[] = [];
  for (const one of boxed) {
    const row = rows.at(-1);
    const first = row?.[0];
    if (row && first && overlapShare(first.box, one.box) > SIDE_BY_SIDE) row.push(one);
    else rows.push([one]);
  }
  const middleY = ([least, most]: readonly [PlanPoint, PlanPoint]) => (least.y + most.y) / 2;
  return rows.flatMap((row) =>
    row
      .toSorted(
        (a, b) =>
          Math.round(Math.abs(middleY(a.box)) - Math.abs(middleY(b.box))) || middleY(b.box) - middleY(a.box),
      )
      .map(({ island }) => island),
  );
}

type PlanBox = readonly [PlanPoint, PlanPoint];

function overlapShare([a0, a1]: PlanBox, [b0, b1]: PlanBox): number {
  const overlapMm = Math.min(a1.x, b1.x) - Math.max(a0.x, b0.x);
  return overlapMm / (Math.min(a1.x - a0.x, b1.x - b0.x) || 1);
}
