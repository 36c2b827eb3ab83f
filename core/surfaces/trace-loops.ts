import { crossingParameters, derivativeOnPiece, pointOnPiece } from "../curves/index.ts";
import { at, type FlatPoint, type PlanPoint, type Vec2 } from "../foundation/index.ts";
import type { ChordLimits } from "./chord-limits.ts";
import {
  type ChartPlace,
  chartPointAt,
  directionAtPlace,
  pieceIndexOfXi,
  placeOfXi,
  xiOfPlan,
} from "./cylinder-chart.ts";
import { type DrawnPiece, walkEnds } from "./drawn-loops.ts";
import { type Foot, footFinder, plumbBevelRad, xiShift } from "./plumb-walls.ts";
import { sampleChords } from "./sample-chords.ts";
import type { CylinderChart, RegionEdge, RegionLoop } from "./types.ts";

/** The part of a section that a sheet takes: between two corner rulings, either of which may be missing. */
export interface XiLimits {
  readonly from?: { readonly xi: number; readonly edgeId: string };
  readonly to?: { readonly xi: number; readonly edgeId: string };
}

/** How fine a region is traced: judged in the flat pattern at depth `neutralMm`. */
export interface Flatness {
  readonly neutralMm: number;
  readonly limitsOf: (drawn: DrawnPiece) => ChordLimits;
}

/**
 * The region of a sheet: plan loops carried onto its chart, kept between the corner rulings, and closed along
 * them. Points are as dense as the flat pattern needs.
 */
export function traceLoops(
  chart: CylinderChart,
  loops: readonly (readonly DrawnPiece[])[],
  limits: XiLimits,
  flatness: Flatness,
): readonly RegionLoop[] {
  const square = wallAt(chart, limits, 0);
  const hasUpright = loops.some((loop) => loop.some(({ wall }) => wall === "upright"));
  const upright = hasUpright ? wallAt(chart, limits, flatness.neutralMm) : square;
  const closed: RegionLoop[] = [];
  const chains: Chain[] = [];
  for (const loop of loops) {
    const stretches = loop.flatMap((drawn) =>
      stretchesOf(chart, drawn, limits, drawn.wall === "upright" ? upright : square),
    );
    const isInside = (stretch: Stretch) => stretch.isInside;
    if (stretches.every(isInside)) {
      closed.push({ edges: stretches.map((stretch) => traceStretch(chart, stretch, flatness)) });
      continue;
    }
    const start = stretches.findIndex(
      (stretch, i) => !stretch.isInside && at(stretches, (i + 1) % stretches.length).isInside,
    );
    if (start < 0) continue;
    let chain: RegionEdge[] = [];
    for (let i = 1; i <= stretches.length; i++) {
      const stretch = at(stretches, (start + i) % stretches.length);
      if (stretch.isInside) chain.push(traceStretch(chart, stretch, flatness));
      else if (chain.length > 0) {
        chains.push({ edges: chain });
        chain = [];
      }
    }
  }
  return [...closed, ...closeChains(chart, chains, limits)];
}

/** A stretch of a drawn piece between two crossings with profile borders. */
interface Stretch {
  readonly drawn: DrawnPiece;
  readonly from: number;
  readonly to: number;
  readonly isInside: boolean;
  readonly pieceIndex: number;
  readonly wall: Wall;
}

/** What is the same for all walls of one kind: how their feet are found, and where in ξ they pass profile borders. */
interface Wall {
  readonly footAt: (p: PlanPoint) => Foot;
  readonly borders: readonly number[];
}

/** An upright wall is traced where it cuts the neutral fibre, a square one where it is drawn, at depth 0. */
function wallAt(chart: CylinderChart, limits: XiLimits, depthMm: number): Wall {
  const borderAt = (index: number, t: 0 | 1): number =>
    pointOnPiece(at(chart.pieces, index).piece, t)[0] + xiShift(chart, { index, t }, depthMm);
  const last = chart.pieces.length - 1;
  const borders = chart.pieces.slice(0, -1).map((_, index) => borderAt(index, 1));
  if (limits.from) borders.push(borderAt(0, 0));
  if (limits.to) borders.push(borderAt(last, 1));
  return { footAt: footFinder(chart, depthMm), borders };
}

function stretchesOf(
  chart: CylinderChart,
  drawn: DrawnPiece,
  limits: XiLimits,
  wall: Wall,
): readonly Stretch[] {
  const normal: Vec2 = [1, -chart.tanHeading];
  const shift = chart.pivotYMm * chart.tanHeading;
  const [start, end] = walkEnds(drawn);
  const stops = wall.borders
    .flatMap((xi) => crossingParameters(drawn.piece, normal, xi - shift))
    .filter((t) => t > 1e-9 && t < 1 - 1e-9)
    .sort((a, b) => (drawn.reversed ? b - a : a - b));
  const all = [start, ...stops.filter((t, i) => i === 0 || Math.abs(t - at(stops, i - 1)) > 1e-9), end];
  return all.slice(1).map((to, i) => {
    const from = at(all, i);
    const [x, y] = pointOnPiece(drawn.piece, (from + to) / 2);
    const { xi } = wall.footAt({ x, y });
    const isInside =
      (limits.from === undefined || xi > limits.from.xi) && (limits.to === undefined || xi < limits.to.xi);
    return { drawn, from, to, isInside, pieceIndex: pieceIndexOfXi(chart, xi), wall };
  });
}

