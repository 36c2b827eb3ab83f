import { COINCIDENT_POINTS_MM } from "../foundation/index.ts";
import { compileItems } from "./compile-items.ts";
import { freshIds, type JoinRefusal } from "./joined-item.ts";
import type { Fence, PlanNode, Project, SideNode } from "./schema.ts";
import { turnSideRound } from "./turn-round.ts";

/** Two fences end to end, and which of them is turned round for it. */
export interface EndToEnd {
  readonly front: readonly PlanNode[];
  readonly rear: readonly PlanNode[];
  readonly isFrontTurned: boolean;
  readonly isRearTurned: boolean;
}

/** Lower edges that meet at heights nearer than this are one, mm: less than a knife follows. */
const SAME_HEIGHT_MM = 0.1;

export function joinLowerEdges(
  project: Project,
  first: Fence,
  second: Fence,
  placed: EndToEnd & { readonly gapMm: number },
): Fence["lowerEdge"] | JoinRefusal {
  const [a, b] = [first.lowerEdge, second.lowerEdge];
  if (a.kind === "depths" && b.kind === "depths") {
    const lines = compileItems(project);
    const lengthA = lines.get(first.id)?.curve?.lengthMm;
    const lengthB = lines.get(second.id)?.curve?.lengthMm;
    if (lengthA === undefined || lengthB === undefined) return "different lower edges";
    const front = placed.isFrontTurned ? fromOtherEnd(a.nodes, lengthA) : a.nodes;
    const rear = placed.isRearTurned ? fromOtherEnd(b.nodes, lengthB) : b.nodes;
    const beyond = rear.map((node) => ({ ...node, alongMm: node.alongMm + lengthA + placed.gapMm }));
    const [end, start] = [front.at(-1), beyond[0]];
    const isOne =
      end !== undefined &&
      start !== undefined &&
      Math.abs(end.alongMm - start.alongMm) <= COINCIDENT_POINTS_MM;
    if (isOne && Math.abs(end.depthMm - start.depthMm) > SAME_HEIGHT_MM) return "lower edges do not meet";
    return { kind: "depths", nodes: renamed(front, isOne ? beyond.slice(1) : beyond) };
  }
  if (a.kind !== "heights" || b.kind !== "heights") return "different lower edges";
  const runs = [rearward(a.nodes), rearward(b.nodes)].toSorted(
    (one, two) => (one[0]?.x ?? 0) - (two[0]?.x ?? 0),
  );
  const [front = [], rear = []] = runs;
  const [end, start] = [front.at(-1), rear[0]];
  if (!end || !start || start.x < end.x - COINCIDENT_POINTS_MM) return "lower edges do not meet";
  if (start.x > end.x + COINCIDENT_POINTS_MM) return { kind: "heights", nodes: renamed(front, rear) };
  if (Math.abs(start.z - end.z) > SAME_HEIGHT_MM) return "lower edges do not meet";
  const { tangentOutRad: _out, knotSpacingMm: _spacing, radiusMm: _radius, ...arrives } = end;
  const met: SideNode = {
    ...arrives,
    next: start.next,
    ...(start.knotSpacingMm === undefined ? {} : { knotSpacingMm: start.knotSpacingMm }),
    ...(start.tangentOutRad === undefined ? {} : { tangentOutRad: start.tangentOutRad, meets: "corner" }),
  };
  return { kind: "heights", nodes: renamed([...front.slice(0, -1), met], rear.slice(1)) };
}

/** The methods chosen for bends of both fences, by their lengths along the joined line. */
export function joinedBends(
  project: Project,
  first: Fence,
  second: Fence,
  { isFrontTurned, isRearTurned, gapMm }: EndToEnd & { readonly gapMm: number },
): Pick<Fence, "bends"> {
  if (!first.bends && !second.bends) return {};
  const lines = compileItems(project);
  const lengthOf = ({ id }: Fence) => lines.get(id)?.curve?.lengthMm ?? 0;
  const placed = (fence: Fence, isTurned: boolean, fromMm: number) =>
    (fence.bends ?? []).map((bend) => ({
      ...bend,
      atMm: fromMm + (isTurned ? lengthOf(fence) - bend.atMm : bend.atMm),
    }));
  return {
    bends: [...placed(first, isFrontTurned, 0), ...placed(second, isRearTurned, lengthOf(first) + gapMm)],
  };
}

const rearward = (nodes: readonly SideNode[]): readonly SideNode[] =>
  (nodes.at(-1)?.x ?? 0) < (nodes[0]?.x ?? 0) ? turnSideRound(nodes) : nodes;

function fromOtherEnd<T extends { readonly alongMm: number }>(
  nodes: readonly T[],
  lengthMm: number,
): readonly T[] {
  return nodes.map((node) => ({ ...node, alongMm: Math.max(0, lengthMm - node.alongMm) })).toReversed();
}

/** Both runs as one, with ids that none has twice. */
function renamed<T extends { readonly id: string }>(front: readonly T[], rear: readonly T[]): readonly T[] {
  const names = freshIds(rear, new Set(front.map(({ id }) => id)));
  return [...front, ...rear.map((node) => ({ ...node, id: names.get(node.id) ?? node.id }))];
}
