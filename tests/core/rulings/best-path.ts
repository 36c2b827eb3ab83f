import { placeOnEdge, type RuledSurface, rulingAt } from "../../../core/rulings/index.ts";
import type { Triple } from "./edges-of.ts";

/**
 * The cheapest pairing of two edges on a grid, by plain code of its own: every ruling of the grid has a cost (twist² +
 * bend² beyond the foam's limit), every monotone path adds them up over half the length swept on both edges. From the
 * ends of the edges fans may start; they sweep one tangent and have no twist, and where they pass into the sheet the
 * twist of that ruling is a crease, charged four times its square over the whole sheet, and beyond 0.1° with its
 * sixth power, so that no path buys less twist with a crease.
 */

export interface Foam {
  readonly thicknessMm: number;
  readonly leastRadiusMm: number;
}

/** An edge at even shares of its length: points, unit tangents, and their change by length. */
interface Samples {
  readonly points: readonly Triple[];
  readonly tangents: readonly Triple[];
  readonly bends: readonly Triple[];
  readonly lengthMm: number;
}

const creaseCharge = (angle: number) => 4 * angle * angle * (1 + (angle / (Math.PI / 1800)) ** 4);

export interface BestPath {
  readonly cost: number;
  readonly maxTwistRad: number;
  readonly maxCreaseRad: number;
}

export type Edge = (t: number) => Triple;

const minus = (a: Triple, b: Triple): Triple => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const scaled = (a: Triple, f: number): Triple => [a[0] * f, a[1] * f, a[2] * f];
const cross = (a: Triple, b: Triple): Triple => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const size = (a: Triple): number => Math.sqrt(dot(a, a));
const unit = (a: Triple): Triple => scaled(a, 1 / size(a));

/** Twist and bend of the ruling between two places; in a fan from one of them the other's tangent alone counts. */
function judge(a: Place, b: Place, fan: Fan, { thicknessMm, leastRadiusMm }: Foam) {
  const ruling = minus(b.point, a.point);
  if (size(ruling) < 1e-6) return { twist: 0, cost: 0 };
  const r = unit(ruling);
  const [na, nb] = [cross(a.tangent, r), cross(b.tangent, r)];
  const isFixed = size(na) > 1e-6 && size(nb) > 1e-6;
  const angle = isFixed ? Math.atan2(dot(cross(na, nb), r), dot(na, nb)) : 0;
  const twist = fan === "none" ? angle : 0;
  const bendAt = ({ tangent, bend }: Place, normal: Triple) => {
    const sine = size(normal);
    if (sine < 1e-6) return 0;
    const own = dot(bend, normal) / sine + (2 * twist * dot(tangent, r) * sine) / size(ruling);
    return Math.min(1 / thicknessMm, Math.abs(own) / (sine * sine));
  };
  const tightest = Math.max(fan === "first" ? 0 : bendAt(a, na), fan === "second" ? 0 : bendAt(b, nb));
  const bend = leastRadiusMm > 0 ? Math.max(0, thicknessMm * (tightest - 1 / leastRadiusMm)) : 0;
  return { twist: angle, cost: twist * twist + bend * bend };
}

type Fan = "none" | "first" | "second";

interface Place {
  readonly point: Triple;
  readonly tangent: Triple;
  readonly bend: Triple;
}

const placeOf = ({ points, tangents, bends }: Samples, k: number): Place => {
  const [point, tangent, bend] = [points[k], tangents[k], bends[k]];
  if (!point || !tangent || !bend) throw new Error("no such place");
  return { point, tangent, bend };
};

/** Even shares of an edge's length, found on a fine polyline; tangent and bend by differences inside the edge. */
function sample(edge: Edge, count: number): Samples {
  const FINE = 20_000;
  const lengths = [0];
  for (let k = 1; k <= FINE; k++) {
    const step = size(minus(edge(k / FINE), edge((k - 1) / FINE)));
    lengths.push((lengths[k - 1] ?? 0) + step);
  }
  const lengthMm = lengths[FINE] ?? 0;
  let k = 1;
  const ts = Array.from({ length: count + 1 }, (_, i) => {
    const target = (i / count) * lengthMm;
    while (k < FINE && (lengths[k] ?? 0) < target) k++;
    const [before, after] = [lengths[k - 1] ?? 0, lengths[k] ?? 0];
    return (k - 1 + (target - before) / (after - before)) / FINE;
  });
  const h = 1e-4;
  const velocity = (t: number) => scaled(minus(edge(t + h), edge(t - h)), 0.5 / h);
  const inside = (t: number) => Math.min(1 - 3 * h, Math.max(3 * h, t));
  return {
    points: ts.map(edge),
    tangents: ts.map((t) => unit(velocity(t))),
    bends: ts.map((t) => {
      const at = inside(t);
      const turn = minus(unit(velocity(at + h)), unit(velocity(at - h)));
      return scaled(turn, 1 / (2 * h * size(velocity(at))));
    }),
    lengthMm,
  };
}

