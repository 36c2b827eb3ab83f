import {
  at,
  CHORD_ERROR_MM,
  COINCIDENT_POINTS_MM,
  distanceSpace,
  type FlatPoint,
  ON_CENTRE_LINE_MM,
  OUTLINE_SHORTFALL,
  type PlanPoint,
  type Problem,
  type SpacePoint,
} from "../foundation/index.ts";
import { faceDepths } from "../laminate/index.ts";
import {
  coreOf,
  foamOf,
  nameOfItem,
  type Project,
  type Transition,
  type TransitionEdges,
} from "../project/index.ts";
import {
  areaOfRuled,
  compileEdge,
  type Development,
  developRuled,
  judgeTwist,
  pairEdges,
  pointOnRuled,
  type RuledPlace,
  type RuledSurface,
  rulingAt,
} from "../rulings/index.ts";
import { boxOf } from "./plan-polygons.ts";
import { sampleChords } from "./sample-chords.ts";
import { type EdgeGround, edgeInSpace } from "./transition-edges.ts";
import type { DrawnRuling, EdgeRole, Hand, RegionEdge, RegionLoop, TransitionSheet } from "./types.ts";

/** Strips of a divided sheet are laid out with this much room between them, mm. */
const BETWEEN_STRIPS_MM = 20;
/** Rulings that are drawn, besides those where fans begin and end. */
const DRAWN_RULINGS = 24;
/** A sheet whose normal never rises more than this from level is upright: it hides nothing and bears nothing in plan. */
const UPRIGHT_Z = 0.02;

export interface TransitionOutcome {
  readonly sheet?: TransitionSheet;
  readonly surface?: RuledSurface;
  readonly problems: readonly Problem[];
}

/**
 * The sheet of a transition: the ruled surface nearest to developable between its edges, divided into strips where its
 * twist asks for it. Problems: a crease, a twist that the foam cannot take, a bend tighter than the faces' depth, edges
 * that leave nothing between them. A creased or twisted sheet is still made, so that it can be seen.
 */
export function transitionSheet(
  item: Transition,
  edges: TransitionEdges,
  ground: EdgeGround,
): TransitionOutcome {
  const { project } = ground;
  const [first, second] = [edgeInSpace(edges.first, ground), edgeInSpace(edges.second, ground)];
  const named = { place: { itemId: item.id }, name: nameOfItem(item) };
  if (!first || !second)
    return { problems: [{ kind: "followed-line-missing", ...named, otherName: "another item" }] };
  const core = coreOf(project, item);
  const foam = foamOf(project, core.foamId);
  const leastRadiusMm = (foam?.leastBendRatio ?? 0) * core.thicknessMm;
  const settings = {
    thicknessMm: core.thicknessMm,
    leastRadiusMm,
    side: item.coreSide === "below" ? "down" : "up",
    aim: item.rulings === "least strain" ? "strain" : "twist",
  } as const;
  const surface = pairEdges(compileEdge(first), compileEdge(second), settings);
  if (surface.lengthSMm < COINCIDENT_POINTS_MM || areaOfRuled(surface, 0) < LEAST_AREA_MM2)
    return { problems: [{ kind: "transition-has-no-area", ...named }] };
  const strainLimit = foam ? 1 / (2 * foam.leastBendRatio) : Number.POSITIVE_INFINITY;
  const judgement = judgeTwist(surface, { ...settings, strainLimit });
  const depths = faceDepths(project.drawnFace, project.skins, core.thicknessMm);
  const shares = Array.from(
    { length: judgement.strips },
    (_, k) => [k / judgement.strips, (k + 1) / judgement.strips] as const,
  );
  const developments = shares.map((share) => developRuled(surface, depths.neutralMm, share));
  const traced = shares.map((share, k) =>
    traceStrip(surface, at(developments, k), share, { strip: k, count: shares.length, project }),
  );
  const laid = layBeside(traced);
  const planLoop = isUpright(surface) ? [] : planOf(surface);
  const problems: Problem[] = [];
  const crease = surface.creases.reduce<RuledSurface["creases"][number] | undefined>(
    (most, one) => (one.angleRad > (most?.angleRad ?? 0) ? one : most),
    undefined,
  );
  if (crease) {
    const { x, y } = rulingAt(surface, crease.sMm).from;
    problems.push({ kind: "transition-creased", ...named, angleRad: crease.angleRad, at: { x, y } });
  }
  if (judgement.verdict === "not with this foam") {
    const { x, y } = rulingAt(surface, judgement.atSMm).from;
    problems.push({
      kind: "transition-twisted",
      ...named,
      twistRad: judgement.maxTwistRad,
      strain: judgement.pressStrain,
      limit: strainLimit,
      leastRadiusMm: judgement.leastRadiusMm,
      at: { x, y },
    });
  }
  return {
    surface,
    problems,
    sheet: {
      kind: "transition",
      id: `T${item.number}`,
      itemId: item.id,
      name: nameOfItem(item),
      foamId: core.foamId,
      thicknessMm: core.thicknessMm,
      depths,
      hands: handsOf(project, edges),
      chart: { kind: "ruled", surface: withoutFunctions(surface) },
      judgement,
      strips: shares.map((share, k) => ({ shares: share, shift: at(laid.shifts, k) })),
      loops: laid.loops,
      rulings: drawnRulings(surface),
      planLoops: planLoop.length > 0 ? [planLoop] : [],
      planBox: planLoop.length > 0 ? boxOf(planLoop) : [NOWHERE, NOWHERE],
      planPieces: [],
    },
  };
}

