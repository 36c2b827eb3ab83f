import { cross2, dot2, scale2, subtract2, type Vec2 } from "../foundation/index.ts";
import { indexBefore, type PathSegment } from "./path-segments.ts";
import type { ArcPiece, Path } from "./types.ts";

/** The arc of a radiused node between two lines, and how much of each line it takes. */
export interface CornerArc {
  readonly nodeId: string;
  /** From the node back along the arriving line, and on along the leaving one, to where the arc touches. */
  readonly tangentMm: number;
  /** Half the turn's tangent: the tangent length of a radius of 1 mm. */
  readonly tangentPerRadius: number;
  readonly halves: readonly [ArcPiece, ArcPiece];
}

/** Arcs shorter than this are no arcs: the lines on both sides run straight through the node. */
const SHORTEST_ARC_MM = 1e-9;

/**
 * The arc at each element of a path by index, `undefined` where there is none (no radius, no two lines, or no
 * turn). The two halves meet in the node's own place, the middle of the arc; the first belongs to the arriving
 * edge, the second to the leaving one. Whether it fits is not asked here.
 */
export function cornerArcs(
  path: Path,
  segments: readonly (PathSegment | undefined)[],
): (CornerArc | undefined)[] {
  return path.elements.map((element, i) => {
    if (element.kind !== "node" || !isRadius(element.radiusMm)) return undefined;
    const before = indexBefore(path, i);
    const arriving = before === undefined ? undefined : segments[before];
    const leaving = segments[i];
    if (arriving?.kind !== "line" || leaving?.kind !== "line") return undefined;
    return cornerArc(element.id, element.radiusMm, arriving, leaving);
  });
}

/** Whether a node carries a radius that can be drawn; other numbers are problems of their own. */
export const isRadius = (radiusMm: number | undefined): radiusMm is number =>
  radiusMm !== undefined && radiusMm > 0 && Number.isFinite(radiusMm);

function cornerArc(
  nodeId: string,
  radiusMm: number,
  arriving: PathSegment,
  leaving: PathSegment,
): CornerArc | undefined {
  const inward = scale2(subtract2(arriving.to, arriving.from), 1 / arriving.chordMm);
  const onward = scale2(subtract2(leaving.to, leaving.from), 1 / leaving.chordMm);
  const turnRad = Math.atan2(cross2(inward, onward), dot2(inward, onward));
  if (Math.abs(turnRad) * radiusMm < SHORTEST_ARC_MM) return undefined;
  const tangentPerRadius = Math.tan(Math.abs(turnRad) / 2);
  const tangentMm = radiusMm * tangentPerRadius;
  const toCentre: Vec2 = turnRad > 0 ? [-inward[1], inward[0]] : [inward[1], -inward[0]];
  const centre: Vec2 = [
    leaving.from[0] - inward[0] * tangentMm + toCentre[0] * radiusMm,
    leaving.from[1] - inward[1] * tangentMm + toCentre[1] * radiusMm,
  ];
  const startRad = Math.atan2(0 - toCentre[1], 0 - toCentre[0]);
  const half = { kind: "arc", centre, radiusMm, sweepRad: turnRad / 2 } as const;
  return {
    nodeId,
    tangentMm,
    tangentPerRadius,
    halves: [
      { ...half, edgeId: arriving.edgeId, endNodeId: nodeId, startRad },
      { ...half, edgeId: leaving.edgeId, startNodeId: nodeId, startRad: startRad + turnRad / 2 },
    ],
  };
}
