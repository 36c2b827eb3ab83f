import { compileSpacePath, type SpaceNode } from "../curves/index.ts";
import { addSpace, at, crossSpace, distanceSpace, dotSpace, type SpacePoint } from "../foundation/index.ts";
import {
  coreOf,
  foamOf,
  leastBendRatioOf,
  type Project,
  type ResolvedEdge,
  type ResolvedLines,
  resolveLines,
  type Transition,
} from "../project/index.ts";
import {
  compileEdge,
  judgeTwist,
  pairEdges,
  placeOnEdge,
  type RuledSurface,
  reverseEdge,
  type SpaceEdge,
  type TwistJudgement,
} from "../rulings/index.ts";
import { buildSheets } from "./build-sheets.ts";
import { edgeGround, type WingEdge } from "./edge-ground.ts";
import { solveLinear } from "./solve-linear.ts";
import { edgeInSpace, freeEdgeInSpace } from "./transition-edges.ts";

/** How far easing may go. */
export interface EaseLimits {
  /** No node leaves its place by more than this, mm. */
  readonly bandMm: number;
  /** Whether nodes may also move in plan, square to the edge. */
  readonly movesPlan: boolean;
}

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
/** Each height is held to its place by a spring this much weaker than the twist of one ruling a millimetre would make. */
const HOLD = 1e-9;
/** Step by which the change of twist with a node's place is felt, mm. */
const FEEL_MM = 0.01;

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

/** A sheet made with some nodes: its pairing for the least strain, and how much it is twisted. */
interface Look {
  readonly free: SpaceEdge;
  readonly surface: RuledSurface;
  /** Mean over the sweep of the square of the twist, rad². */
  readonly meanSquare: number;
}

interface Bench {
  /** The sheet as the transition asks for its rulings, judged. */
  readonly judge: (look: Look) => TwistJudgement;
  readonly look: (nodes: readonly SpaceNode[]) => Look | undefined;
  /** Twists of the rulings of a pairing when the free edge runs through other nodes; weighted by what they sweep. */
  readonly twists: (nodes: readonly SpaceNode[], surface: RuledSurface) => readonly number[] | undefined;
}

function benchOf(project: Project, item: Transition, side: "first" | "second", fixed: SpaceEdge): Bench {
  const core = coreOf(project, item);
  const foam = foamOf(project, core.foamId);
  const ratio = foam ? leastBendRatioOf(foam) : 1;
  const settings = {
    thicknessMm: core.thicknessMm,
    leastRadiusMm: ratio * core.thicknessMm,
    side: item.coreSide === "below" ? "down" : "up",
  } as const;
  const edgeOf = (nodes: readonly SpaceNode[]): SpaceEdge | undefined => {
    const path = compileSpacePath(nodes);
    return path.ok ? compileEdge(freeEdgeInSpace(path.value)) : undefined;
  };
  const pair = (free: SpaceEdge, aim: "twist" | "strain"): RuledSurface =>
    side === "first"
      ? pairEdges(free, fixed, { ...settings, aim })
      : pairEdges(fixed, free, { ...settings, aim });
  return {
    judge: ({ free }) =>
      judgeTwist(pair(free, item.rulings === "least strain" ? "strain" : "twist"), {
        ...settings,
        strainLimit: 1 / (2 * ratio),
      }),
    look: (nodes) => {
      const free = edgeOf(nodes);
      if (!free) return undefined;
      const surface = pair(free, "strain");
      const twists = weightedTwists(surface, surface.first, surface.second);
      return { free, surface, meanSquare: twists.reduce((sum, twist) => sum + twist * twist, 0) };
    },
    twists: (nodes, surface) => {
      const free = edgeOf(nodes);
      if (!free) return undefined;
      const own = turnedLike(free, surface[side]);
      return side === "first"
        ? weightedTwists(surface, own, surface.second)
        : weightedTwists(surface, surface.first, own);
    },
  };
}

/** An edge run the way that another, nearly the same, runs. */
function turnedLike(edge: SpaceEdge, model: SpaceEdge): SpaceEdge {
  const end = placeOnEdge(edge, edge.lengthMm).point;
  return distanceSpace(end, model.start) < distanceSpace(edge.start, model.start) ? reverseEdge(edge) : edge;
}

/** The twist of every ruling of a pairing between two edges, times the root of its share of the sweep. */
function weightedTwists(surface: RuledSurface, first: SpaceEdge, second: SpaceEdge): readonly number[] {
  const { rulings, lengthSMm } = surface;
  const [scaleA, scaleB] = [
    first.lengthMm / surface.first.lengthMm,
    second.lengthMm / surface.second.lengthMm,
  ];
  return rulings.map((node, i) => {
    const [before, after] = [rulings[i - 1] ?? node, rulings[i + 1] ?? node];
    if (node.fanAfter !== "none" || before.fanAfter !== "none") return 0;
    const share = (after.sMm - before.sMm) / (2 * lengthSMm);
    const a = placeOnEdge(first, node.firstMm * scaleA);
    const b = placeOnEdge(second, node.secondMm * scaleB);
    return Math.sqrt(share) * twistBetween(a, b);
  });
}

function twistBetween(
  a: { readonly point: SpacePoint; readonly tangent: SpacePoint },
  b: { readonly point: SpacePoint; readonly tangent: SpacePoint },
): number {
  const ruling = addSpace(b.point, a.point, -1);
  const [m, n] = [crossSpace(a.tangent, ruling), crossSpace(b.tangent, ruling)];
  const size = Math.sqrt(dotSpace(ruling, ruling));
  return size === 0 ? 0 : Math.atan2(dotSpace(crossSpace(m, n), ruling) / size, dotSpace(m, n));
}

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

const moved = (
  nodes: readonly SpaceNode[],
  { index, direction }: Freedom,
  byMm: number,
): readonly SpaceNode[] =>
  nodes.map((node, i) => (i === index ? { ...node, ...addSpace(node, direction, byMm) } : node));

interface Step {
  readonly freedoms: readonly Freedom[];
  readonly byMm: readonly number[];
}

/** The step that would take the twist away were it straight in the nodes' places: least squares, held a little. */
function solveStep(
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
