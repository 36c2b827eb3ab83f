import type { SpaceNode } from "../curves/index.ts";
import { at, distanceSpace } from "../foundation/index.ts";
import {
  type Project,
  type ResolvedEdge,
  type ResolvedLines,
  resolveLines,
  type Transition,
} from "../project/index.ts";
import { compileEdge, type RuledSurface, type SpaceEdge, type TwistJudgement } from "../rulings/index.ts";
import { buildSheets } from "./build-sheets.ts";
import { type Bench, benchOf, type Look } from "./ease-bench.ts";
import { type EaseLimits, moved, type Step, solveStep } from "./ease-step.ts";
import { edgeGround, type WingEdge } from "./edge-ground.ts";
import { edgeInSpace } from "./transition-edges.ts";

/** What easing a free edge found: the judgement of the sheet before and after, and the nodes. */
export interface Easing {
  readonly side: "first" | "second";
  readonly nodes: readonly SpaceNode[];
  readonly before: TwistJudgement;
  readonly after: TwistJudgement;
  /** The farthest that a node has moved, mm. */
  readonly movedMm: number;
}

/** Rounds of pairing anew and solving; each takes what remains down by about a half. */
const ROUNDS = 8;

/**
 * The small change of a transition's free edge that takes most twist out of it: nodes move in height (and square to the
 * edge in plan where that is allowed) within a band. Gauss-Newton on the twist of all rulings, paired for the least
 * strain (the least twist could always be had by rulings that no foam bends along), then the pairing anew; a round that does not lower the mean square twist is shortened or ends the search. Undefined
 * where the transition has no free edge or cannot be made. Ends that lie on the first and last ruling may move as well.
 */
export function easeTransition(
  project: Project,
  itemId: string,
  limits: EaseLimits,
  wingEdge: WingEdge = () => undefined,
): Easing | undefined {
  const item = project.items.find((one): one is Transition => one.kind === "transition" && one.id === itemId);
  const side = item && freeSideOf(item);
  const lines = resolveLines(project);
  const edges = lines.transitions[itemId];
  if (!item || !side || !edges) return undefined;
  const drawn = item[side];
  if (drawn.kind !== "free") return undefined;
  const fixedSide = side === "first" ? "second" : "first";
  const fixed = fixedEdge(project, lines, edges[fixedSide], wingEdge);
  if (!fixed) return undefined;
  const bench = benchOf(project, item, side, fixed);
  const before = bench.look(drawn.nodes);
  if (!before) return undefined;
  const inHeight = easeNodes(bench, drawn.nodes, before, { ...limits, movesPlan: false });
  const eased = limits.movesPlan ? easeNodes(bench, drawn.nodes, before, limits) : inHeight;
  // Moves in plan may bend a sheet more than they untwist it.
  const [a, b] = [bench.judge(inHeight.look), bench.judge(eased.look)];
  const [best, after] = b.pressStrain < a.pressStrain ? [eased, b] : [inHeight, a];
  return {
    side,
    nodes: best.nodes,
    before: bench.judge(before),
    after,
    movedMm: Math.max(...best.nodes.map((node, i) => distanceSpace(node, at(drawn.nodes, i)))),
  };
}

/** Nodes moved round by round; those given where nothing better is found. */
function easeNodes(
  bench: Bench,
  start: readonly SpaceNode[],
  before: Look,
  limits: EaseLimits,
): { readonly nodes: readonly SpaceNode[]; readonly look: Look } {
  let [nodes, best] = [start, before];
  for (let round = 0; round < ROUNDS; round++) {
    const step = solveStep(bench, nodes, best, start, limits);
    const next = shorten(bench, nodes, step, best, start, limits);
    if (!next) break;
    nodes = next.nodes;
    best = next.look;
  }
  const rounded = nodes.map(roundNode);
  const look = bench.look(rounded);
  return look && look.meanSquare < before.meanSquare
    ? { nodes: rounded, look }
    : { nodes: start, look: before };
}

/** The second edge is eased where both are free. */
const freeSideOf = ({ first, second }: Transition): "first" | "second" | undefined =>
  second.kind === "free" ? "second" : first.kind === "free" ? "first" : undefined;

/** The other edge; where it is the closing edge of another transition, that one is made first. */
function fixedEdge(
  project: Project,
  lines: ResolvedLines,
  edge: ResolvedEdge,
  wingEdge: WingEdge,
): SpaceEdge | undefined {
  const surfaces = new Map<string, RuledSurface>();
  if (edge.kind === "closing") {
    const { sheets } = buildSheets(project, lines, wingEdge);
    const other = sheets.find((sheet) => sheet.itemId === edge.itemId);
    if (other?.kind === "transition") surfaces.set(edge.itemId, other.chart.surface);
  }
  const pieces = edgeInSpace(edge, { ...edgeGround(project, lines, wingEdge), surfaces });
  return pieces && compileEdge(pieces);
}

/** A hundredth of a millimetre is more than anybody can set. */
const roundNode = (node: SpaceNode): SpaceNode => ({
  ...node,
  x: Math.round(node.x * 100) / 100,
  y: Math.round(node.y * 100) / 100,
  z: Math.round(node.z * 100) / 100,
});

/** The longest part of a step, within the band, that lowers the twist; undefined where none does. */
function shorten(
  bench: Bench,
  nodes: readonly SpaceNode[],
  { freedoms, byMm }: Step,
  best: Look,
  start: readonly SpaceNode[],
  limits: EaseLimits,
): { readonly nodes: readonly SpaceNode[]; readonly look: Look } | undefined {
  for (const part of [1, 0.5, 0.25, 0.1]) {
    const stepped = freedoms.reduce((kept, freedom, i) => moved(kept, freedom, part * at(byMm, i)), nodes);
    const inBand = stepped.map((node, i) => withinBand(node, at(start, i), limits.bandMm));
    const look = bench.look(inBand);
    if (look && look.meanSquare < best.meanSquare * 0.999) return { nodes: inBand, look };
  }
  return undefined;
}

/** A node no farther from its place than the band. */
function withinBand(node: SpaceNode, start: SpaceNode, bandMm: number): SpaceNode {
  const farMm = distanceSpace(node, start);
  if (farMm <= bandMm) return node;
  const share = bandMm / farMm;
  return {
    ...node,
    x: start.x + (node.x - start.x) * share,
    y: start.y + (node.y - start.y) * share,
    z: start.z + (node.z - start.z) * share,
  };
}