/** A traced point: chart coordinates, its place in the flat pattern, and the share of the stretch before it. */
interface TracedPoint {
  readonly point: FlatPoint;
  readonly flat: FlatPoint;
  readonly share: number;
  readonly place: ChartPlace;
}

function traceStretch(chart: CylinderChart, stretch: Stretch, flatness: Flatness): RegionEdge {
  const { drawn, from, to, pieceIndex, wall } = stretch;
  const startRad = directionAtPlace(chart, { index: 0, t: 0 });
  const isUpright = drawn.wall === "upright";
  const footAt = (p: PlanPoint): Pick<Foot, "place" | "y"> =>
    isUpright ? wall.footAt(p) : { place: placeOfXi(chart, xiOfPlan(chart, p), pieceIndex), y: p.y };
  const trace = (t: number): TracedPoint => {
    const [x, y] = pointOnPiece(drawn.piece, t);
    const foot = footAt({ x, y });
    const { place } = foot;
    const point = chartPointAt(chart, place, foot.y);
    const turnRad = directionAtPlace(chart, place) - startRad;
    const flat = { u: point.u - flatness.neutralMm * turnRad, v: point.v };
    return { point, flat, share: (t - from) / (to - from), place };
  };
  const bevelAt = ({ share, place }: TracedPoint): number => {
    const [dx, dy] = derivativeOnPiece(drawn.piece, from + (to - from) * share);
    return plumbBevelRad(chart, place, to > from ? [dx, dy] : [-dx, -dy]);
  };
  const isStraight = drawn.piece.kind === "line" && at(chart.pieces, pieceIndex).piece.kind === "line";
  const traced = isStraight
    ? [trace(from), trace(to)]
    : sampleChords(trace, ({ flat }) => flat, [from, to], flatness.limitsOf(drawn));
  return {
    edgeId: drawn.edgeId,
    name: drawn.name,
    role: drawn.role,
    ...(drawn.openingId !== undefined && { openingId: drawn.openingId }),
    points: traced.map(({ point }) => point),
    flat: traced.map(({ flat }) => flat),
    shares: traced.map(({ share }) => share),
    trace: { kind: isUpright ? "plumb" : "plan", piece: drawn.piece, from, to },
    ...(isUpright && { bevelsRad: traced.map(bevelAt) }),
  };
}

/** Edges in a row that begin and end on a corner ruling. */
interface Chain {
  readonly edges: readonly RegionEdge[];
}

/** An end of a chain on a corner ruling. */
interface ChainEnd {
  readonly chain: Chain;
  readonly isStart: boolean;
  readonly point: FlatPoint;
  readonly flat: FlatPoint;
}

/** Joins chains into loops along the corner rulings: along a ruling, inside lies between first and second, … */
function closeChains(
  chart: CylinderChart,
  chains: readonly Chain[],
  limits: XiLimits,
): readonly RegionLoop[] {
  const next = new Map<Chain, { readonly chain: Chain; readonly ruling: RegionEdge }>();
  const middleU = chart.lengthUMm / 2;
  const ends = chains.flatMap((chain): ChainEnd[] => [
    {
      chain,
      isStart: true,
      point: at(at(chain.edges, 0).points, 0),
      flat: at(at(chain.edges, 0).flat, 0),
    },
    {
      chain,
      isStart: false,
      point: at(at(chain.edges, -1).points, -1),
      flat: at(at(chain.edges, -1).flat, -1),
    },
  ]);
  for (const [limit, isFront] of [
    [limits.from, true],
    [limits.to, false],
  ] as const) {
    if (!limit) continue;
    const onRuling = ends
      .filter(({ point }) => point.u < middleU === isFront)
      .sort((a, b) => a.point.v - b.point.v);
    for (let i = 0; i + 1 < onRuling.length; i += 2) {
      const [first, second] = [at(onRuling, i), at(onRuling, i + 1)];
      const [leaving, arriving] = first.isStart ? [second, first] : [first, second];
      const ruling: RegionEdge = {
        edgeId: limit.edgeId,
        name: "fold",
        role: "joint",
        points: [leaving.point, arriving.point],
        flat: [leaving.flat, arriving.flat],
        shares: [0, 1],
      };
      next.set(leaving.chain, { chain: arriving.chain, ruling });
    }
  }
  return walkChains(chains, next);
}

function walkChains(
  chains: readonly Chain[],
  next: ReadonlyMap<Chain, { readonly chain: Chain; readonly ruling: RegionEdge }>,
): readonly RegionLoop[] {
  const left = new Set(chains);
  const loops: RegionLoop[] = [];
  for (const first of chains) {
    if (!left.has(first)) continue;
    const edges: RegionEdge[] = [];
    for (let chain: Chain | undefined = first; chain && left.has(chain); ) {
      left.delete(chain);
      const step = next.get(chain);
      edges.push(...chain.edges, ...(step ? [step.ruling] : []));
      chain = step?.chain;
    }
    loops.push({ edges });
  }
  return loops;
}
