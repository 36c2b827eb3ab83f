import { at, type PlanPoint, type SpacePoint } from "../foundation/index.ts";
import { intervalAt } from "./pairing-at.ts";
import { pointOnRuled, sweepDirection } from "./ruling-at.ts";
import { sweepAt } from "./sweep-at.ts";
import { SWEEP, SWEEP_NUMBERS, sweepRoom, sweepRuling } from "./sweep-ruling.ts";
import type { RuledPlace, RuledSurface } from "./types.ts";

/** A ruling in plan at a depth. */
interface PlanRuling {
  readonly sMm: number;
  readonly x: number;
  readonly y: number;
  /** From first to second end. */
  readonly dx: number;
  readonly dy: number;
  readonly lengthMm: number;
}

/** The sheet beyond its first or last ruling: flat, so a plan point is two linear equations. */
interface PlanEnd {
  readonly ruling: PlanRuling;
  readonly wx: number;
  readonly wy: number;
}

/** A sheet whose normal rises less than this from level is upright: plan says nothing about places on it. */
const UPRIGHT_SINE = 1e-6;
/** A place this little outside an edge, relative to the ruling, is on it. */
const ON_EDGE = 1e-9;

/** A place of the sheet over a plan point, its height, and the inward normal there. */
export interface FaceUnder extends RuledPlace {
  readonly z: number;
  readonly normal: SpacePoint;
}

/**
 * For many look-ups: the place of the sheet at a depth that lies over or under a plan point. "within" the edges and end
 * rulings only; "endless" also on rulings drawn out beyond the edges, and on the flat beyond the first and last ruling.
 * Undefined where there is none, and where the sheet is upright. Of several the one nearest to between the edges.
 */
export function placeUnder(
  surface: RuledSurface,
  depthMm: number,
  reach: "within" | "endless" = "within",
): (point: PlanPoint) => RuledPlace | undefined {
  const find = faceUnder(surface, depthMm, reach);
  return (point) => {
    const face = find(point);
    return face && { sMm: face.sMm, t: face.t };
  };
}

/** As `placeUnder`, with height and normal. */
export function faceUnder(
  surface: RuledSurface,
  depthMm: number,
  reach: "within" | "endless" = "within",
): (point: PlanPoint) => FaceUnder | undefined {
  const [out, room] = [new Float64Array(SWEEP_NUMBERS), sweepRoom()];
  const rulingAtS = (sMm: number, interval: number) => {
    sweepRuling(surface, sMm, interval, { out, o: 0, room });
    return planRuling(out, sMm, depthMm);
  };
  // Many faces are made ready and never asked.
  let ready: readonly PlanInterval[] | undefined;
  const intervalsOf = () =>
    surface.stretches.map(({ fromMm, toMm, interval }): PlanInterval => {
      const [from, to] = [rulingAtS(fromMm, interval), rulingAtS(toMm, interval)];
      return { interval, from, to, box: boxAround(from, to) };
    });
  const faceAt = ({ sMm, t }: RuledPlace): FaceUnder | undefined => {
    const within = Math.min(surface.lengthSMm, Math.max(0, sMm));
    sweepRuling(surface, within, intervalAt(surface, within), { out, o: 0, room });
    const n = (place: number) => out[place] ?? 0;
    const normal = { x: n(SWEEP.normal), y: n(SWEEP.normal + 1), z: n(SWEEP.normal + 2) };
    if (Math.abs(normal.z) < UPRIGHT_SINE) return undefined;
    const z =
      within === sMm
        ? n(SWEEP.from + 2) + t * n(SWEEP.lengthMm) * n(SWEEP.direction + 2) + depthMm * normal.z
        : pointOnRuled(surface, { sMm, t }, depthMm).z;
    return { sMm, t, z, normal };
  };
  const ends = ([0, surface.lengthSMm] as const).map((sMm) => planEnd(surface, sMm, depthMm));
  return (point) => {
    let best: RuledPlace | undefined;
    ready ??= intervalsOf();
    for (const { interval, from, to, box } of ready) {
      if (reach === "within" && !isInBox(box, point)) continue;
      const [before, after] = [sideOf(from, point), sideOf(to, point)];
      if (before === 0 ? false : before < 0 === after < 0 && after !== 0) continue;
      const sMm = sweepThrough({ from, to, before, after }, (s) => {
        sweepRuling(surface, s, interval, { out, o: 0, room });
        return sideOfSwept(out, depthMm, point);
      });
      const t = partAlong(rulingAtS(sMm, interval), point);
      if (t === undefined || (best !== undefined && outside(best.t) <= outside(t))) continue;
      best = { sMm, t };
    }
    if (reach === "endless" && (best === undefined || outside(best.t) > 0)) {
      const beyond = ends
        .map((end, index) => placeBeyond(end, point, index === 0))
        .find((place) => place !== undefined);
      if (beyond !== undefined && (best === undefined || outside(beyond.t) < outside(best.t))) best = beyond;
    }
    if (best === undefined || (reach === "within" && outside(best.t) > ON_EDGE)) return undefined;
    return faceAt(best);
  };
}