const STEPS = [
  [1, 1],
  [1, 0],
  [0, 1],
  [1, 2],
  [2, 1],
  [1, 3],
  [3, 1],
  [2, 3],
  [3, 2],
] as const;

/** The cheapest path on a grid of `count` steps each way, creases and all. */
export function bestPath(first: Edge, second: Edge, foam: Foam, count = 200): BestPath {
  const [a, b] = [sample(first, count), sample(second, count)];
  const whole = a.lengthMm + b.lengthMm;
  const memo = new Map<string, { twist: number; cost: number }>();
  const ruling = (i: number, j: number, fan: Fan) => {
    const key = `${i} ${j} ${fan}`;
    const known = memo.get(key) ?? judge(placeOf(a, i), placeOf(b, j), fan, foam);
    memo.set(key, known);
    return known;
  };
  const isApex = (k: number) => k === 0 || k === count;
  type State = { cost: number; worst: number; crease: number };
  const best = new Map<string, State>();
  const keep = (key: string, state: State) => {
    const known = best.get(key);
    if (!known || state.cost < known.cost) best.set(key, state);
  };
  for (const fan of ["none", "first", "second"] as const)
    keep(`0 0 ${fan}`, { cost: 0, worst: 0, crease: 0 });
  for (let i = 0; i <= count; i++)
    for (let j = 0; j <= count; j++) {
      if (i + j > 0) turnCorner(i, j);
      for (const [di, dj] of STEPS) {
        const [toI, toJ] = [i + di, j + dj];
        if (toI > count || toJ > count) continue;
        const fan: Fan = di === 0 && isApex(i) ? "first" : dj === 0 && isApex(j) ? "second" : "none";
        const from = best.get(`${i} ${j} ${fan}`);
        if (!from) continue;
        const swept = ((di * a.lengthMm + dj * b.lengthMm) / count / whole) * 0.5;
        const [here, there] = [ruling(i, j, fan), ruling(toI, toJ, fan)];
        const worst = fan === "none" ? Math.max(from.worst, Math.abs(there.twist)) : from.worst;
        keep(`${toI} ${toJ} ${fan}`, { ...from, cost: from.cost + swept * (here.cost + there.cost), worst });
      }
    }
  /** A fan may end or begin at a ruling where the twist seen by both tangents is the crease. */
  function turnCorner(i: number, j: number): void {
    if (!isApex(i) && !isApex(j)) return;
    const crease = Math.abs(ruling(i, j, "none").twist);
    const arrivals = (["none", "first", "second"] as const).map((fan) => ({
      fan,
      state: best.get(`${i} ${j} ${fan}`),
    }));
    for (const { fan: came, state } of arrivals)
      for (const fan of ["none", "first", "second"] as const) {
        if (!state || fan === came) continue;
        const charged = state.cost + creaseCharge(crease);
        keep(`${i} ${j} ${fan}`, { ...state, cost: charged, crease: Math.max(state.crease, crease) });
      }
  }
  const ends = (["none", "first", "second"] as const).flatMap(
    (fan) => best.get(`${count} ${count} ${fan}`) ?? [],
  );
  const end = ends.reduce((x, y) => (y.cost < x.cost ? y : x));
  return { cost: end.cost, maxTwistRad: end.worst, maxCreaseRad: end.crease };
}

/** What a sheet costs by the same measure: its rulings at `count` even steps of s, creases charged. */
export function costOfSheet(sheet: RuledSurface, foam: Foam, count = 4000): BestPath {
  let [cost, maxTwistRad] = [0, 0];
  for (let k = 0; k < count; k++) {
    const sMm = ((k + 0.5) / count) * sheet.lengthSMm;
    const { firstMm, secondMm, fan } = rulingAt(sheet, sMm);
    const ruling = judge(placeOn(sheet, "first", firstMm), placeOn(sheet, "second", secondMm), fan, foam);
    cost += ruling.cost / count;
    if (fan === "none") maxTwistRad = Math.max(maxTwistRad, Math.abs(ruling.twist));
  }
  const creases = sheet.creases.map(({ angleRad }) => angleRad);
  for (const angleRad of creases) cost += creaseCharge(angleRad);
  return { cost, maxTwistRad, maxCreaseRad: Math.max(0, ...creases) };
}

function placeOn(sheet: RuledSurface, key: "first" | "second", lengthMm: number): Place {
  const triple = ({ x, y, z }: { readonly x: number; readonly y: number; readonly z: number }): Triple => [
    x,
    y,
    z,
  ];
  const at = placeOnEdge(sheet[key], lengthMm);
  return { point: triple(at.point), tangent: triple(at.tangent), bend: triple(at.curvature) };
}
