import { pointOnPiece } from "../curves/index.ts";
import { at, distance2, type Vec2 } from "../foundation/index.ts";
import { pointOnRuled, type RuledPlace, type RuledSurface, rulingAt } from "../rulings/index.ts";
import type { CutRun, WallRun } from "./cut-ruled.ts";
import type { BorderRun } from "./ruled-border.ts";
import type { WallFinder, WallKind } from "./ruled-walls.ts";

/** A run between the corners where the neutral fibre has them. */
export type MetRun =
  | { readonly border: BorderRun; readonly wall?: never }
  | { readonly wall: WallRun; readonly border?: never };

/** What corners are met on. */
export interface MeetingGround {
  readonly surface: RuledSurface;
  readonly neutralMm: number;
  readonly finders: (kind: WallKind) => WallFinder;
}

/** Ends of walls may lie past those of their plan curves by this much, by parameter: cutting finds them that well. */
const PAST_END = 1e-6;
/** Places along the sweep and along the ruling nearer than this are one. */
const SAME_PLACE = 1e-7;

/**
 * The runs of a loop with their corners moved to where the edges meet on the neutral fibre, exactly. Undefined where a
 * corner moves off its edges: then the loop has other corners there.
 */
export function meetOnRuled(ground: MeetingGround, runs: readonly CutRun[]): readonly MetRun[] | undefined {
  if (runs.length === 1) return runs;
  const ends = runs.map((run, i) => cornerOf(ground, run, at(runs, (i + 1) % runs.length)));
  const met: MetRun[] = [];
  for (const [i, run] of runs.entries()) {
    const [start, end] = [ends[(i + runs.length - 1) % runs.length], ends[i]];
    if (!start || !end) return undefined;
    const bounded = run.border
      ? borderBetween(run.border, start.place, end.place)
      : wallBetween(run.wall, start.after, end.before);
    if (!bounded) return undefined;
    met.push(bounded);
  }
  return met;
}

function borderBetween(
  border: BorderRun,
  start: RuledPlace | undefined,
  end: RuledPlace | undefined,
): MetRun | undefined {
  const isSide = border.from.t === border.to.t;
  const onBorder = (place: RuledPlace | undefined, own: RuledPlace): RuledPlace =>
    place ? (isSide ? { sMm: place.sMm, t: own.t } : { sMm: own.sMm, t: place.t }) : own;
  const [from, to] = [onBorder(start, border.from), onBorder(end, border.to)];
  const along = ({ sMm, t }: RuledPlace) => (isSide ? sMm : t);
  const way = Math.sign(along(border.to) - along(border.from));
  const steps = [along(from) - along(border.from), along(to) - along(from), along(border.to) - along(to)];
  return steps.every((step) => way * step > -SAME_PLACE) ? { border: { ...border, from, to } } : undefined;
}

function wallBetween(wall: WallRun, from: number | undefined, to: number | undefined): MetRun | undefined {
  const [start, end] = [kept(from ?? wall.from), kept(to ?? wall.to)];
  if (start === undefined || end === undefined) return undefined;
  return (end - start) * (wall.to - wall.from) > 0 ? { wall: { ...wall, from: start, to: end } } : undefined;
}

const kept = (t: number): number | undefined =>
  t < -PAST_END || t > 1 + PAST_END ? undefined : Math.min(1, Math.max(0, t));

/** Where two runs meet: the place in the chart where one is a border, and the parameters of those that are walls. */
interface Corner {
  readonly place?: RuledPlace;
  readonly before?: number;
  readonly after?: number;
}

function cornerOf(ground: MeetingGround, before: CutRun, after: CutRun): Corner | undefined {
  if (before.border) {
    if (after.border) return {};
    const t = onBorder(ground, after.wall, after.wall.from, before.border);
    return t && { place: t.place, after: t.parameter };
  }
  if (after.border) {
    const t = onBorder(ground, before.wall, before.wall.to, after.border);
    return t && { place: t.place, before: t.parameter };
  }
  return betweenWalls(ground, before.wall, after.wall);
}

