import type { CubicPiece, CurvePiece } from "../curves/index.ts";
import { at, distance2, distanceSpace, type Vec2 } from "../foundation/index.ts";
import { pointOnRuled, type RuledPlace, type RuledSurface } from "../rulings/index.ts";
import type { EdgeRole } from "./types.ts";

/** One of the four sides of a strip, or a stretch of it: straight in the chart, along a side or along a ruling. */
export interface BorderRun {
  readonly edgeId: string;
  readonly name: string;
  readonly role: EdgeRole;
  readonly from: RuledPlace;
  readonly to: RuledPlace;
}

/** Which of how many strips of a divided sheet. */
export interface StripPlace {
  readonly strip: number;
  readonly count: number;
}

/** The four sides of a strip in a row, counter-clockwise as the normal comes toward the eye. */
export function stripBorder(
  { side, lengthSMm }: RuledSurface,
  [fromT, toT]: readonly [number, number],
  { strip, count }: StripPlace,
): readonly BorderRun[] {
  const near = strip === 0 ? FIRST : dividing(strip);
  const far = strip === count - 1 ? SECOND : dividing(strip + 1);
  const [ahead, behind] = side === 1 ? [lengthSMm, 0] : [0, lengthSMm];
  const closing = (sMm: number) => (sMm === 0 ? START : END);
  return [
    { ...near, from: { sMm: behind, t: fromT }, to: { sMm: ahead, t: fromT } },
    { ...closing(ahead), from: { sMm: ahead, t: fromT }, to: { sMm: ahead, t: toT } },
    { ...far, from: { sMm: ahead, t: toT }, to: { sMm: behind, t: toT } },
    { ...closing(behind), from: { sMm: behind, t: toT }, to: { sMm: behind, t: fromT } },
  ];
}

type Naming = Pick<BorderRun, "edgeId" | "name" | "role">;
const FIRST: Naming = { edgeId: "first", name: "first edge", role: "free" };
const SECOND: Naming = { edgeId: "second", name: "second edge", role: "free" };
const START: Naming = { edgeId: "start", name: "start", role: "free" };
const END: Naming = { edgeId: "end", name: "end", role: "free" };
const dividing = (number: number): Naming => ({
  edgeId: `divide-${number}`,
  name: `dividing line ${number}`,
  role: "seam",
});

/** Where an edge may turn at once: corners of either edge, and places where a fan begins or ends. */
export function breaksOf({ rulings, first, second, lengthSMm }: RuledSurface): readonly number[] {
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

/** A run cut where its edge may turn, each stretch between two of these; a run along a ruling is one. */
export function stretchesOfRun(
  surface: RuledSurface,
  { from, to }: BorderRun,
): readonly (readonly [RuledPlace, RuledPlace])[] {
  if (from.sMm === to.sMm) return [[from, to]];
  const [low, high] = [Math.min(from.sMm, to.sMm), Math.max(from.sMm, to.sMm)];
  const within = breaksOf(surface).filter((s) => s > low + 1e-9 && s < high - 1e-9);
  const stops = [from.sMm, ...(from.sMm < to.sMm ? within : within.toReversed()), to.sMm];
  return stops.slice(1).map((sMm, i) => [
    { sMm: at(stops, i), t: from.t },
    { sMm, t: from.t },
  ]);
}

/** In a fan the edge that the rulings start from stands still; behind the drawn surface it opens to a short arc. */
export function standsStill(surface: RuledSurface, [from, to]: readonly [RuledPlace, RuledPlace]): boolean {
  const middle = { sMm: (from.sMm + to.sMm) / 2, t: from.t };
  const [a, b, c] = [from, middle, to].map((place) => pointOnRuled(surface, place, 0));
  return (
    a !== undefined && b !== undefined && c !== undefined && distanceSpace(a, b) + distanceSpace(b, c) < 1e-6
  );
}

/** Plan curves are fitted to this, mm: what openings share with an edge they then share to this. */
const FITTED_MM = 1e-6;
const MOST_HALVINGS = 10;
/** A stretch shorter in plan is a point. */
const NO_LENGTH_MM = 1e-9;

/** A border run of the surface at a depth, seen in plan: cubics, and lines where it is straight, in the order of the run. */
export function runInPlan(surface: RuledSurface, run: BorderRun, depthMm: number): readonly CurvePiece[] {
  return stretchesOfRun(surface, run).flatMap(([from, to]) =>
    fitInPlan((share) => {
      const { x, y } = pointOnRuled(
        surface,
        { sMm: from.sMm + (to.sMm - from.sMm) * share, t: from.t + (to.t - from.t) * share },
        depthMm,
      );
      return [x, y];
    }, run.edgeId).map(({ piece }) => piece),
  );
}

/** A fitted piece, and the shares of the curve that it goes from and to. */
export interface FittedPiece {
  readonly piece: CurvePiece;
  readonly from: number;
  readonly to: number;
}

/** A smooth plan curve over shares 0 to 1 as cubics through four of its points each, or lines where it is straight. */
export function fitInPlan(curve: (share: number) => Vec2, edgeId: string): readonly FittedPiece[] {
  const fitted: FittedPiece[] = [];
  const halve = (from: number, to: number, halvings: number): void => {
    const pointAt = (part: number) => curve(from + (to - from) * part);
    const [a, b] = [pointAt(0), pointAt(1)];
    const probes = [1 / 6, 1 / 2, 5 / 6].map((part) => ({ part, point: pointAt(part) }));
    const between = [pointAt(1 / 3), pointAt(2 / 3)] as const;
    if ([...probes.map(({ point }) => point), ...between].every((p) => offChordMm(a, b, p) < NO_LENGTH_MM)) {
      if (distance2(a, b) > NO_LENGTH_MM)
        fitted.push({ piece: { kind: "line", edgeId, from: a, to: b }, from, to });
      return;
    }
    const piece = throughFour(edgeId, [a, ...between, b]);
    const misses = probes.some(({ part, point }) => distance2(onCubic(piece, part), point) > FITTED_MM);
    if (misses && halvings > 0) {
      halve(from, (from + to) / 2, halvings - 1);
      halve((from + to) / 2, to, halvings - 1);
    } else fitted.push({ piece, from, to });
  };
  halve(0, 1, MOST_HALVINGS);
  return fitted;
}

const onCubic = ({ first, second }: CubicPiece, t: number): Vec2 => [
  first[0] + t * (first[1] + t * (first[2] + t * first[3])),
  second[0] + t * (second[1] + t * (second[2] + t * second[3])),
];

/** How far a point lies from the chord between two others, mm. */
function offChordMm(a: Vec2, b: Vec2, p: Vec2): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const square = dx * dx + dy * dy;
  const share = square === 0 ? 0 : ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square;
  const within = Math.min(1, Math.max(0, share));
  return distance2(p, [a[0] + within * dx, a[1] + within * dy]);
}

/** The cubic that passes four points at 0, 1/3, 2/3 and 1. */
function throughFour(edgeId: string, points: readonly [Vec2, Vec2, Vec2, Vec2]): CubicPiece {
  const axis = (k: 0 | 1): CubicPiece["first"] => {
    const [a, b, c, d] = [points[0][k], points[1][k], points[2][k], points[3][k]];
    return [
      a,
      -5.5 * a + 9 * b - 4.5 * c + d,
      9 * a - 22.5 * b + 18 * c - 4.5 * d,
      -4.5 * a + 13.5 * b - 13.5 * c + 4.5 * d,
    ];
  };
  return { kind: "cubic", edgeId, first: axis(0), second: axis(1) };
}
