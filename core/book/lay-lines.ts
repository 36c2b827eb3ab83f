import { pointOnPiece } from "../curves/index.ts";
import { at, bracketedRoot, type FlatPoint, type PlanPoint } from "../foundation/index.ts";
import { type FlatToSpace, type Part, partPlaces } from "../patterns/index.ts";
import type { FenceSheet, LyingSheet } from "../surfaces/index.ts";
import { boxOf } from "./boxes.ts";
import { isInsideLoops } from "./chords.ts";
import type { Design } from "./design.ts";
import { type LineMark, lineMark, toPaper } from "./marks.ts";
import type { PaperPoint } from "./types.ts";

/** A line on a sheet where a rib or a fence touches it, and what it is. */
export interface LayLine {
  readonly line: LineMark;
  readonly words: string;
}

/**
 * Where the station face of each rib, and the middle of each fence, lies on the flat pattern of a section or transition, inside the
 * loops: from the foam face that rests on the rib (or carries the fence) along the normal to the neutral fibre.
 */
export function layLines(
  design: Design,
  part: Part,
  loops: readonly (readonly PaperPoint[])[],
): readonly LayLine[] {
  const sheet = design.sheets.find((candidate) => candidate.id === part.sheetId);
  const toFlat = flatOfPlan(design, part);
  if (sheet === undefined || sheet.kind === "fence" || toFlat === undefined) return [];
  const lines = [
    ...centreTrace(design, part, sheet),
    ...ribTraces(design, part, sheet),
    ...fenceTraces(design, part, sheet),
  ];
  return lines.flatMap(({ words, plan, depthMm, style }) => {
    const flat = toFlat(sheet.kind === "section" ? plan : inFromEnds(plan), depthMm);
    return insideRuns(flat.map(toPaper), loops).map((points) => ({
      line: lineMark(points, style ?? "hidden", style === undefined ? "ribs" : "centre"),
      words,
    }));
  });
}

/**
 * The way from points of the plan on a face of a lying part, `depthMm` behind the drawn surface, to its flat pattern;
 * points beside a transition are left out. Undefined for a fence.
 */
export function flatOfPlan(
  design: Design,
  part: Part,
): ((plan: readonly PlanPoint[], depthMm: number) => readonly FlatPoint[]) | undefined {
  const sheet = design.sheets.find((candidate) => candidate.id === part.sheetId);
  const place = partPlaces(design.sheets, part);
  if (sheet === undefined || sheet.kind === "fence" || place === undefined) return undefined;
  const box = boxOf(part.loops.flatMap((loop) => loop.edges.flatMap((edge) => edge.points.map(toPaper))));
  const span = [box.left, box.right] as const;
  return (plan, depthMm) =>
    sheet.kind === "section"
      ? plan.map((target) => flatUnder(place, target, { depthMm, span }))
      : plan.flatMap((target) => flatOnRulings(place, target, { depthMm, part }) ?? []);
}

/** A line in plan on a face of the foam. */
interface Trace {
  readonly words: string;
  readonly plan: readonly PlanPoint[];
  readonly depthMm: number;
  /** Dashed if absent. */
  readonly style?: "centre";
}

/** The centre line of the car on a sheet that lies across it. */
function centreTrace(design: Design, part: Part, sheet: LyingSheet): readonly Trace[] {
  if (part.hand !== "whole" || design.project.symmetry !== "mirrored") return [];
  const xs = sheet.planLoops.flatMap((loop) => loop.map((p) => p.x));
  const [first, last] = [Math.min(...xs), Math.max(...xs)];
  const steps = 20;
  const plan = Array.from({ length: steps + 1 }, (_, i) => ({
    x: first + ((last - first) * i) / steps,
    y: 0,
  }));
  return [{ words: "centre line of the car", plan, depthMm: sheet.depths.neutralMm, style: "centre" }];
}

