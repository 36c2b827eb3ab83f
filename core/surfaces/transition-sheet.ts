import type { Curve } from "../curves/index.ts";
import {
  at,
  COINCIDENT_POINTS_MM,
  type FlatPoint,
  type PlanPoint,
  type Problem,
  type SpacePoint,
} from "../foundation/index.ts";
import { faceDepths } from "../laminate/index.ts";
import {
  coreOf,
  foamOf,
  leastBendRatioOf,
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
  type RuledSurface,
  rulingAt,
} from "../rulings/index.ts";
import { type OpenedStrip, openTransition } from "./open-transition.ts";
import { openingLoops } from "./opening-loops.ts";
import { comeNear, lieOver } from "./openings-over-transitions.ts";
import { boxOf } from "./plan-polygons.ts";
import { breaksOf, stripBorder } from "./ruled-border.ts";
import { traceBorder } from "./trace-ruled.ts";
import { type EdgeGround, edgeInSpace } from "./transition-edges.ts";
import type { DrawnRuling, Hand, RegionLoop, TransitionSheet } from "./types.ts";

/** Strips of a divided sheet are laid out with this much room between them, mm. */
const BETWEEN_STRIPS_MM = 20;
/** Rulings that are drawn, besides those where fans begin and end. */
const DRAWN_RULINGS = 24;
/** A sheet whose normal never rises more than this from level is upright: it hides nothing and bears nothing in plan. */
const UPRIGHT_Z = 0.02;

export interface TransitionOutcome {
  /** One, or those that openings cut it into. */
  readonly sheets: readonly TransitionSheet[];
  readonly surface?: RuledSurface;
  /** The openings that take something away, and those that lie over it where it cannot be cut in plan. */
  readonly openingIds: readonly string[];
  readonly uncutIds: readonly string[];
  readonly problems: readonly Problem[];
}

/**
 * The sheet of a transition: the ruled surface nearest to developable between its edges, divided into strips where its
 * twist asks for it. Problems: a crease, a twist that the foam cannot take, a bend tighter than the faces' depth, edges
 * that leave nothing between them. A creased or twisted sheet is still made, so that it can be seen. Openings (by
 * opening id, counter-clockwise) are cut out of it where it lies over the plan.
 */
export function transitionSheet(
  item: Transition,
  edges: TransitionEdges,
  ground: EdgeGround,
  openings: Readonly<Record<string, Curve>> = {},
): TransitionOutcome {
  const { project } = ground;
  const [first, second] = [edgeInSpace(edges.first, ground), edgeInSpace(edges.second, ground)];
  const named = { place: { itemId: item.id }, name: nameOfItem(item) };
  if (!first || !second)
    return notMade({ kind: "followed-line-missing", ...named, otherName: "another item" });
  const core = coreOf(project, item);
  const foam = foamOf(project, core.foamId);
  const leastRadiusMm = (foam ? leastBendRatioOf(foam) : 0) * core.thicknessMm;
  const settings = {
    thicknessMm: core.thicknessMm,
    leastRadiusMm,
    side: item.coreSide === "below" ? "down" : "up",
    aim: item.rulings === "least strain" ? "strain" : "twist",
  } as const;
  const surface = pairEdges(compileEdge(first), compileEdge(second), settings);
  if (surface.lengthSMm < COINCIDENT_POINTS_MM || areaOfRuled(surface, 0) < LEAST_AREA_MM2)
    return notMade({ kind: "transition-has-no-area", ...named });
  const strainLimit = foam ? 1 / (2 * leastBendRatioOf(foam)) : Number.POSITIVE_INFINITY;
  const judgement = judgeTwist(surface, { ...settings, strainLimit });
  const depths = faceDepths(project.drawnFace, project.skins, core.thicknessMm);
  const shares = Array.from(
    { length: judgement.strips },
    (_, k) => [k / judgement.strips, (k + 1) / judgement.strips] as const,
  );
  const strips = shares.map(
    (share, strip): OpenedStrip => ({
      surface,
      development: developRuled(surface, depths.neutralMm, share),
      shares: share,
      strip,
      isMirrored: project.symmetry === "mirrored",
    }),
  );
  const laid = layBeside(strips.map((strip) => traceStrip(strip, strips.length)));
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
  const sheet: TransitionSheet = {
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
  };
  const isJoined = project.symmetry === "mirrored" && sheet.hands[0] === "whole";
  const candidates = openingLoops(project, item, openings, isJoined);
  if (candidates.length === 0) return { surface, problems, sheets: [sheet], openingIds: [], uncutIds: [] };
  const laidStrips = strips.map((strip, k) => ({
    ...strip,
    development: moved(strip.development, at(laid.shifts, k)),
  }));
  const near = candidates.filter(({ loops }) => comeNear(loops, sheet.planBox));
  const opened = liesOverPlan(surface)
    ? openTransition(surface, laidStrips, near, depths.neutralMm)
    : undefined;
  if (!opened) {
    const uncutIds = liesOverPlan(surface)
      ? []
      : candidates.filter(({ loops }) => lieOver(loops, planOf(surface))).map(({ opening }) => opening.id);
    return { surface, problems, sheets: [sheet], openingIds: [], uncutIds };
  }
  const present = opened.bodies.filter(({ loops }) => loops.length > 0);
  if (present.length === 0) problems.push({ kind: "opening-leaves-nothing", ...named });
  const sheets = present.map((body, i): TransitionSheet => {
    const own = { ...sheet, ...body, planBox: boxOf(body.planLoops.flat()) };
    return present.length === 1
      ? own
      : { ...own, id: `${sheet.id}.${i + 1}`, name: `${sheet.name} ${i + 1}` };
  });
  return { surface, problems, sheets, openingIds: opened.openingIds, uncutIds: [] };
}

const notMade = (problem: Problem): TransitionOutcome => ({
  sheets: [],
  openingIds: [],
  uncutIds: [],
  problems: [problem],
});

const moved = (development: Development, shift: FlatPoint): Development => ({
  ...development,
  flatAt: (place) => {
    const { u, v } = development.flatAt(place);
    return { u: u + shift.u, v: v + shift.v };
  },
});

const LEAST_AREA_MM2 = 1;
const NOWHERE: PlanPoint = { x: Number.NaN, y: Number.NaN };

/** The surface as plain data: what the edges were compiled from is no longer needed. */
const withoutFunctions = (surface: RuledSurface): RuledSurface => ({
  ...surface,
  first: { ...surface.first, pieces: [] },
  second: { ...surface.second, pieces: [] },
});

/** An edge on the left half makes the transition one that spans the centre line. */
function handsOf(project: Pick<Project, "symmetry">, { first, second }: TransitionEdges): readonly Hand[] {
  const spans = [first, second].some((edge) => edge.kind !== "free" && edge.hand === "left");
  return project.symmetry === "mirrored" && !spans ? ["right", "left"] : ["whole"];
}

/** One strip's loop, its flat points where its development lays them. */
const traceStrip = (strip: OpenedStrip, count: number): RegionLoop => ({
  edges: stripBorder(strip.surface, strip.shares, { strip: strip.strip, count }).flatMap((run) =>
    traceBorder(strip, run),
  ),
});

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

/** Whether all of a sheet faces up, or all of it down, so that plan tells its places apart. */
function liesOverPlan(surface: RuledSurface): boolean {
  const heights = Array.from(
    { length: PLAN_STEPS + 1 },
    (_, i) => rulingAt(surface, (i * surface.lengthSMm) / PLAN_STEPS).normal.z,
  );
  return heights.every((z) => z > UPRIGHT_Z) || heights.every((z) => z < -UPRIGHT_Z);
}

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
