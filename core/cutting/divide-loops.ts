import { at, type FlatPoint } from "../foundation/index.ts";
import type { FlatEdge, FlatLoop } from "../patterns/index.ts";
import { groupIslands, type Island } from "./group-islands.ts";

/** Which coordinate is constant along a cut: u along a ruling, v across the rulings. */
export type CutAxis = "u" | "v";

/** What a straight cut leaves on both of its sides. */
export interface Division {
  readonly below: readonly Island[];
  readonly above: readonly Island[];
}

/**
 * Loops divided by the line where `axis` equals `atMm`: exact on the polygons as written, so that the areas of
 * the pieces add up to the whole. Edges keep their labels; the new edges have the role "seam" and the given id.
 * A concave outline may give several islands on a side. Points on the line count as above it.
 */
export function divideLoops(
  loops: readonly FlatLoop[],
  axis: CutAxis,
  atMm: number,
  seamEdgeId = `seam:${axis}${atMm}`,
): Division {
  const chains = loops.flatMap((loop) => chainsOfLoop(loop, axis, atMm));
  const partners = pairCrossings(chains.flatMap(({ end }) => (end === undefined ? [] : [end])));
  const closed = (side: Side) =>
    groupIslands(
      closeChains(
        chains.filter((chain) => chain.side === side),
        partners,
        seamEdgeId,
      ),
    );
  return { below: closed("below"), above: closed("above") };
}

type Side = "below" | "above";

/** A place where the boundary goes through the line; `alongMm` is the coordinate along the line. */
interface Crossing {
  readonly point: FlatPoint;
  readonly alongMm: number;
  readonly enters: Side;
}

/** A stretch of boundary on one side; a loop that never crosses is one chain without ends. */
interface Chain {
  readonly side: Side;
  readonly edges: readonly FlatEdge[];
  readonly start?: Crossing;
  readonly end?: Crossing;
}

function chainsOfLoop(loop: FlatLoop, axis: CutAxis, atMm: number): Chain[] {
  const sideOf = (point: FlatPoint): Side => (point[axis] < atMm ? "below" : "above");
  const chains: Chain[] = [];
  let edges: FlatEdge[] = [];
  let start: Crossing | undefined;
  let side = sideOf(at(at(loop.edges, 0).points, 0));
  for (const edge of loop.edges) {
    let points: FlatPoint[] = [at(edge.points, 0)];
    for (let i = 1; i < edge.points.length; i++) {
      const from = at(edge.points, i - 1);
      const to = at(edge.points, i);
      const next = sideOf(to);
      if (next !== side) {
        const end = crossingOf(from, to, axis, atMm);
        extend(points, end.point);
        keepEdge(edges, edge, points);
        chains.push({ side, edges, ...(start && { start }), end });
        edges = [];
        points = [end.point];
        start = end;
        side = next;
      }
      extend(points, to);
    }
    keepEdge(edges, edge, points);
  }
  const first = chains[0];
  if (first === undefined || start === undefined || first.end === undefined) return [{ side, edges }];
  return [{ side, edges: [...edges, ...first.edges], start, end: first.end }, ...chains.slice(1)];
}

function crossingOf(from: FlatPoint, to: FlatPoint, axis: CutAxis, atMm: number): Crossing {
  const along = axis === "u" ? "v" : "u";
  const share = (atMm - from[axis]) / (to[axis] - from[axis]);
  const alongMm = from[along] + share * (to[along] - from[along]);
  const point = axis === "u" ? { u: atMm, v: alongMm } : { u: alongMm, v: atMm };
  return { point, alongMm, enters: to[axis] < atMm ? "below" : "above" };
}

function extend(points: FlatPoint[], point: FlatPoint): void {
  const last = at(points, -1);
  if (last.u !== point.u || last.v !== point.v) points.push(point);
}

function keepEdge(edges: FlatEdge[], edge: FlatEdge, points: readonly FlatPoint[]): void {
  if (points.length < 2) return;
  const isWhole = at(points, 0) === edge.points[0] && at(points, -1) === edge.points[edge.points.length - 1];
  edges.push(isWhole ? edge : { ...edge, points });
}

/**
 * Along the line the foam lies between every first and second crossing. Where two crossings coincide (a corner
 * on the line) they are put in the order in which entering and leaving alternate.
 */
function pairCrossings(crossings: readonly Crossing[]): Map<Crossing, Crossing> {
  const sorted = [...crossings].sort((a, b) => a.alongMm - b.alongMm);
  const partners = new Map<Crossing, Crossing>();
  for (let i = 0; i + 1 < sorted.length; i += 2) {
    const first = at(sorted, i);
    const opposite = sorted.findIndex((other, j) => j > i && other.enters !== first.enters);
    if (opposite > i + 1) sorted.splice(i + 1, 0, ...sorted.splice(opposite, 1));
    const second = at(sorted, i + 1);
    partners.set(first, second);
    partners.set(second, first);
  }
  return partners;
}

function closeChains(
  chains: readonly Chain[],
  partners: ReadonlyMap<Crossing, Crossing>,
  seamEdgeId: string,
): FlatLoop[] {
  const loops: FlatLoop[] = [];
  const byStart = new Map(chains.flatMap((chain) => (chain.start ? [[chain.start, chain] as const] : [])));
  const used = new Set<Chain>();
  for (const first of chains) {
    if (used.has(first)) continue;
    const edges: FlatEdge[] = [];
    let chain: Chain | undefined = first;
    while (chain !== undefined && !used.has(chain)) {
      used.add(chain);
      edges.push(...chain.edges);
      const back: Crossing | undefined = chain.end && partners.get(chain.end);
      if (chain.end === undefined || back === undefined) break;
      const points = [chain.end.point];
      extend(points, back.point);
      keepEdge(edges, { edgeId: seamEdgeId, name: "seam", role: "seam", points: [] }, points);
      chain = byStart.get(back);
    }
    if (edges.length > 0) loops.push({ edges });
  }
  return loops;
}
