import { at } from "../foundation/index.ts";
import type { Rest } from "./resting-face.ts";
import { heightOnTop } from "./simplify-top.ts";

/** A first look along a rib every so often, mm: shorter than any sheet is wide. */
const LOOK_STEP_MM = 25;
/** Straight joining of the sampled top keeps within this, mm; a fifth of what the design allows for a rib's top. */
const TOP_MISS_MM = 0.004;
/** Samples are not set closer than this, mm. */
const CLOSEST_MM = 0.2;
/** The border of a sheet is found to this, mm: a tenth of what the design allows for a rib's top. */
const BORDER_MM = 1e-4;
/** A gap in the foam that a rib runs through: the opening of a folded joint on its inner face, mm. */
const BRIDGED_GAP_MM = 20;

/** One point of a rib's top: position along the rib, height above ground, and what rests there. */
export interface TopPoint extends Rest {
  readonly atMm: number;
}

/**
 * The stretches along a line where foam rests on it, sampled so that straight joining misses by less than
 * 0.004 mm; each border between parts is there twice, once for each part. Gaps up to 20 mm are run through.
 */
export function topStretches(
  restAt: (alongMm: number) => Rest | undefined,
  fromMm: number,
  toMm: number,
): TopPoint[][] {
  const look = (atMm: number): Look => {
    const rest = restAt(atMm);
    return rest === undefined ? { atMm } : { atMm, point: { atMm, ...rest } };
  };
  const steps = Math.max(2, Math.ceil((toMm - fromMm) / LOOK_STEP_MM));
  const points: TopPoint[] = [];
  let before = look(fromMm);
  if (before.point !== undefined) points.push(before.point);
  for (let i = 1; i <= steps; i++) {
    const after = look(fromMm + ((toMm - fromMm) * i) / steps);
    for (let guard = 0; guard < 8 && partOf(before) !== partOf(after); guard++) {
      const [last, next] = borderBetween(before, after, look);
      refine(points, before, last, look);
      if (next.point !== undefined) points.push(next.point);
      before = next;
    }
    refine(points, before, after, look);
    before = after;
  }
  return splitAtGaps(points, restAt);
}

/** A look at one place: a point where foam rests there. */
interface Look {
  readonly atMm: number;
  readonly point?: TopPoint;
}

const partOf = ({ point }: Look): string | undefined => point?.partId;

/** The last place that is like the first look, and the next one, which is not. */
function borderBetween(before: Look, after: Look, look: (atMm: number) => Look): [Look, Look] {
  let last = before;
  let next = after;
  while (next.atMm - last.atMm > BORDER_MM) {
    const middle = look((last.atMm + next.atMm) / 2);
    if (partOf(middle) === partOf(before)) last = middle;
    else next = middle;
  }
  return [last, next];
}

/** Adds the points after `from` up to `to`, as close as the curve of the top needs them. */
function refine(points: TopPoint[], from: Look, to: Look, look: (atMm: number) => Look): void {
  if (from.point === undefined || to.point === undefined) return;
  if (to.atMm - from.atMm > CLOSEST_MM) {
    const middle = look((from.atMm + to.atMm) / 2);
    const straight = (from.point.zMm + to.point.zMm) / 2;
    if (middle.point !== undefined && Math.abs(middle.point.zMm - straight) > TOP_MISS_MM) {
      refine(points, from, middle, look);
      refine(points, middle, to, look);
      return;
    }
  }
  if (to.atMm > from.atMm) points.push(to.point);
}

function splitAtGaps(
  points: readonly TopPoint[],
  restAt: (alongMm: number) => Rest | undefined,
): TopPoint[][] {
  const stretches: TopPoint[][] = [];
  for (const [i, point] of points.entries()) {
    const before = i === 0 ? undefined : at(points, i - 1);
    const isGap =
      before === undefined ||
      (point.atMm - before.atMm > BRIDGED_GAP_MM && restAt((point.atMm + before.atMm) / 2) === undefined);
    if (isGap) stretches.push([point]);
    else at(stretches, -1).push(point);
  }
  return stretches.filter((stretch) => at(stretch, -1).atMm - at(stretch, 0).atMm > 1);
}

/** The points of a top between two places along it, with one on each of them. */
export function topBetween(
  points: readonly TopPoint[],
  [fromMm, toMm]: readonly [number, number],
): TopPoint[] {
  const line = points.map(({ atMm, zMm }) => ({ u: atMm, v: zMm }));
  const inside = points.filter(({ atMm }) => atMm > fromMm && atMm < toMm);
  const near = [inside[0] ?? at(points, 0), inside[inside.length - 1] ?? at(points, -1)] as const;
  const endAt = (atMm: number, { partId }: TopPoint): TopPoint => ({
    atMm,
    zMm: heightOnTop(line, atMm),
    partId,
  });
  return [endAt(fromMm, near[0]), ...inside, endAt(toMm, near[1])];
}
