import { bracketedRoot, type PlanPoint, type SpacePoint } from "../foundation/index.ts";
import { sweepDirection } from "./ruling-at.ts";
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
  const [out, room] = [new Float64Array(SWEEP_NUMBERS), sweepRoom()];
  const rulingAtS = (sMm: number, interval: number) => {
    sweepRuling(surface, sMm, interval, { out, o: 0, room });
    return planRuling(out, sMm, depthMm);
  };
  const intervals = surface.stretches.map(({ fromMm, toMm, interval }) => ({
    interval,
    from: rulingAtS(fromMm, interval),
    to: rulingAtS(toMm, interval),
  }));
  const ends = ([0, surface.lengthSMm] as const).map((sMm) => planEnd(surface, sMm, depthMm));
  return (point) => {
    let best: RuledPlace | undefined;
    for (const { interval, from, to } of intervals) {
      const [before, after] = [sideOf(from, point), sideOf(to, point)];
      if (before === 0 ? false : before < 0 === after < 0 && after !== 0) continue;
      const sMm = bracketedRoot((s) => sideOf(rulingAtS(s, interval), point), from.sMm, to.sMm);
      const ruling = rulingAtS(sMm, interval);
      const t = partAlong(ruling, point);
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
    return isUpright(surface, best.sMm) ? undefined : best;
  };
}

const outside = (t: number): number => Math.max(0, -t, t - 1);

function planRuling(numbers: Float64Array, sMm: number, depthMm: number): PlanRuling {
  const at = (place: number) => numbers[place] ?? 0;
  return {
    sMm,
    x: at(SWEEP.from) + depthMm * at(SWEEP.normal),
    y: at(SWEEP.from + 1) + depthMm * at(SWEEP.normal + 1),
    dx: at(SWEEP.direction),
    dy: at(SWEEP.direction + 1),
    lengthMm: at(SWEEP.lengthMm),
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

function isUpright(surface: RuledSurface, sMm: number): boolean {
  const within = Math.min(surface.lengthSMm, Math.max(0, sMm));
  return Math.abs(sweepAt(surface, within).normal.z) < UPRIGHT_SINE;
}