const LEAST_AREA_MM2 = 1;
const NOWHERE: PlanPoint = { x: Number.NaN, y: Number.NaN };

/** The surface as plain data: what the edges were compiled from is no longer needed. */
const withoutFunctions = (surface: RuledSurface): RuledSurface => ({
  ...surface,
  first: { ...surface.first, pieces: [] },
  second: { ...surface.second, pieces: [] },
});

/** An edge on the left half makes the transition one that spans the centre line. */
function handsOf(project: Project, { first, second }: TransitionEdges): readonly Hand[] {
  const spans = [first, second].some((edge) => edge.kind !== "free" && edge.hand === "left");
  return project.symmetry === "mirrored" && !spans ? ["right", "left"] : ["whole"];
}

interface StripPlace {
  readonly strip: number;
  readonly count: number;
  readonly project: Project;
}

/** One strip's loop, counter-clockwise seen from above, its flat points where its development lays them. */
function traceStrip(
  surface: RuledSurface,
  development: Development,
  [fromT, toT]: readonly [number, number],
  place: StripPlace,
): RegionLoop {
  const breaks = breaksOf(surface);
  const end = surface.lengthSMm;
  const { strip, count } = place;
  const along = (
    t: number,
    [edgeId, name, role]: ReturnType<typeof dividing>,
    forward: boolean,
  ): RegionEdge[] => {
    const stops = forward ? breaks : breaks.toReversed();
    return stops.slice(1).map((sMm, i) => {
      const span = [
        { sMm: at(stops, i), t },
        { sMm, t },
      ] as const;
      const edge = trace(surface, development, { edgeId, name, role, strip }, span);
      return standsStill(surface, span) ? { ...edge, isApex: true } : edge;
    });
  };
  const closing = (sMm: number, edgeId: string, name: string, ts: readonly [number, number]): RegionEdge =>
    trace(surface, development, { edgeId, name, role: "free", strip }, [
      { sMm, t: ts[0] },
      { sMm, t: ts[1] },
    ]);
  const isForward = surface.side === 1;
  const near: ReturnType<typeof dividing> = strip === 0 ? ["first", "first edge", "free"] : dividing(strip);
  const far: ReturnType<typeof dividing> =
    strip === count - 1 ? ["second", "second edge", "free"] : dividing(strip + 1);
  const edges = isForward
    ? [
        ...along(fromT, near, true),
        closing(end, "end", "end", [fromT, toT]),
        ...along(toT, far, false),
        closing(0, "start", "start", [toT, fromT]),
      ]
    : [
        ...along(fromT, near, false),
        closing(0, "start", "start", [fromT, toT]),
        ...along(toT, far, true),
        closing(end, "end", "end", [toT, fromT]),
      ];
  const isMirrored = place.project.symmetry === "mirrored";
  return {
    edges: edges
      .filter(hasLength)
      .map((edge) => (isMirrored && liesOnCentre(surface, edge) ? { ...edge, role: "centre" } : edge)),
  };
}

const dividing = (number: number): readonly [edgeId: string, name: string, role: EdgeRole] => [
  `divide-${number}`,
  `dividing line ${number}`,
  "seam",
];

/** In a fan the edge that the rulings start from stands still; behind the drawn surface it opens to a short arc. */
function standsStill(surface: RuledSurface, [from, to]: readonly [RuledPlace, RuledPlace]): boolean {
  const middle = { sMm: (from.sMm + to.sMm) / 2, t: from.t };
  const [a, b, c] = [from, middle, to].map((place) => pointOnRuled(surface, place, 0));
  return (
    a !== undefined && b !== undefined && c !== undefined && distanceSpace(a, b) + distanceSpace(b, c) < 1e-6
  );
}

const hasLength = ({ flat }: RegionEdge): boolean =>
  flat.some((point) => Math.hypot(point.u - at(flat, 0).u, point.v - at(flat, 0).v) > 1e-6);

function liesOnCentre(surface: RuledSurface, { points, role }: RegionEdge): boolean {
  if (role !== "free") return false;
  const isOn = ({ u, v }: FlatPoint) =>
    Math.abs(pointOnRuled(surface, { sMm: u, t: v }, 0).y) <= ON_CENTRE_LINE_MM;
  const [a, b] = [at(points, 0), at(points, -1)];
  return [...points, { u: (a.u + b.u) / 2, v: (a.v + b.v) / 2 }].every(isOn);
}