/** Rulings between two stops in plan, and a box that holds them all. */
interface PlanInterval {
  readonly interval: number;
  readonly from: PlanRuling;
  readonly to: PlanRuling;
  readonly box: readonly [leastX: number, leastY: number, mostX: number, mostY: number];
}

/** Rulings between two stops leave the hull of both by less than this share of its size. */
const BULGE = 0.25;

function boxAround(from: PlanRuling, to: PlanRuling): PlanInterval["box"] {
  const xs = [from, to].flatMap(({ x, dx, lengthMm }) => [x, x + dx * lengthMm]);
  const ys = [from, to].flatMap(({ y, dy, lengthMm }) => [y, y + dy * lengthMm]);
  const stepMm = Math.max(
    Math.hypot(at(xs, 2) - at(xs, 0), at(ys, 2) - at(ys, 0)),
    Math.hypot(at(xs, 3) - at(xs, 1), at(ys, 3) - at(ys, 1)),
  );
  const spareMm = BULGE * stepMm + 1e-3;
  return [
    Math.min(...xs) - spareMm,
    Math.min(...ys) - spareMm,
    Math.max(...xs) + spareMm,
    Math.max(...ys) + spareMm,
  ];
}

const isInBox = ([leastX, leastY, mostX, mostY]: PlanInterval["box"], { x, y }: PlanPoint): boolean =>
  x >= leastX && x <= mostX && y >= leastY && y <= mostY;

/** A ruling that misses the point by less than this runs through it, mm. */
const THROUGH_MM = 1e-10;
const MOST_TRIES = 60;

/** s of the ruling through a point between two on whose sides it lies: secants, halved where they stick (Illinois). */
function sweepThrough(
  {
    from,
    to,
    before,
    after,
  }: { readonly from: PlanRuling; readonly to: PlanRuling; readonly before: number; readonly after: number },
  sideAt: (sMm: number) => number,
): number {
  let [low, high, fLow, fHigh] = [from.sMm, to.sMm, before, after];
  if (fLow === 0) return low;
  if (fHigh === 0) return high;
  let sMm = low;
  for (let i = 0; i < MOST_TRIES; i++) {
    sMm = high - (fHigh * (high - low)) / (fHigh - fLow);
    const side = sideAt(sMm);
    if (Math.abs(side) <= THROUGH_MM || high - low <= THROUGH_MM) return sMm;
    if (side < 0 === fHigh < 0) {
      high = sMm;
      fHigh = side;
      fLow /= 2;
    } else {
      low = sMm;
      fLow = side;
      fHigh /= 2;
    }
  }
  return sMm;
}

/** As `sideOf`, straight from the numbers of a swept ruling: the inmost step, so it makes no objects. */
function sideOfSwept(numbers: Float64Array, depthMm: number, { x, y }: PlanPoint): number {
  const [dx, dy] = [numbers[SWEEP.direction] ?? 0, numbers[SWEEP.direction + 1] ?? 0];
  const fromX = (numbers[SWEEP.from] ?? 0) + depthMm * (numbers[SWEEP.normal] ?? 0);
  const fromY = (numbers[SWEEP.from + 1] ?? 0) + depthMm * (numbers[SWEEP.normal + 1] ?? 0);
  return dx * (y - fromY) - dy * (x - fromX);
}

const outside = (t: number): number => Math.max(0, -t, t - 1);

function planRuling(numbers: Float64Array, sMm: number, depthMm: number): PlanRuling {
  const n = (place: number) => numbers[place] ?? 0;
  return {
    sMm,
    x: n(SWEEP.from) + depthMm * n(SWEEP.normal),
    y: n(SWEEP.from + 1) + depthMm * n(SWEEP.normal + 1),
    dx: n(SWEEP.direction),
    dy: n(SWEEP.direction + 1),
    lengthMm: n(SWEEP.lengthMm),
  };
}

const sideOf = ({ x, y, dx, dy }: PlanRuling, point: PlanPoint): number =>
  dx * (point.y - y) - dy * (point.x - x);

function partAlong({ x, y, dx, dy, lengthMm }: PlanRuling, point: PlanPoint): number | undefined {
  const square = dx * dx + dy * dy;
  if (square < UPRIGHT_SINE * UPRIGHT_SINE || lengthMm === 0) return undefined;
  return (dx * (point.x - x) + dy * (point.y - y)) / (square * lengthMm);
}

function planEnd(surface: RuledSurface, sMm: number, depthMm: number): PlanEnd {
  const sweep = sweepAt(surface, sMm);
  const onward: SpacePoint = sweepDirection(surface, sweep);
  return { ruling: planRuling(sweep.numbers, sMm, depthMm), wx: onward.x, wy: onward.y };
}

function placeBeyond(
  { ruling, wx, wy }: PlanEnd,
  point: PlanPoint,
  isStart: boolean,
): RuledPlace | undefined {
  const { x, y, dx, dy, lengthMm, sMm } = ruling;
  const area = dx * wy - dy * wx;
  if (Math.abs(area) < UPRIGHT_SINE || lengthMm === 0) return undefined;
  const [px, py] = [point.x - x, point.y - y];
  const along = (px * wy - py * wx) / area;
  const onward = (dx * py - dy * px) / area;
  return (isStart ? onward < 0 : onward > 0) ? { sMm: sMm + onward, t: along / lengthMm } : undefined;
}
