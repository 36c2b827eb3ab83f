import { pointOnPiece } from "../curves/index.ts";
import { at, type PlanPoint } from "../foundation/index.ts";
import { drawnPlaceMm } from "../jig/index.ts";
import type { Part } from "../patterns/index.ts";
import type { FenceSheet, LyingSheet } from "../surfaces/index.ts";
import { isInsideLoops } from "./chords.ts";
import type { Design } from "./design.ts";
import { flatOfPlan } from "./flat-of-plan.ts";
import { type LineMark, lineMark, toPaper } from "./marks.ts";
import { outboardLines } from "./outboard-lines.ts";
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
  const inside = lines.flatMap(({ words, plan, depthMm, style }) => {
    const flat = toFlat(sheet.kind === "section" ? plan : inFromEnds(plan), depthMm);
    return insideRuns(flat.map(toPaper), loops).map((points) => ({
      line: lineMark(points, style ?? "hidden", style === undefined ? "ribs" : "centre"),
      words,
    }));
  });
  return [...inside, ...outboardLines(design, part)];
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
    if (rib.isOutboard) return [];
    const along = rib.heights.filter((height) => height.partId === part.id).map((height) => height.atMm);
    if (along.length < 2) return [];
    const plan = along.map((place) =>
      rib.runs === "across" ? { x: drawnPlaceMm(rib, design.jig), y: place } : { x: place, y: rib.atMm },
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
