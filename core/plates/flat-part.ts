import { at, type FlatPoint } from "../foundation/index.ts";
import { endFrame, flatIn, startFrame } from "./edge-frame.ts";
import type { BaseEdge, BendLine, PlacedWing, PlateHand, PlateLoop, PlatePart } from "./types.ts";

/** The flat of one hand from its loops and its wings at their places. */
export function flatPart(
  id: string,
  hand: PlateHand,
  loops: readonly PlateLoop[],
  wings: readonly PlacedWing[],
  edgeOf: (wing: PlacedWing) => BaseEdge,
): PlatePart {
  const points = loops.flatMap(({ edges }) => edges.flatMap((edge) => edge.points));
  const bends = wings.map((wing) => bendLine(wing, edgeOf(wing)));
  return {
    id,
    hand,
    loops,
    bends,
    lengthMm: extent(points.map(({ u }) => u)),
    widthMm: extent(points.map(({ v }) => v)),
  };
}

function extent(values: readonly number[]): number {
  let [least, most] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return values.length === 0 ? 0 : most - least;
}

function bendLine(wing: PlacedWing, edge: BaseEdge): BendLine {
  const { figures, startAlongMm, endAlongMm } = wing;
  const [from, to] = [at(edge.points, 0), at(edge.points, -1)];
  const [start, end] = [startFrame(from, to), endFrame(from, to)];
  const lineAt = (outwardMm: number): readonly [FlatPoint, FlatPoint] => [
    flatIn(start, [startAlongMm, outwardMm]),
    flatIn(end, [end.lengthMm - endAlongMm, outwardMm]),
  ];
  return {
    id: wing.id,
    wingId: wing.wingId,
    name: wing.name,
    figures,
    lengthMm: endAlongMm - startAlongMm,
    baseTangent: lineAt(-figures.airSetBackMm),
    middle: lineAt(-figures.airSetBackMm + figures.allowanceMm / 2),
    wingTangent: lineAt(-figures.airSetBackMm + figures.allowanceMm),
  };
}
