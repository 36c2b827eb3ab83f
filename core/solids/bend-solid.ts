import type { Solid, SolidBend } from "./types.ts";

/**
 * The vertices of a solid bent by a share of its full bend: 1 as it stands in the tray, 0 laid flat. At each ruling the
 * turn from the ruling before it is multiplied by the share, which leaves the size of a developable sheet alone all the
 * way, and of a twisted one at both ends; its middle ruling stays where it is. What is not bent stays as it is.
 */
export function bendSolid(solid: Solid, share: number): Float32Array<ArrayBuffer> {
  const { bend } = solid;
  if (!bend || share === 1) return solid.positions;
  const chain = bentChain(bend, share);
  const placed = new Float32Array(solid.positions.length);
  const sign = solid.isImage ? -1 : 1;
  for (let vertex = 0; vertex < bend.stationOf.length; vertex++) {
    const station = bend.stationOf[vertex] ?? 0;
    const local = [0, 1, 2].map((axis) => {
      const laid = bend.flat[3 * vertex + axis] ?? 0;
      return laid + ((bend.bent[3 * vertex + axis] ?? 0) - laid) * share;
    });
    const frame = chain.frames[station];
    const place = chain.places[station];
    if (!frame || !place) continue;
    const [x, y, z] = outOf(frame, [local[0] ?? 0, local[1] ?? 0, local[2] ?? 0]);
    placed[3 * vertex] = place[0] + x;
    placed[3 * vertex + 1] = sign * (place[1] + y);
    placed[3 * vertex + 2] = place[2] + z;
  }
  return placed;
}

type Vector = readonly [number, number, number];
/** Rows u, v, normal. */
type Frame = readonly [Vector, Vector, Vector];

interface Chain {
  readonly frames: readonly Frame[];
  readonly places: readonly Vector[];
}

/** The frames of all rulings and their places, from the held one outward both ways. */
function bentChain(bend: SolidBend, share: number): Chain {
  const count = bend.frames.length / 9;
  const whole = Array.from({ length: count }, (_, i) => frameAt(bend.frames, i));
  const wholePlaces = Array.from({ length: count }, (_, i) => vectorAt(bend.places, i));
  const frames = [...whole];
  const places = [...wholePlaces];
  const step = (from: number, to: number) => {
    const [a, b, held, place] = [whole[from], whole[to], frames[from], places[from]];
    const [p, q] = [wholePlaces[from], wholePlaces[to]];
    if (!a || !b || !held || !place || !p || !q) return;
    const turn = turnBetween(a, b);
    const half = turned(a, scaled(turn, 0.5));
    const flat: Vector = [
      (bend.flatPlaces[2 * to] ?? 0) - (bend.flatPlaces[2 * from] ?? 0),
      (bend.flatPlaces[2 * to + 1] ?? 0) - (bend.flatPlaces[2 * from + 1] ?? 0),
      0,
    ];
    const bent = into(half, [q[0] - p[0], q[1] - p[1], q[2] - p[2]]);
    const way: Vector = [
      flat[0] + (bent[0] - flat[0]) * share,
      flat[1] + (bent[1] - flat[1]) * share,
      bent[2] * share,
    ];
    const out = outOf(turned(held, scaled(turn, share / 2)), way);
    frames[to] = turned(held, scaled(turn, share));
    places[to] = [place[0] + out[0], place[1] + out[1], place[2] + out[2]];
  };
  for (let i = bend.heldStation; i + 1 < count; i++) step(i, i + 1);
  for (let i = bend.heldStation; i > 0; i--) step(i, i - 1);
  return { frames, places };
}

const vectorAt = (list: Float32Array, i: number): Vector => [
  list[3 * i] ?? 0,
  list[3 * i + 1] ?? 0,
  list[3 * i + 2] ?? 0,
];

const frameAt = (list: Float32Array, i: number): Frame => [
  vectorAt(list, 3 * i),
  vectorAt(list, 3 * i + 1),
  vectorAt(list, 3 * i + 2),
];

const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const scaled = (a: Vector, factor: number): Vector => [a[0] * factor, a[1] * factor, a[2] * factor];

/** From space into a frame, and out of it. */
const into = (frame: Frame, a: Vector): Vector => [dot(frame[0], a), dot(frame[1], a), dot(frame[2], a)];
const outOf = ([u, v, n]: Frame, a: Vector): Vector => [
  u[0] * a[0] + v[0] * a[1] + n[0] * a[2],
  u[1] * a[0] + v[1] * a[1] + n[1] * a[2],
  u[2] * a[0] + v[2] * a[1] + n[2] * a[2],
];

/** The turn from one frame to the next as axis × angle in the coordinates of the first; it is small. */
function turnBetween(a: Frame, b: Frame): Vector {
  const [u, v, n] = [into(a, b[0]), into(a, b[1]), into(a, b[2])];
  const axis: Vector = [v[2] - n[1], n[0] - u[2], u[1] - v[0]];
  const sine = Math.sqrt(dot(axis, axis)) / 2;
  const cosine = (u[0] + v[1] + n[2] - 1) / 2;
  const angleRad = Math.atan2(sine, cosine);
  return sine < 1e-12 ? [0, 0, 0] : scaled(axis, angleRad / (2 * sine));
}

/** A frame turned by an axis × angle in its own coordinates (Rodrigues 1840). */
function turned(frame: Frame, turn: Vector): Frame {
  const angleRad = Math.sqrt(dot(turn, turn));
  if (angleRad < 1e-12) return frame;
  const [x, y, z] = scaled(turn, 1 / angleRad);
  const [c, s] = [Math.cos(angleRad), Math.sin(angleRad)];
  const k = 1 - c;
  return [
    outOf(frame, [c + x * x * k, y * x * k + z * s, z * x * k - y * s]),
    outOf(frame, [x * y * k - z * s, c + y * y * k, z * y * k + x * s]),
    outOf(frame, [x * z * k + y * s, y * z * k - x * s, c + z * z * k]),
  ];
}
