import { at, type PlanPoint, type Vec2 } from "../foundation/index.ts";
import { narrowedMm } from "./bend-figures.ts";
import type { Course } from "./course.ts";
import type { EndedWing } from "./course-ends.ts";
import { type EdgeFrame, flatIn } from "./edge-frame.ts";
import type { PlateEdge, PlateEdgeRole } from "./types.ts";
import type { WingEnd } from "./wing-end.ts";

/**
 * The flat outline along one edge of the base: drawn stretches, reliefs, and out and back round each wing. `cutsMm`
 * is what the wings beyond both its corners take off its ends. Undefined where the reliefs leave no room for that.
 */
export function walkCourse(
  course: Course,
  wings: readonly EndedWing[],
  cutsMm: readonly [start: number, end: number],
): readonly PlateEdge[] | undefined {
  const edges: PlateEdge[] = [];
  let fromMm = wings[0]?.start.kind === "in edge" || wings.length === 0 ? cutsMm[0] : undefined;
  for (const wing of wings) {
    const slotMm = slotOf(wing.start);
    if (slotMm !== undefined && fromMm !== undefined) {
      if (slotMm < fromMm) return undefined;
      edges.push(drawnStretch(course, fromMm, slotMm));
    }
    edges.push(...walkWing(course, wing));
    const endSlotMm = slotOf(wing.end);
    fromMm = endSlotMm === undefined ? undefined : course.lengthMm - endSlotMm;
  }
  if (fromMm === undefined) return edges;
  const toMm = course.lengthMm - cutsMm[1];
  return toMm < fromMm ? undefined : [...edges, drawnStretch(course, fromMm, toMm)];
}

/** Where the outer side of a slot in the edge starts, from the corner. */
const slotOf = (end: WingEnd): number | undefined =>
  end.kind === "in edge" ? end.relief[0]?.[0] : undefined;

/** A stretch of the drawn edge itself; on an edge that curves, along its chords. */
function drawnStretch({ edge, lengthMm }: Course, fromMm: number, toMm: number): PlateEdge {
  const points: PlanPoint[] = [];
  let alongMm = 0;
  for (let i = 1; i < edge.points.length; i++) {
    const [a, b] = [at(edge.points, i - 1), at(edge.points, i)];
    const stepMm = Math.hypot(b.x - a.x, b.y - a.y);
    const onStep = (mm: number): PlanPoint => {
      const t = (mm - alongMm) / stepMm;
      if (t === 0) return a;
      return t === 1 ? b : { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
    };
    const isLast = i === edge.points.length - 1;
    if (points.length === 0 && fromMm <= alongMm + stepMm) points.push(fromMm === 0 ? a : onStep(fromMm));
    if (points.length > 0 && (toMm <= alongMm + stepMm || isLast)) {
      points.push(isLast && toMm === lengthMm ? b : onStep(toMm));
      break;
    }
    if (points.length > 0) points.push(b);
    alongMm += stepMm;
  }
  return {
    edgeId: edge.edgeId,
    name: edge.name,
    role: "base",
    points: points.map(({ x, y }) => ({ u: x, v: y })),
  };
}

/** A wing unfolded: relief, side, free edge, side, relief. */
function walkWing({ start, end }: Course, wing: EndedWing): readonly PlateEdge[] {
  const { figures, id, name, startTaperRad, endTaperRad } = wing.placed;
  const bendFromMm = -figures.airSetBackMm;
  const bendToMm = bendFromMm + figures.allowanceMm;
  const freeMm = bendToMm + figures.flangeMm;
  const sideOf = (side: WingEnd, taperRad: number): readonly Vec2[] => [
    [side.footMm, bendFromMm],
    [side.footMm, bendToMm],
    [side.footMm + narrowedMm(figures, taperRad), freeMm],
  ];
  const startSide = sideOf(wing.start, startTaperRad);
  const endSide = sideOf(wing.end, endTaperRad);
  const stretch = (
    suffix: string,
    role: PlateEdgeRole,
    words: string,
    frame: EdgeFrame,
    points: readonly Vec2[],
  ): PlateEdge => ({
    edgeId: `${id}-${suffix}`,
    name: `${name}, ${words}`,
    role,
    placedWingId: id,
    points: points.map((p) => flatIn(frame, p)),
  });
  const relief = (which: WingEnd, side: readonly Vec2[]): readonly Vec2[] => [...which.relief, at(side, 0)];
  const startRelief = stretch("start-relief", "relief", "relief", start, relief(wing.start, startSide));
  const endRelief = stretch("end-relief", "relief", "relief", end, relief(wing.end, endSide).toReversed());
  const free = [flatIn(start, at(startSide, -1)), flatIn(end, at(endSide, -1))];
  return [
    ...(wing.start.relief.length > 0 ? [startRelief] : []),
    stretch("start-side", "wing side", "side", start, startSide),
    { ...stretch("free", "wing free edge", "free edge", start, []), points: free },
    stretch("end-side", "wing side", "side", end, endSide.toReversed()),
    ...(wing.end.relief.length > 0 ? [endRelief] : []),
  ];
}