/** The stretch of each rib that carries the part. */
function ribTraces(design: Design, part: Part, sheet: LyingSheet): readonly Trace[] {
  const { attitude } = design.jig.baseboard;
  const depthMm = attitude === "upright" ? sheet.depths.coreLowerMm : sheet.depths.coreUpperMm;
  return design.jig.ribs.flatMap((rib) => {
    const along = rib.heights.filter((height) => height.partId === part.id).map((height) => height.atMm);
    if (along.length < 2) return [];
    const plan = along.map((place) =>
      rib.runs === "across" ? { x: rib.atMm, y: place } : { x: place, y: rib.atMm },
    );
    return [{ words: `rib ${rib.id}`, plan, depthMm }];
  });
}

/** Steps along each piece of a fence's line. */
const FENCE_STEPS = 12;

function fenceTraces(design: Design, part: Part, sheet: LyingSheet): readonly Trace[] {
  return design.joints.flatMap((joint) => {
    if (joint.kind !== "fence seat" || joint.partIds[1] !== part.id) return [];
    const fencePart = design.parts.find((candidate) => candidate.id === joint.partIds[0]);
    const fence = design.sheets.find((candidate) => candidate.id === fencePart?.sheetId);
    if (fence?.kind !== "fence" || fencePart === undefined) return [];
    const sign = fencePart.hand === "left" ? -1 : 1;
    const plan = fenceLine(fence).map((p) => ({ x: p.x, y: sign * p.y }));
    return [{ words: `fence ${fencePart.id} below`, plan, depthMm: sheet.depths.coreLowerMm }];
  });
}

const fenceLine = (fence: FenceSheet): readonly PlanPoint[] =>
  fence.chart.pieces.flatMap(({ piece }, i) =>
    Array.from({ length: FENCE_STEPS + (i === 0 ? 1 : 0) }, (_, k) => {
      const [x, y] = pointOnPiece(piece, (i === 0 ? k : k + 1) / FENCE_STEPS);
      return { x, y };
    }),
  );

/**
 * The flat point whose place at a depth lies over a plan point: u by a bracketed root in x, v by correcting y,
 * in turn; v moves y only, and a heading couples them weakly, so a few turns are enough.
 */
function flatUnder(
  place: FlatToSpace,
  target: PlanPoint,
  face: { readonly depthMm: number; readonly span: readonly [number, number] },
): FlatPoint {
  const { depthMm, span } = face;
  let flat: FlatPoint = { u: (span[0] + span[1]) / 2, v: 0 };
  for (let turn = 0; turn < TURNS; turn++) {
    const { v } = flat;
    const miss = (u: number) => place({ u, v }, depthMm).x - target.x;
    const [low, high] = [miss(span[0]), miss(span[1])];
    const u = low >= 0 ? span[0] : high <= 0 ? span[1] : bracketedRoot(miss, span[0], span[1]);
    const here = place({ u, v }, depthMm);
    const step = place({ u, v: v + 1 }, depthMm).y - here.y;
    flat = { u, v: v + (target.y - here.y) / step };
  }
  return flat;
}

const TURNS = 4;

/** A sheet ends at its edges: lines on it are looked for from so far inside, mm. */
const CLEAR_OF_EDGES_MM = 2;

/** A line in plan with its ends drawn in by a little. */
function inFromEnds(plan: readonly PlanPoint[]): readonly PlanPoint[] {
  const drawnIn = (end: PlanPoint, next: PlanPoint): PlanPoint => {
    const lengthMm = Math.hypot(next.x - end.x, next.y - end.y);
    const share = lengthMm > 0 ? Math.min(0.5, CLEAR_OF_EDGES_MM / lengthMm) : 0;
    return { x: end.x + (next.x - end.x) * share, y: end.y + (next.y - end.y) * share };
  };
  if (plan.length < 2) return plan;
  return [drawnIn(at(plan, 0), at(plan, 1)), ...plan.slice(1, -1), drawnIn(at(plan, -1), at(plan, -2))];
}

/** Places along each ruling that are looked at first, steps of Newton's from the nearest, and its feeler, mm. */
const LOOKS_ON_RULING = 4;
const NEWTON_STEPS = 8;
const FEEL_MM = 0.5;
/** A place that lies this near to its target in plan is found, mm. */
const FOUND_MM = 0.02;

