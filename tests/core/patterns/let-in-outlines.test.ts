import { describe, expect, it } from "vitest";
import type { FlatPoint } from "../../../core/foundation/index.ts";
import type { LaidEdge } from "../../../core/patterns/flat-loops.ts";
import { letInEdges } from "../../../core/patterns/let-in-edges.ts";
import type { LetIn } from "../../../core/project/index.ts";

/** The same numbers each time (Park and Miller 1988). */
function newDice(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** An outline around the origin, counter-clockwise: straight or bowed edges between corners at uneven angles and distances. */
function outline(dice: () => number): readonly LaidEdge[] {
  const count = 4 + Math.floor(dice() * 5);
  const corners = Array.from({ length: count }, (_, i) => {
    const angle = ((i + 0.6 * dice()) / count) * 2 * Math.PI;
    const radius = 220 + 180 * dice();
    return { u: radius * Math.cos(angle), v: radius * Math.sin(angle) };
  });
  return corners.map((from, i): LaidEdge => {
    const to = corners[(i + 1) % count] ?? from;
    const [du, dv] = [to.u - from.u, to.v - from.v];
    const bow = dice() < 0.5 ? 0 : 0.25 * (dice() - 0.3);
    const steps = bow === 0 ? 1 : 60;
    const points = Array.from({ length: steps + 1 }, (_, k) => {
      if (k === steps) return to;
      const t = k / steps;
      const out = 4 * bow * t * (1 - t);
      return { u: from.u + t * du + out * dv, v: from.v + t * dv - out * du };
    });
    return plainEdge(`e${i}`, points);
  });
}

const plainEdge = (edgeId: string, points: readonly FlatPoint[]): LaidEdge => ({
  edgeId,
  name: edgeId,
  role: "free",
  points,
  setBackMm: points.map(() => 0),
  bevelsRad: points.map(() => 0),
});

const areaMm2 = (polygon: readonly FlatPoint[]): number =>
  polygon.reduce((sum, a, i) => {
    const b = polygon[(i + 1) % polygon.length] ?? a;
    return sum + (a.u * b.v - b.u * a.v) / 2;
  }, 0);

const polygonOf = (edges: readonly LaidEdge[]) => edges.flatMap(({ points }) => points.slice(0, -1));

function distanceMm(p: FlatPoint, line: readonly FlatPoint[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1] ?? p, line[i] ?? p];
    const [du, dv] = [b.u - a.u, b.v - a.v];
    const t = Math.min(1, Math.max(0, ((p.u - a.u) * du + (p.v - a.v) * dv) / (du * du + dv * dv || 1)));
    least = Math.min(least, Math.hypot(p.u - a.u - t * du, p.v - a.v - t * dv));
  }
  return least;
}

function isInside(p: FlatPoint, polygon: readonly FlatPoint[]): boolean {
  let inside = false;
  polygon.forEach((a, i) => {
    const b = polygon[(i + 1) % polygon.length] ?? a;
    if (a.v > p.v !== b.v > p.v && a.u + ((p.v - a.v) / (b.v - a.v)) * (b.u - a.u) > p.u) inside = !inside;
  });
  return inside;
}

/** Whether a closed line crosses itself: every two segments that do not touch each other, in turn. */
function crossesItself(polygon: readonly FlatPoint[]): boolean {
  const n = polygon.length;
  const side = (a: FlatPoint, b: FlatPoint, c: FlatPoint) =>
    (b.u - a.u) * (c.v - a.v) - (b.v - a.v) * (c.u - a.u);
  for (let i = 0; i < n; i++) {
    const [a, b, c] = [polygon[i], polygon[(i + 1) % n], polygon[(i + 2) % n]];
    // Back along itself.
    if (
      a &&
      b &&
      c &&
      Math.abs(side(a, b, c)) < 1e-9 &&
      (b.u - a.u) * (c.u - b.u) + (b.v - a.v) * (c.v - b.v) < 0
    )
      return true;
  }
  for (let i = 0; i < n; i++)
    for (let k = i + 2; k < n; k++) {
      if (i === 0 && k === n - 1) continue;
      const [a, b, c, d] = [polygon[i], polygon[(i + 1) % n], polygon[k], polygon[(k + 1) % n]];
      if (!a || !b || !c || !d) continue;
      if (side(a, b, c) * side(a, b, d) < -1e-9 && side(c, d, a) * side(c, d, b) < -1e-9) return true;
    }
  return false;
}

