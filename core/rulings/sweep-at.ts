import { addSpace, at, crossSpace, dotSpace, type SpacePoint } from "../foundation/index.ts";
import { type CornerSide, EDGE_NUMBERS } from "./evaluate-edge.ts";
import { intervalAt, pairingAt } from "./pairing-at.ts";
import { placeOnEdge } from "./place-on-edge.ts";
import type { EdgePlace, PairedEdges, Sweep } from "./types.ts";

/** A tangent nearer than this to its ruling, rad, fixes no plane. */
const ALONG_RULING_RAD = 1e-7;
/** Edges nearer than this meet: the ruling there has the direction that its neighbours tend to. */
const EDGES_MEET_MM = 1e-7;

/** Room for what is written over at each ruling: who asks for many passes the same. */
export const sweepRoom = (): Float64Array => new Float64Array(EDGE_NUMBERS);

/** The ruling at s (kept within the ends), inside the interval named, and its motion. */
export function sweepAt(
  surface: PairedEdges,
  sMm: number,
  interval = intervalAt(surface, sMm),
  room: Float64Array = sweepRoom(),
): Sweep {
  const [from, to] = [at(surface.rulings, interval), at(surface.rulings, interval + 1)];
  const side: CornerSide = 2 * sMm < from.sMm + to.sMm ? "after" : "before";
  const { firstMm, secondMm, firstRate } = pairingAt(surface, interval, sMm);
  const first = placeOnEdge(surface.first, firstMm, side, room);
  const second = placeOnEdge(surface.second, secondMm, side, room);
  const firstVelocity = times(first.tangent, firstRate);
  const secondVelocity = times(second.tangent, 2 - firstRate);
  const across = addSpace(second.point, first.point, -1);
  const opening = addSpace(secondVelocity, firstVelocity, -1);
  const lengthMm = size(across);
  const direction = lengthMm > EDGES_MEET_MM ? times(across, 1 / lengthMm) : limit(opening, side);
  const rate = dotSpace(opening, direction);
  const turn = times(addSpace(opening, direction, -rate), lengthMm > EDGES_MEET_MM ? 1 / lengthMm : 0);
  const motion = { direction, turn, side: surface.side };
  const fan = from.fanAfter;
  const one = fan === "first" ? undefined : normalOf(first, firstRate, motion);
  const two = fan === "second" ? undefined : normalOf(second, 2 - firstRate, motion);
  return {
    firstMm,
    secondMm,
    fan,
    first,
    second,
    firstVelocity,
    secondVelocity,
    direction,
    lengthMm,
    ...middleNormal(one, two, motion),
  };
}

interface Motion {
  readonly direction: SpacePoint;
  readonly turn: SpacePoint;
  readonly side: 1 | -1;
}

interface MovingNormal {
  readonly normal: SpacePoint;
  readonly velocity: SpacePoint;
}

/** The normal of the plane of tangent and ruling at one end, and its change by s. */
function normalOf(
  { tangent, curvature }: EdgePlace,
  rate: number,
  { direction, turn, side }: Motion,
): MovingNormal | undefined {
  const square = times(crossSpace(tangent, direction), side);
  const sine = size(square);
  if (sine < ALONG_RULING_RAD) return undefined;
  const normal = times(square, 1 / sine);
  const change = addSpace(times(crossSpace(curvature, direction), rate), crossSpace(tangent, turn));
  const raw = times(change, side);
  return { normal, velocity: times(addSpace(raw, normal, -dotSpace(raw, normal)), 1 / sine) };
}

function middleNormal(one: MovingNormal | undefined, two: MovingNormal | undefined, motion: Motion) {
  const a = one ?? two ?? { normal: anyNormal(motion), velocity: { x: 0, y: 0, z: 0 } };
  const b = two ?? a;
  const sum = addSpace(a.normal, b.normal);
  const length = size(sum);
  if (length < ALONG_RULING_RAD)
    return { firstNormal: a.normal, secondNormal: b.normal, normal: a.normal, normalVelocity: a.velocity };
  const normal = times(sum, 1 / length);
  const change = addSpace(a.velocity, b.velocity);
  const normalVelocity = times(addSpace(change, normal, -dotSpace(change, normal)), 1 / length);
  return { firstNormal: a.normal, secondNormal: b.normal, normal, normalVelocity };
}

/** Where both edges run along the ruling the sheet has no plane: the most upward one serves. */
function anyNormal({ direction }: Motion): SpacePoint {
  const up = Math.abs(direction.z) < 0.9 ? { x: 0, y: 0, z: 1 } : { x: 1, y: 0, z: 0 };
  const level = addSpace(up, direction, -dotSpace(up, direction));
  return times(level, 1 / size(level));
}

/** Direction of a ruling of no length: edges that part open along their difference, edges that close against it. */
function limit(opening: SpacePoint, side: CornerSide): SpacePoint {
  const length = size(opening);
  return length === 0 ? { x: 0, y: 1, z: 0 } : times(opening, (side === "after" ? 1 : -1) / length);
}

const times = (a: SpacePoint, factor: number): SpacePoint => ({
  x: a.x * factor,
  y: a.y * factor,
  z: a.z * factor,
});
const size = (a: SpacePoint): number => Math.sqrt(a.x * a.x + a.y * a.y + a.z * a.z);