/** The same on a transition: by Newton's method in plan from the nearest place of a ruling; undefined beside the sheet. */
function flatOnRulings(
  place: FlatToSpace,
  target: PlanPoint,
  { depthMm, part }: { readonly depthMm: number; readonly part: Part },
): FlatPoint | undefined {
  const missAt = (flat: FlatPoint) => {
    const { x, y } = place(flat, depthMm);
    return { dx: target.x - x, dy: target.y - y };
  };
  let flat = nearestOnRulings(part, target);
  for (let step = 0; flat !== undefined && step < NEWTON_STEPS; step++) {
    const { u, v }: FlatPoint = flat;
    const here = missAt(flat);
    if (Math.hypot(here.dx, here.dy) < FOUND_MM) return flat;
    const [alongU, alongV] = [missAt({ u: u + FEEL_MM, v }), missAt({ u, v: v + FEEL_MM })];
    const [xu, yu] = [(here.dx - alongU.dx) / FEEL_MM, (here.dy - alongU.dy) / FEEL_MM];
    const [xv, yv] = [(here.dx - alongV.dx) / FEEL_MM, (here.dy - alongV.dy) / FEEL_MM];
    const det = xu * yv - xv * yu;
    if (Math.abs(det) < 1e-6) return undefined;
    flat = { u: u + (here.dx * yv - here.dy * xv) / det, v: v + (here.dy * xu - here.dx * yu) / det };
  }
  return undefined;
}

function nearestOnRulings({ rulings }: Part, target: PlanPoint): FlatPoint | undefined {
  let best: { readonly flat: FlatPoint; readonly missMm: number } | undefined;
  for (const { from, to, fromSpace, toSpace } of rulings) {
    for (let i = 0; i <= LOOKS_ON_RULING; i++) {
      const t = (i + 0.5) / (LOOKS_ON_RULING + 1);
      const mix = (a: number, b: number) => a + (b - a) * t;
      const missMm = Math.hypot(
        mix(fromSpace.x, toSpace.x) - target.x,
        mix(fromSpace.y, toSpace.y) - target.y,
      );
      if (best === undefined || missMm < best.missMm)
        best = { flat: { u: mix(from.u, to.u), v: mix(from.v, to.v) }, missMm };
    }
  }
  return best?.flat;
}

/** Distance at which a line is looked at inside or outside the loops, mm. */
const LOOK_MM = 4;

/** The stretches of a line inside loops; a straight one keeps its two ends only. */
function insideRuns(
  points: readonly PaperPoint[],
  loops: readonly (readonly PaperPoint[])[],
): readonly (readonly PaperPoint[])[] {
  const runs: PaperPoint[][] = [];
  let run: PaperPoint[] = [];
  for (const p of closeSteps(points)) {
    if (isInsideLoops(p, loops)) {
      if (run.length === 0) runs.push(run);
      run.push(p);
    } else run = [];
  }
  return runs.filter((one) => one.length > 1).map(straightened);
}

function closeSteps(points: readonly PaperPoint[]): readonly PaperPoint[] {
  return points.flatMap((p, i) => {
    const before = points[i - 1];
    if (before === undefined) return [p];
    const count = Math.max(1, Math.ceil(Math.hypot(p.x - before.x, p.y - before.y) / LOOK_MM));
    return Array.from({ length: count }, (_, k) => {
      const t = (k + 1) / count;
      return { x: before.x + (p.x - before.x) * t, y: before.y + (p.y - before.y) * t };
    });
  });
}

function straightened(run: readonly PaperPoint[]): readonly PaperPoint[] {
  const [a, b] = [at(run, 0), at(run, -1)];
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const off = (p: PaperPoint) => Math.abs((p.x - a.x) * (b.y - a.y) - (p.y - a.y) * (b.x - a.x)) / length;
  return run.every((p) => off(p) < 0.02) ? [a, b] : run;
}
