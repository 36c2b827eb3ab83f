import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import type { FlatPoint } from "../../../core/foundation/index.ts";
import { loopsAreaMm2, type Part, polygonOfLoop } from "../../../core/patterns/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { readExample } from "../../read-example.ts";

const demo = readExample("hill-climb-floor");
const withLaminate = (laminate: Project["laminate"]) => designTray({ ...demo, laminate });
const bare = designTray(demo);

/** How far a point lies from a polyline, mm. */
function distanceMm(p: FlatPoint, line: readonly FlatPoint[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1], line[i]];
    if (!a || !b) continue;
    const [du, dv] = [b.u - a.u, b.v - a.v];
    const along = ((p.u - a.u) * du + (p.v - a.v) * dv) / (du * du + dv * dv || 1);
    const t = Math.min(1, Math.max(0, along));
    least = Math.min(least, Math.hypot(p.u - a.u - t * du, p.v - a.v - t * dv));
  }
  return least;
}

const closed = (loops: Part["loops"]) =>
  loops.map(polygonOfLoop).map((polygon) => [...polygon, ...polygon.slice(0, 1)]);
const edgesOf = (part: Part) => part.loops.flatMap(({ edges }) => edges);

const freeOf = (part: Part) =>
  (part.finished ?? part.loops).flatMap(({ edges }) => edges).filter(({ role }) => role === "free");

/** A line without a first and last stretch of less than 2 mm: a step that the set-back of a neighbour leaves. */
const withoutSteps = (points: readonly FlatPoint[]) => {
  const isStep = (a: FlatPoint | undefined, b: FlatPoint | undefined) =>
    a !== undefined && b !== undefined && Math.hypot(b.u - a.u, b.v - a.v) < 2;
  const from = isStep(points[0], points[1]) ? 1 : 0;
  const to = isStep(points.at(-2), points.at(-1)) ? points.length - 1 : points.length;
  return points.slice(from, to);
};

/** Whether a point lies inside loops, even-odd. */
function isInside(p: FlatPoint, polygons: readonly (readonly FlatPoint[])[]): boolean {
  let crossings = 0;
  for (const polygon of polygons)
    for (let i = 1; i < polygon.length; i++) {
      const [a, b] = [polygon[i - 1], polygon[i]];
      if (!a || !b || a.v > p.v === b.v > p.v) continue;
      if (a.u + ((p.v - a.v) / (b.v - a.v)) * (b.u - a.u) > p.u) crossings++;
    }
  return crossings % 2 === 1;
}

/** The area inside the old outline that lies farther than a width from every one of some lines, by counting a fine grid. */
function countedMm2(part: Part, lines: readonly (readonly FlatPoint[])[], widthMm: number): number {
  const polygons = closed(part.loops);
  const points = polygons.flat();
  const [fromU, toU] = [Math.min(...points.map(({ u }) => u)), Math.max(...points.map(({ u }) => u))];
  const [fromV, toV] = [Math.min(...points.map(({ v }) => v)), Math.max(...points.map(({ v }) => v))];
  const step = 2;
  let count = 0;
  for (let u = fromU + step / 2; u < toU; u += step)
    for (let v = fromV + step / 2; v < toV; v += step) {
      const p = { u, v };
      if (isInside(p, polygons) && lines.every((line) => distanceMm(p, line) >= widthMm)) count++;
    }
  return count * step * step;
}