/** Where an edge may turn at once: corners of either edge, and places where a fan begins or ends. */
function breaksOf({ rulings, first, second, lengthSMm }: RuledSurface): readonly number[] {
  const isAt = (cornersMm: readonly number[], atMm: number) =>
    cornersMm.some((cornerMm) => Math.abs(cornerMm - atMm) < 1e-6);
  const found = rulings.flatMap((node, i) => {
    const before = rulings[i - 1];
    if (!before || i === rulings.length - 1) return [];
    const turns =
      before.fanAfter !== node.fanAfter ||
      isAt(first.cornersMm, node.firstMm) ||
      isAt(second.cornersMm, node.secondMm);
    return turns ? [node.sMm] : [];
  });
  return [0, ...found, lengthSMm].filter((s, i, all) => i === 0 || s - at(all, i - 1) > 1e-9);
}

function trace(
  surface: RuledSurface,
  development: Development,
  edge: {
    readonly edgeId: string;
    readonly name: string;
    readonly role: EdgeRole;
    readonly strip: number;
  },
  [from, to]: readonly [RuledPlace, RuledPlace],
): RegionEdge {
  const placeAt = (share: number): RuledPlace => ({
    sMm: from.sMm + (to.sMm - from.sMm) * share,
    t: from.t + (to.t - from.t) * share,
  });
  const sample = (share: number) => ({ share, flat: development.flatAt(placeAt(share)) });
  const isRuling = from.sMm === to.sMm;
  const samples = isRuling
    ? [sample(0), sample(1)]
    : sampleChords(sample, ({ flat }) => flat, [0, 1], limitsOf(surface));
  const { strip, ...names } = edge;
  return {
    ...names,
    points: samples.map(({ share }) => {
      const { sMm, t } = placeAt(share);
      return { u: sMm, v: t };
    }),
    flat: samples.map(({ flat }) => flat),
    shares: samples.map(({ share }) => share),
    trace: { kind: "ruled", from, to, strip },
  };
}

/** As for any sheet: edges short by no more than OUTLINE_SHORTFALL, and the area by its share along both edges. */
function limitsOf(surface: RuledSurface) {
  const middle = rulingAt(surface, surface.lengthSMm / 2);
  const widthMm = Math.max(middle.lengthMm, 1);
  return {
    sagMm: Math.min(CHORD_ERROR_MM, 0.75 * OUTLINE_SHORTFALL * widthMm),
    turnRad: Math.min(0.05, Math.sqrt(24 * OUTLINE_SHORTFALL)),
  };
}

/** Strips one beside the other along v, each moved as a whole. */
function layBeside(strips: readonly RegionLoop[]): {
  readonly loops: readonly RegionLoop[];
  readonly shifts: readonly FlatPoint[];
} {
  const shifts: FlatPoint[] = [];
  let freeV: number | undefined;
  for (const { edges } of strips) {
    const vs = edges.flatMap(({ flat }) => flat.map(({ v }) => v));
    const shift: FlatPoint = { u: 0, v: freeV === undefined ? 0 : freeV - Math.min(...vs) };
    shifts.push(shift);
    freeV = Math.max(...vs) + shift.v + BETWEEN_STRIPS_MM;
  }
  const loops = strips.map(({ edges }, k) => {
    const { v: up } = at(shifts, k);
    if (up === 0) return { edges };
    return {
      edges: edges.map((edge) => ({ ...edge, flat: edge.flat.map(({ u, v }) => ({ u, v: v + up })) })),
    };
  });
  return { loops, shifts };
}

function drawnRulings(surface: RuledSurface): readonly DrawnRuling[] {
  const even = Array.from({ length: DRAWN_RULINGS + 1 }, (_, i) => (i * surface.lengthSMm) / DRAWN_RULINGS);
  const all = [...even, ...breaksOf(surface)].sort((a, b) => a - b);
  return all
    .filter((sMm, i) => i === 0 || sMm - at(all, i - 1) > 1e-6)
    .map((sMm) => {
      const { from, to, twistRad } = rulingAt(surface, sMm);
      return { sMm, from, to, twistRad };
    });
}

const isUpright = (surface: RuledSurface): boolean =>
  [0.1, 0.3, 0.5, 0.7, 0.9].every(
    (share) => Math.abs(rulingAt(surface, share * surface.lengthSMm).normal.z) < UPRIGHT_Z,
  );

/** Chords of the outline in plan: for telling what lies inside, and for pictures. */
const PLAN_STEPS = 96;

function planOf(surface: RuledSurface): readonly PlanPoint[] {
  const stops = [
    ...new Set([
      ...breaksOf(surface),
      ...Array.from({ length: PLAN_STEPS + 1 }, (_, i) => (i * surface.lengthSMm) / PLAN_STEPS),
    ]),
  ].sort((a, b) => a - b);
  const toPlan = ({ x, y }: SpacePoint): PlanPoint => ({ x, y });
  const rulings = stops.map((sMm) => rulingAt(surface, sMm));
  const loop = [
    ...rulings.map(({ from }) => toPlan(from)),
    ...rulings.toReversed().map(({ to }) => toPlan(to)),
  ];
  return surface.side === 1 ? loop : loop.toReversed();
}
