import { bracketedRoot, type FlatPoint, type PlanPoint } from "../foundation/index.ts";
import { type FlatToSpace, type Part, partPlaces } from "../patterns/index.ts";
import { boxOf } from "./boxes.ts";
import type { Design } from "./design.ts";
import { toPaper } from "./marks.ts";

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
      ? followFlat(place, plan, { depthMm, span })
      : plan.flatMap((target) => flatOnRulings(place, target, { depthMm, part }) ?? []);
}

/** The flat points under a line in plan, each looked for from the one before. */
function followFlat(place: FlatToSpace, plan: readonly PlanPoint[], face: FaceOfPart): readonly FlatPoint[] {
  let flat: FlatPoint = { u: (face.span[0] + face.span[1]) / 2, v: 0 };
  return plan.map((target) => {
    flat = flatUnder(place, target, face, flat);
    return flat;
  });
}

/** Where a search over a part takes place: the depth of the face, and the flat's first and last u. */
interface FaceOfPart {
  readonly depthMm: number;
  readonly span: readonly [number, number];
}

/** The flat point whose place at a depth lies over a plan point: by Newton's method in plan, from a flat point nearby. */
function flatUnder(place: FlatToSpace, target: PlanPoint, face: FaceOfPart, from: FlatPoint): FlatPoint {
  const [first, last] = face.span;
  let flat = from;
  for (let step = 0; step < NEWTON_STEPS; step++) {
    const here = place(flat, face.depthMm);
    const feelU = flat.u + FEEL_MM > last ? -FEEL_MM : FEEL_MM;
    const alongU = place({ u: flat.u + feelU, v: flat.v }, face.depthMm);
    const alongV = place({ u: flat.u, v: flat.v + FEEL_MM }, face.depthMm);
    const [xu, yu] = [(alongU.x - here.x) / feelU, (alongU.y - here.y) / feelU];
    const [xv, yv] = [(alongV.x - here.x) / FEEL_MM, (alongV.y - here.y) / FEEL_MM];
    const [dx, dy] = [target.x - here.x, target.y - here.y];
    const det = xu * yv - xv * yu;
    if (Math.abs(det) < 1e-6) break;
    const u = Math.min(last, Math.max(first, flat.u + (dx * yv - dy * xv) / det));
    const v = flat.v + (dy * xu - dx * yu) / det;
    const isSettled = Math.hypot(u - flat.u, v - flat.v) < SETTLED_MM;
    flat = { u, v };
    if (isSettled) return flat;
  }
  return flatBySearch(place, target, face);
}

/** Steps of Newton's that move a point less than this are its last, mm. */
const SETTLED_MM = 1e-6;

/**
 * The same where Newton's method does not settle: u by a bracketed root in x, v by correcting y, in turn; v moves y
 * only, and a heading couples them weakly, so a few turns are enough.
 */
function flatBySearch(place: FlatToSpace, target: PlanPoint, { depthMm, span }: FaceOfPart): FlatPoint {
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