describe("a hard insert", () => {
  const made = withLaminate({ edgeFinish: "insert", insertMm: 20 });

  it("ends the foam by its width inside the drawn edge, along all of every free edge", () => {
    let looked = 0;
    for (const part of made.parts) {
      const outline = freeOf(part).map(({ points }) => withoutSteps(points));
      for (const edge of edgesOf(part).filter(({ letIn }) => letIn)) {
        // The steps at its ends lead out to the drawn corner.
        for (const point of edge.points.slice(1, -1)) {
          const ownMm = Math.min(...outline.map((line) => distanceMm(point, line)));
          expect(ownMm).toBeGreaterThan(20 - 0.02);
          expect(ownMm).toBeLessThan(20 + 0.02);
          looked++;
        }
      }
      expect(edgesOf(part).filter(({ role, letIn }) => role === "free" && !letIn)).toEqual([]);
      const before = bare.parts.find(({ id }) => id === part.id);
      if (part.kind !== "fence")
        expect(loopsAreaMm2(part.finished ?? [])).toBeCloseTo(before?.flatAreaMm2 ?? 0, 6);
    }
    expect(looked).toBeGreaterThan(1000);
  });

  it("leaves the foam that lies farther from every free edge than it is wide: counted on a grid", () => {
    for (const id of ["S1", "S2R", "S3"]) {
      const before = bare.parts.find((part) => part.id === id);
      const after = made.parts.find((part) => part.id === id);
      if (!before || !after) throw new Error(id);
      const free = edgesOf(before).filter(({ role }) => role === "free");
      const counted = countedMm2(
        before,
        free.map(({ points }) => thinned(points)),
        20,
      );
      // Past the end of an edge the strip ends square, and the grid counts round: a few square centimetres.
      expect(Math.abs(after.flatAreaMm2 - counted)).toBeLessThan(0.005 * before.flatAreaMm2);
      expect(before.flatAreaMm2 - counted).toBeGreaterThan(0.01 * before.flatAreaMm2);
    }
  });

  it("of a plain rectangle takes its width off each free side", () => {
    const fence = made.parts.find(({ id }) => id === "F1R");
    const before = bare.parts.find(({ id }) => id === "F1R");
    const lengthOf = (part: typeof fence, edgeId: string) =>
      part?.edges.find((edge) => edge.edgeId === edgeId)?.flatLengthMm ?? 0;
    expect(lengthOf(before, "upper") - lengthOf(fence, "upper")).toBeCloseTo(40, 0);
    expect(lengthOf(before, "rear") - lengthOf(fence, "rear")).toBeCloseTo(20, 0);
  });

  it("keeps flat and space lengths of every edge together", () => {
    for (const { edges } of made.parts)
      for (const { flatLengthMm, spaceLengthMm } of edges)
        expect(Math.abs(spaceLengthMm - flatLengthMm)).toBeLessThan(0.02);
  });

  it("has no foam left standing outside it, whatever trim is asked for", () => {
    const trimmed = designTray({
      ...demo,
      laminate: { edgeFinish: "insert" },
      cutting: { ...demo.cutting, trimMm: 15, kerfMm: 0 },
    });
    for (const strip of trimmed.strips.filter(({ partId }) => partId === "S3"))
      expect(Math.abs(area(strip.cutLinesMm[0] ?? []))).toBeCloseTo(strip.areaMm2, 0);
  });

  it("that is wider than a curve is tight, or than its neighbours are long, is told and left out there", () => {
    const { problems, parts } = withLaminate({ edgeFinish: "insert", insertMm: 90 });
    const failed = problems.filter(({ kind }) => kind === "edge-cannot-be-set-back");
    expect(failed.length).toBeGreaterThan(0);
    expect(parts).toHaveLength(bare.parts.length);
    for (const part of parts) expect(part.flatAreaMm2).toBeGreaterThan(0);
  });

  it("of one edge alone leaves all others where they were, and no edge of the left hand differs from its image", () => {
    const one = withLaminate({ edgeFinishes: [{ itemId: "s3", edgeId: "n2", finish: "insert" }] });
    const changed = one.parts.filter(({ id, flatAreaMm2 }) => {
      const before = bare.parts.find((part) => part.id === id);
      return Math.abs((before?.flatAreaMm2 ?? 0) - flatAreaMm2) > 1e-6;
    });
    expect(changed.map(({ id }) => id)).toEqual(["S3"]);
    const [first] = changed;
    expect(
      (bare.parts.find(({ id }) => id === "S3")?.flatAreaMm2 ?? 0) - (first?.flatAreaMm2 ?? 0),
    ).toBeCloseTo(20 * 2 * 210, -3);
    const hands = (id: string) => made.parts.find((part) => part.id === id)?.flatAreaMm2 ?? 0;
    expect(hands("S2L")).toBeCloseTo(hands("S2R"), 9);
  });
});

describe("a flange", () => {
  const made = withLaminate({ edgeFinish: "flange", flangeMm: 12 });

  it("leaves the foam of sheets as it is, to be taken off under the first skin, and ends that of fences inside", () => {
    for (const part of made.parts) {
      const before = bare.parts.find(({ id }) => id === part.id);
      if (part.kind === "fence")
        expect(part.flatAreaMm2).toBeLessThan((before?.flatAreaMm2 ?? 0) - 12 * 1000);
      else expect(part.flatAreaMm2).toBe(before?.flatAreaMm2);
    }
  });

  it("closes round no lower edge of a fence: that comes to lie where it is drawn", () => {
    const heightOf = (design: typeof made) => {
      const fence = design.sheets.find(({ id }) => id === "F1");
      return fence?.loops[0]?.edges.find(({ edgeId }) => edgeId === "lower")?.points[0]?.v ?? 0;
    };
    expect(heightOf(bare) - heightOf(made)).toBeCloseTo(demo.skins.lowerMm, 6);
  });
});

/** Every tenth point, and the last. */
const thinned = (points: readonly FlatPoint[]) =>
  points.filter((_, i) => i % 10 === 0 || i === points.length - 1);

const area = (points: readonly FlatPoint[]): number =>
  points.reduce((sum, a, i) => {
    const b = points[(i + 1) % points.length] ?? a;
    return sum + (a.u * b.v - b.u * a.v) / 2;
  }, 0);
