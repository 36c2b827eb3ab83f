import { at, type PlanPoint } from "../foundation/index.ts";
import type { BendLine, FoldedWing, FoldingReason, FoldingStep } from "./types.ts";

/**
 * In which order the bends are made. A wing turned by more than a right angle leans over its base; a bend under it
 * must come before, while the brake's bar still reaches it. Otherwise shorter flanges first, then shorter bends
 * (common practice: what is folded stays small as long as possible), then as drawn. A wing and its image are one step.
 */
export function foldingOrder(
  bends: readonly BendLine[],
  wings: readonly FoldedWing[],
): readonly FoldingStep[] {
  const waiting = groupImages(bends, wings).toSorted(
    (a, b) => compare(a.flangeMm, b.flangeMm) || compare(a.bendMm, b.bendMm) || a.place - b.place,
  );
  const steps: FoldingStep[] = [];
  const done: Group[] = [];
  while (waiting.length > 0) {
    const next = waiting.find(
      (group) => !waiting.some((other) => other !== group && leansOver(group, other)),
    );
    const group = next ?? at(waiting, 0);
    steps.push({
      bendIds: group.bends.map(({ id }) => id),
      name: group.name,
      ...reasonOf(group, waiting, done),
      blockedByNames: namesOf(done.filter((other) => leansOver(other, group))),
    });
    done.push(group);
    waiting.splice(waiting.indexOf(group), 1);
  }
  return steps;
}

/** A wing with its image. */
interface Group {
  readonly name: string;
  readonly place: number;
  readonly flangeMm: number;
  readonly bendMm: number;
  readonly bends: readonly BendLine[];
  readonly wings: readonly FoldedWing[];
}

/** Lengths that differ by less are one, so that rounding decides no order. */
const SAME_MM = 1e-6;

const compare = (a: number, b: number): number => (Math.abs(a - b) < SAME_MM ? 0 : a - b);

function groupImages(bends: readonly BendLine[], wings: readonly FoldedWing[]): readonly Group[] {
  const wingIds = [...new Set(bends.map(({ wingId }) => wingId))];
  return wingIds.map((wingId, place): Group => {
    const own = bends.filter((bend) => bend.wingId === wingId);
    const first = at(own, 0);
    return {
      name: own.length === 1 ? first.name : first.name.replace(/, (right|left)$/, ", both sides"),
      place,
      flangeMm: first.figures.flangeMm,
      bendMm: Math.max(...own.map(({ lengthMm }) => lengthMm)),
      bends: own,
      wings: wings.filter((wing) => wing.wingId === wingId),
    };
  });
}

function reasonOf(
  group: Group,
  waiting: readonly Group[],
  done: readonly Group[],
): Pick<FoldingStep, "reason" | "reasonNames"> {
  const because = (reason: FoldingReason, groups: readonly Group[] = []) => ({
    reason,
    reasonNames: namesOf(groups),
  });
  const under = done.filter((other) => leansOver(group, other));
  if (under.length > 0) return because("leans over", under);
  const others = waiting.filter((other) => other !== group);
  const [next] = others;
  if (!next) return because(done.length === 0 ? "only bend" : "last left");
  if (waiting[0] !== group) {
    return because(
      "before a leaning wing",
      others.filter((other) => leansOver(other, group)),
    );
  }
  if (compare(group.flangeMm, next.flangeMm) !== 0) return because("shorter flange");
  return because(compare(group.bendMm, next.bendMm) === 0 ? "as drawn" : "shorter bend");
}

const namesOf = (groups: readonly Group[]): readonly string[] => groups.map(({ name }) => name);

/** Whether a folded wing hangs over a bend line of another wing, in plan. */
const leansOver = (group: Group, other: Group): boolean =>
  group.wings.some((wing) => {
    const bend = group.bends.find(({ id }) => id === wing.id);
    if (!bend || bend.figures.angleRad <= Math.PI / 2) return false;
    const hull = [...wing.airFace, ...wing.upperFace];
    return other.bends.some(({ baseTangent: [from, to] }) =>
      meetsHull({ x: from.u, y: from.v }, { x: to.u, y: to.v }, hull),
    );
  });

/**
 * Whether a segment meets the convex hull of points in plan: some axis would part them otherwise, and it suffices to
 * try the segment's own normal and the normals of all lines through two points of the hull.
 */
function meetsHull(from: PlanPoint, to: PlanPoint, hull: readonly PlanPoint[]): boolean {
  const axes: PlanPoint[] = [normalOf(from, to)];
  for (const [i, a] of hull.entries()) for (const b of hull.slice(i + 1)) axes.push(normalOf(a, b));
  return axes.every((axis) => {
    if (Math.hypot(axis.x, axis.y) < SAME_MM) return true;
    const along = (p: PlanPoint) => p.x * axis.x + p.y * axis.y;
    const ends = [along(from), along(to)];
    const points = hull.map(along);
    return Math.max(...points) > Math.min(...ends) && Math.min(...points) < Math.max(...ends);
  });
}

const normalOf = (a: PlanPoint, b: PlanPoint): PlanPoint => ({ x: b.y - a.y, y: a.x - b.x });