describe("edges of any outline that something is let in along", () => {
  const insert: LetIn = { of: "insert", widthMm: 20 };

  it("end where the strip begins: no crossing, no foam nearer to them, none lost that lies farther from all", () => {
    const dice = newDice(20261);
    let looked = 0;
    let failures = 0;
    for (let run = 0; run < 200; run++) {
      const edges = outline(dice);
      const chosen = edges.filter(() => dice() < 0.5);
      const letIn = new Map(chosen.map(({ edgeId }) => [edgeId, insert]));
      const { loop, failed } = letInEdges({ edges }, letIn);
      failures += failed.length;
      const [before, after] = [polygonOf(edges), polygonOf(loop.edges)];
      loop.edges.forEach((edge, i) => {
        const next = loop.edges[(i + 1) % loop.edges.length];
        expect(edge.points.at(-1)).toEqual(next?.points[0]);
      });
      expect(crossesItself(after)).toBe(false);
      const lines = chosen.filter(({ edgeId }) => !failed.includes(edgeId)).map(({ points }) => points);
      for (let k = 0; k < 300; k++) {
        const p = { u: 800 * (dice() - 0.5), v: 800 * (dice() - 0.5) };
        if (!isInside(p, before)) continue;
        const away = Math.min(Number.POSITIVE_INFINITY, ...lines.map((line) => distanceMm(p, line)));
        const ends = lines.flatMap((line) => [line[0] ?? p, line.at(-1) ?? p]);
        const toEndMm = Math.min(
          Number.POSITIVE_INFINITY,
          ...ends.map((e) => Math.hypot(e.u - p.u, e.v - p.v)),
        );
        const isFoam = isInside(p, after);
        // A strip ends square or along its neighbour's line: near its ends foam may come closer.
        if (away < 19.9 && toEndMm > 30) expect(isFoam).toBe(false);
        // In corners the strips meet in a mitre.
        if (away > 32) expect(isFoam).toBe(true);
        looked++;
      }
    }
    expect(looked).toBeGreaterThan(10_000);
    expect(failures).toBe(0);
  });

  it("close up a rounded corner that is tighter than the strip is wide: what is left has a sharp one", () => {
    // 400 by 300 with corners of 10 mm radius, each shared by halves between its two edges.
    const edges = [0, 1, 2, 3].map((side): LaidEdge => {
      const angle = (side * Math.PI) / 2;
      const [half, out] = side % 2 === 0 ? [200, 150] : [150, 200];
      const arc = (from: number, to: number, middle: number) =>
        Array.from({ length: 21 }, (_, k) => {
          const t = from + ((to - from) * k) / 20;
          return { u: middle + 10 * Math.sin(t), v: -(out - 10) - 10 * Math.cos(t) };
        });
      const flat = [...arc(-Math.PI / 4, 0, -(half - 10)), ...arc(0, Math.PI / 4, half - 10)].map(
        ({ u, v }) => ({
          u: u * Math.cos(angle) - v * Math.sin(angle),
          v: u * Math.sin(angle) + v * Math.cos(angle),
        }),
      );
      return plainEdge(`e${side}`, flat);
    });
    const all = new Map(edges.map(({ edgeId }) => [edgeId, insert]));
    const { loop, failed } = letInEdges({ edges }, all);
    expect(failed).toEqual([]);
    expect(crossesItself(polygonOf(loop.edges))).toBe(false);
    expect(areaMm2(polygonOf(loop.edges))).toBeCloseTo(360 * 260, 3);
  });

  it("meet in the middle of an edge that turns a corner in short steps", () => {
    // Down the left side, along the bottom and up the right one in steps of half a millimetre, as one edge of 300 by 200.
    const steps = (from: FlatPoint, to: FlatPoint) => {
      const count = Math.round(2 * Math.hypot(to.u - from.u, to.v - from.v));
      return Array.from({ length: count }, (_, k) => ({
        u: from.u + ((to.u - from.u) * k) / count,
        v: from.v + ((to.v - from.v) * k) / count,
      }));
    };
    const [a, b, c, d] = [
      { u: 0, v: 200 },
      { u: 0, v: 0 },
      { u: 300, v: 0 },
      { u: 300, v: 200 },
    ];
    const edges = [
      plainEdge("three", [...steps(a, b), ...steps(b, c), ...steps(c, d), d]),
      plainEdge("top", [d, a]),
    ];
    const { loop, failed } = letInEdges({ edges }, new Map([["three", insert]]));
    expect(failed).toEqual([]);
    expect(crossesItself(polygonOf(loop.edges))).toBe(false);
    expect(areaMm2(polygonOf(loop.edges))).toBeCloseTo(260 * 180, 3);
  });
});