/** Where a wall meets a side or a closing edge of the strip. */
function onBorder(
  { surface, finders }: MeetingGround,
  { drawn, kind }: WallRun,
  near: number,
  { from, to }: BorderRun,
): { readonly place: RuledPlace; readonly parameter: number } | undefined {
  const find = finders(kind);
  const placeAt = (t: number): RuledPlace | undefined => {
    const [x, y] = pointOnPiece(drawn.piece, t);
    return find({ x, y });
  };
  const isSide = from.t === to.t;
  const lengthMm = rulingAt(surface, surface.lengthSMm / 2).lengthMm || 1;
  const missMm = (t: number): number => {
    const place = placeAt(t);
    if (!place) return Number.NaN;
    return isSide ? (place.t - from.t) * lengthMm : place.sMm - from.sMm;
  };
  const parameter = rootNear(missMm, near);
  const place = parameter === undefined ? undefined : placeAt(parameter);
  return place && parameter !== undefined ? { place, parameter } : undefined;
}

const STEP = 1e-6;
const MET_MM = 1e-11;
const NEAR_ENOUGH_MM = 1e-8;

/** A root by the secant, begun where it is expected. */
function rootNear(f: (t: number) => number, start: number): number | undefined {
  let [a, b] = [start < 0.5 ? start + STEP : start - STEP, start];
  let [fa, fb] = [f(a), f(b)];
  for (let i = 0; i < 40 && Math.abs(fb) > MET_MM; i++) {
    const next = b - (fb * (b - a)) / (fb - fa);
    if (!Number.isFinite(next) || Math.abs(next - start) > 1) break;
    [a, fa] = [b, fb];
    [b, fb] = [next, f(next)];
  }
  return Math.abs(fb) < NEAR_ENOUGH_MM ? b : undefined;
}

/** Walls that follow one another in one opening meet where they do in plan; others where their edges at the neutral do. */
function betweenWalls(ground: MeetingGround, before: WallRun, after: WallRun): Corner | undefined {
  const [a, b] = [pointOnPiece(before.drawn.piece, before.to), pointOnPiece(after.drawn.piece, after.from)];
  const atEnds = [before.to, after.from].every((t) => Math.min(Math.abs(t), Math.abs(t - 1)) < STEP);
  if (before.kind === after.kind && distance2(a, b) < NEAR_ENOUGH_MM && atEnds)
    return { before: Math.round(before.to), after: Math.round(after.from) };
  const [first, second] = [planOf(ground, before), planOf(ground, after)];
  let [s, t] = [before.to, after.from];
  for (let i = 0; i < 30; i++) {
    const [p, q] = [first(s), second(t)];
    const gap: Vec2 = [q[0] - p[0], q[1] - p[1]];
    if (Math.hypot(gap[0], gap[1]) < MET_MM) break;
    const [u, v] = [slope(first, s), slope(second, t)];
    const size = u[0] * v[1] - u[1] * v[0];
    s += (gap[0] * v[1] - gap[1] * v[0]) / size;
    t += (gap[0] * u[1] - gap[1] * u[0]) / size;
    if (!(Math.abs(s - before.to) <= 1 && Math.abs(t - after.from) <= 1)) return undefined;
  }
  return distance2(first(s), second(t)) < NEAR_ENOUGH_MM ? { before: s, after: t } : undefined;
}

/** A wall's edge on the neutral fibre, in plan. */
function planOf({ surface, neutralMm, finders }: MeetingGround, { drawn, kind }: WallRun) {
  return (t: number): Vec2 => {
    const [x, y] = pointOnPiece(drawn.piece, t);
    if (kind === "plumb") return [x, y];
    const place = finders(kind)({ x, y });
    if (!place) return [Number.NaN, Number.NaN];
    const over = pointOnRuled(surface, place, neutralMm);
    return [over.x, over.y];
  };
}

function slope(curve: (t: number) => Vec2, t: number): Vec2 {
  const [a, b] = [curve(t - STEP), curve(t + STEP)];
  return [(b[0] - a[0]) / (2 * STEP), (b[1] - a[1]) / (2 * STEP)];
}
