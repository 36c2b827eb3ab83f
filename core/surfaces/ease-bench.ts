import { compileSpacePath, type SpaceNode } from "../curves/index.ts";
import { addSpace, crossSpace, distanceSpace, dotSpace, type SpacePoint } from "../foundation/index.ts";
import { coreOf, foamOf, leastBendRatioOf, type Project, type Transition } from "../project/index.ts";
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
import { freeEdgeInSpace } from "./transition-edges.ts";

/** A sheet made with some nodes: its pairing for the least strain, and how much it is twisted. */
export interface Look {
  readonly free: SpaceEdge;
  readonly surface: RuledSurface;
  /** Mean over the sweep of the square of the twist, rad². */
  readonly meanSquare: number;
}

export interface Bench {
  /** The sheet as the transition asks for its rulings, judged. */
  readonly judge: (look: Look) => TwistJudgement;
  readonly look: (nodes: readonly SpaceNode[]) => Look | undefined;
  /** Twists of the rulings of a pairing when the free edge runs through other nodes; weighted by what they sweep. */
  readonly twists: (nodes: readonly SpaceNode[], surface: RuledSurface) => readonly number[] | undefined;
}

export function benchOf(
  project: Project,
  item: Transition,
  side: "first" | "second",
  fixed: SpaceEdge,
): Bench {
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
