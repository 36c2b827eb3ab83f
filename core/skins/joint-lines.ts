import { at, dotSpace, type FlatPoint, type SpacePoint } from "../foundation/index.ts";
import type { Joint } from "../joints/index.ts";
import type { FaceEdge, FaceRegion } from "./face-regions.ts";

/** A joint on one face of the tray: its line on both faces laid flat, from its start to its end. */
export interface FaceJoint {
  readonly jointId: string;
  readonly regions: readonly [FaceRegion, FaceRegion];
  readonly lines: readonly [readonly FlatPoint[], readonly FlatPoint[]];
  readonly lengthMm: number;
}

/** Where the given faces meet at joints; seats of fences are no joints here. */
export function faceJoints(regions: readonly FaceRegion[], joints: readonly Joint[]): readonly FaceJoint[] {
  return joints.flatMap((joint): readonly FaceJoint[] => {
    if (joint.kind === "fence seat") return [];
    const find = (partId: string) => regions.find(({ part }) => part.id === partId);
    const [first, second] = [find(joint.partIds[0]), find(joint.partIds[1])];
    if (!first || !second) return [];
    const lines = [lineOn(first, joint, 0), lineOn(second, joint, 1)] as const;
    if (lines.some((line) => line.length < 2)) return [];
    return [{ jointId: joint.id, regions: [first, second], lines, lengthMm: joint.lengthMm }];
  });
}

/** The stretch of a face's edge that lies in the joint: between the places nearest to its ends, the way the joint runs. */
function lineOn({ edges }: FaceRegion, joint: Joint, which: 0 | 1): readonly FlatPoint[] {
  const [from, to] = [at(joint.stations, 0).at, at(joint.stations, -1).at];
  const missMm = ({ space }: FaceEdge) => nearestOn(space, from).awayMm + nearestOn(space, to).awayMm;
  const [edge] = edges
    .filter(({ edgeId, space }) => edgeId === joint.edgeIds[which] && space.length > 1)
    .toSorted((a, b) => missMm(a) - missMm(b));
  if (!edge) return [];
  const [a, b] = [nearestOn(edge.space, from).place, nearestOn(edge.space, to).place];
  const stretch = between(edge.line, Math.min(a, b), Math.max(a, b));
  return a <= b ? stretch : stretch.toReversed();
}

/** The nearest place of a line in space: the number of its stretch, and the share of that. */
function nearestOn(
  line: readonly SpacePoint[],
  point: SpacePoint,
): { readonly place: number; readonly awayMm: number } {
  let best = { place: 0, awayMm: Number.POSITIVE_INFINITY };
  for (let i = 0; i + 1 < line.length; i++) {
    const [a, b] = [at(line, i), at(line, i + 1)];
    const [along, off] = [fromTo(a, b), fromTo(a, point)];
    const square = dotSpace(along, along);
    const share = square === 0 ? 0 : Math.min(1, Math.max(0, dotSpace(off, along) / square));
    const awayMm = Math.hypot(off.x - share * along.x, off.y - share * along.y, off.z - share * along.z);
    if (awayMm < best.awayMm) best = { place: i + share, awayMm };
  }
  return best;
}

const fromTo = (a: SpacePoint, b: SpacePoint): SpacePoint => ({ x: b.x - a.x, y: b.y - a.y, z: b.z - a.z });

function between(line: readonly FlatPoint[], from: number, to: number): readonly FlatPoint[] {
  const pointAt = (place: number): FlatPoint => {
    const i = Math.min(line.length - 2, Math.floor(place));
    const [a, b] = [at(line, i), at(line, i + 1)];
    const share = place - i;
    return { u: a.u + (b.u - a.u) * share, v: a.v + (b.v - a.v) * share };
  };
  const inside = line.filter((_, i) => i > from + 1e-6 && i < to - 1e-6);
  return to - from < 1e-9 ? [] : [pointAt(from), ...inside, pointAt(to)];
}
