import type { SpaceNode } from "../curves/index.ts";
import { addSpace, at, type SpacePoint } from "../foundation/index.ts";
import type { Bench, Look } from "./ease-bench.ts";
import { solveLinear } from "./solve-linear.ts";

/** How far easing may go. */
export interface EaseLimits {
  /** No node leaves its place by more than this, mm. */
  readonly bandMm: number;
  /** Whether nodes may also move in plan, square to the edge. */
  readonly movesPlan: boolean;
}

/** Each height is held to its place by a spring this much weaker than the twist of one ruling a millimetre would make. */
const HOLD = 1e-9;

/** Step by which the change of twist with a node's place is felt, mm. */
const FEEL_MM = 0.01;

/** The ways in which nodes may move: each by index and direction. */
interface Freedom {
  readonly index: number;
  readonly direction: SpacePoint;
}

function freedomsOf(nodes: readonly SpaceNode[], { movesPlan }: EaseLimits): readonly Freedom[] {
  return nodes.flatMap((_, index): readonly Freedom[] => {
    const up = { index, direction: { x: 0, y: 0, z: 1 } };
    if (!movesPlan) return [up];
    const [a, b] = [at(nodes, Math.max(0, index - 1)), at(nodes, Math.min(nodes.length - 1, index + 1))];
    const size = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    return [up, { index, direction: { x: -(b.y - a.y) / size, y: (b.x - a.x) / size, z: 0 } }];
  });
}

export const moved = (
  nodes: readonly SpaceNode[],
  { index, direction }: Freedom,
  byMm: number,
): readonly SpaceNode[] =>
  nodes.map((node, i) => (i === index ? { ...node, ...addSpace(node, direction, byMm) } : node));

export interface Step {
  readonly freedoms: readonly Freedom[];
  readonly byMm: readonly number[];
}

/** The step that would take the twist away were it straight in the nodes' places: least squares, held a little. */
export function solveStep(
  bench: Bench,
  nodes: readonly SpaceNode[],
  { surface }: Look,
  start: readonly SpaceNode[],
  limits: EaseLimits,
): Step {
  const freedoms = freedomsOf(start, limits);
  const now = bench.twists(nodes, surface) ?? [];
  const columns = freedoms.map((freedom) => {
    const felt = bench.twists(moved(nodes, freedom, FEEL_MM), surface) ?? now;
    return felt.map((twist, i) => (twist - at(now, i)) / FEEL_MM);
  });
  const matrix = columns.map((a, i) =>
    columns.map((b, k) => a.reduce((sum, value, row) => sum + value * at(b, row), 0) + (i === k ? HOLD : 0)),
  );
  const right = columns.map((column) => -column.reduce((sum, value, row) => sum + value * at(now, row), 0));
  return { freedoms, byMm: solveLinear(matrix, right) };
}
