import { at, COINCIDENT_POINTS_MM, cross2, type Vec2 } from "../foundation/index.ts";
import { besideAt, type Course, directionAt, SMOOTH_RAD } from "./line-courses.ts";
import type { Corner } from "./offset-corners.ts";
import type { PlanNode } from "./schema.ts";

export function nodesBeside(
  nodes: readonly PlanNode[],
  courses: readonly Course[],
  corners: readonly Corner[],
  { offMm, parts }: { readonly offMm: number; readonly parts: number },
): readonly PlanNode[] {
  const taken = new Set(nodes.map(({ id }) => id));
  let count = 0;
  const freshId = () => {
    for (;;) {
      count++;
      if (!taken.has(`r${count}`)) return `r${count}`;
    }
  };
  return nodes.flatMap((node, index): readonly PlanNode[] => {
    const corner = at(corners, index);
    const before = courses.at(index - 1);
    const arrives = index === 0 && courses.length < nodes.length ? undefined : before;
    const after = courses[index];
    const last = corner.points.length - 1;
    // The node's own id stays where its outgoing segment begins, so that names and references stay with it.
    const placed = corner.points.map((point, step): PlanNode => {
      const isOwn = step === last;
      const isFirst = step === 0;
      const { knotSpacingMm, radiusMm, tangentInRad, tangentOutRad, ...rest } = node;
      const { edgeName, ...unnamed } = rest;
      const isRounded = last === 0 && arrives?.kind === "line" && after?.kind === "line";
      return {
        ...(isOwn ? rest : unnamed),
        id: isOwn ? node.id : freshId(),
        x: point[0],
        y: point[1],
        next: isOwn ? node.next : "line",
        ...(isRounded ? radiusBeside(radiusMm, arrives, after, offMm) : {}),
        ...(isFirst && arrives?.kind === "cubic" && needsAngles(corner, arrives, after)
          ? { meets: "corner", tangentInRad: angleOf(directionAt(arrives, corner.endsAt)) }
          : {}),
        ...(isOwn && after?.kind === "cubic" && needsAngles(corner, arrives, after)
          ? { meets: "corner", tangentOutRad: angleOf(directionAt(after, corner.beginsAt)) }
          : {}),
      };
    });
    if (after?.kind !== "cubic") return placed;
    const endsAt = at(corners, (index + 1) % corners.length).endsAt;
    const between = Array.from({ length: parts - 1 }, (_, step): PlanNode => {
      const t = corner.beginsAt + ((endsAt - corner.beginsAt) * (step + 1)) / parts;
      const [x, y] = besideAt(after, t, offMm);
      return { kind: "node", id: freshId(), x, y, next: "curve" };
    });
    return [...placed, ...between];
  });
}

/** A curve's end keeps its typed direction wherever the curve does not go on smoothly into the next. */
function needsAngles(corner: Corner, arrives: Course | undefined, after: Course | undefined): boolean {
  if (!arrives || !after || corner.points.length > 1) return true;
  return Math.abs(cross2(directionAt(arrives, 1), directionAt(after, 0))) >= SMOOTH_RAD;
}

const angleOf = ([x, y]: Vec2): number => Math.atan2(y, x);

/** The radius grows on the outside of its bend and shrinks on the inside, down to a sharp corner. */
function radiusBeside(
  radiusMm: number | undefined,
  before: Course,
  after: Course,
  offMm: number,
): { readonly radiusMm?: number } {
  if (radiusMm === undefined) return {};
  const turn = Math.sign(cross2(directionAt(before, 1), directionAt(after, 0)));
  const besideMm = radiusMm - turn * offMm;
  return besideMm > COINCIDENT_POINTS_MM ? { radiusMm: besideMm } : {};
}
