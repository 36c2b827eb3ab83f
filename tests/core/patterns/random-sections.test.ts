import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Curve } from "../../../core/curves/index.ts";
import { at, type FlatPoint } from "../../../core/foundation/index.ts";
import type { FlatLoop, Part } from "../../../core/patterns/index.ts";
import { applyCommand, type Project, resolveLines } from "../../../core/project/index.ts";
import { type BruteSheet, bruteArea, bruteEdgeLength } from "../brute-force.ts";
import {
  anyCorneredSection,
  anySection,
  drawnBackward,
  projectOf,
  type RandomSection,
} from "../random-sections.ts";
import { type LaidTray, layTray, relativeMiss } from "../trays.ts";

const SEED = 20261;
const settings = (numRuns: number) => ({ seed: SEED, numRuns });

/** Lengths and areas of a pattern as written, against those of the surface. */
const PATTERN_RELATIVE = 1e-6;
/** The brute force itself is good to this. */
const BRUTE_RELATIVE = 5e-8;
/** What moving, mirroring and finer sampling may change, mm. */
const UNCHANGED_MM = 0.01;

const HARMLESS = ["bend-too-tight"];

/** A random section laid flat; one that cannot be drawn is passed over and left to the tests of bad input. */
function layDrawable(project: Project): LaidTray {
  const laid = layTray(project);
  fc.pre(laid.problems.every(({ kind }) => HARMLESS.includes(kind)));
  return laid;
}

const polygonOf = (loop: FlatLoop): readonly FlatPoint[] =>
  loop.edges.flatMap(({ points }) => points.slice(0, -1));

function signedArea(polygon: readonly FlatPoint[]): number {
  return polygon.reduce((sum, a, i) => {
    const b = at(polygon, (i + 1) % polygon.length);
    return sum + (a.u * b.v - b.u * a.v) / 2;
  }, 0);
}

/** Pairs of segments of a loop that cross; every pair that is not a pair of neighbours and may meet in u. */
function crossingPairs(polygon: readonly FlatPoint[]): number {
  const n = polygon.length;
  const side = (a: FlatPoint, b: FlatPoint, p: FlatPoint) =>
    Math.sign((b.u - a.u) * (p.v - a.v) - (b.v - a.v) * (p.u - a.u));
  const segments = polygon
    .map((a, i) => {
      const b = at(polygon, (i + 1) % n);
      return { i, a, b, leastU: Math.min(a.u, b.u), mostU: Math.max(a.u, b.u) };
    })
    .sort((one, other) => one.leastU - other.leastU);
  let count = 0;
  segments.forEach(({ i, a, b, mostU }, rank) => {
    for (let next = rank + 1; next < n && at(segments, next).leastU <= mostU; next++) {
      const { i: k, a: c, b: d } = at(segments, next);
      const apart = Math.abs(i - k);
      if (apart === 1 || apart === n - 1) continue;
      if (side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b)) count++;
    }
  });
  return count;
}

const nodesAround = (part: Part): readonly FlatPoint[] =>
  part.loops.flatMap(({ edges }) => edges.map(({ points }) => at(points, 0)));

/** Largest distance between the corners of two patterns that should be the same but for a shift along u and v. */
function largestMove(a: Part, b: Part): number {
  const [from, to] = [nodesAround(a), nodesAround(b)];
  expect(to.length).toBe(from.length);
  const distances = from.flatMap((p, i) =>
    from.map((q, k) => {
      const [r, s] = [at(to, i), at(to, k)];
      return Math.hypot(q.u - p.u - (s.u - r.u), q.v - p.v - (s.v - r.v));
    }),
  );
  return Math.max(...distances);
}

const bruteSheetOf = (profile: Curve, changes: RandomSection["changes"]): BruteSheet => ({
  profile: profile.pieces,
  pivotYMm: changes.pivotYMm ?? 0,
  headingRad: changes.headingRad ?? 0,
  tiltRad: changes.tiltRad ?? 0,
});

function curvesOf(project: Project): { readonly outline: Curve; readonly profile: Curve } {
  const lines = resolveLines(project);
  const [outline, profile] = [lines.plan.s1, lines.profiles.p];
  if (!outline || !profile) throw new Error("lines");
  return { outline, profile };
}

const rightPart = (laid: LaidTray): Part => {
  const part = laid.parts.find(({ hand }) => hand !== "left");
  if (!part) throw new Error("a part");
  return part;
};

/** Much arithmetic on a machine that may be busy. */
const PATIENCE = { timeout: 120_000 };

describe("a random smooth section", PATIENCE, () => {
  it("has flat edges and a flat area as on the neutral surface, by quadrature and by brute force", () => {
    let drawn = 0;
    fc.assert(
      fc.property(anySection, (random) => {
        const project = projectOf(random);
        const laid = layDrawable(project);
        drawn++;
        const part = rightPart(laid);
        const { outline, profile } = curvesOf(project);
        const sheet = bruteSheetOf(profile, random.changes);
        const thickness = random.settings.thicknessMm ?? 20;
        const depth = random.settings.drawnFace === "air" ? 0.8 + thickness / 2 : 0;
        for (const edge of part.edges) {
          expect(relativeMiss(edge.spaceLengthMm, edge.flatLengthMm)).toBeLessThan(PATTERN_RELATIVE);
          const space = bruteEdgeLength(sheet, outline, edge.edgeId, depth);
          expect(relativeMiss(edge.spaceLengthMm, space)).toBeLessThan(BRUTE_RELATIVE);
          expect(relativeMiss(edge.flatLengthMm, space)).toBeLessThan(PATTERN_RELATIVE);
          const onDrawn = bruteEdgeLength(sheet, outline, edge.edgeId, 0);
          expect(relativeMiss(edge.drawnLengthMm, onDrawn)).toBeLessThan(BRUTE_RELATIVE);
        }
        const area = bruteArea(sheet, outline, depth);
        expect(relativeMiss(part.spaceAreaMm2, area)).toBeLessThan(BRUTE_RELATIVE);
        expect(relativeMiss(part.flatAreaMm2, area)).toBeLessThan(PATTERN_RELATIVE);
      }),
      settings(12),
    );
    expect(drawn).toBeGreaterThan(8);
  });

  it("has closed counter-clockwise loops without crossings", () => {
    fc.assert(
      fc.property(fc.oneof(anySection, anyCorneredSection), (random) => {
        const project = projectOf(random);
        const laid = layDrawable(project);
        for (const part of laid.parts) {
          for (const loop of part.loops) {
            loop.edges.forEach(({ points }, i) => {
              const next = at(loop.edges, (i + 1) % loop.edges.length);
              expect(
                Math.hypot(at(points, -1).u - at(next.points, 0).u, at(points, -1).v - at(next.points, 0).v),
              ).toBeLessThan(1e-6);
            });
            expect(signedArea(polygonOf(loop))).toBeGreaterThan(0);
            expect(crossingPairs(polygonOf(loop))).toBe(0);
          }
        }
      }),
      settings(12),
    );
  });

  it("is the same pattern wherever it stands", () => {
    fc.assert(
      fc.property(
        anySection,
        fc.integer({ min: -900, max: 900 }),
        fc.integer({ min: 0, max: 900 }),
        (random, dx, dz) => {
          const project = projectOf(random);
          const laid = layDrawable(project);
          const dy = random.settings.symmetry === "mirrored" ? 0 : dx / 3;
          const moved = projectOf({
            ...random,
            changes: { ...random.changes, pivotYMm: (random.changes.pivotYMm ?? 0) + dy },
            outline: random.outline.map((node) => ({ ...node, x: node.x + dx, y: node.y + dy })),
            profile: random.profile.map((node) => ({ ...node, x: node.x + dx, z: node.z + dz })),
          });
          const [before, after] = [rightPart(laid), rightPart(layTray(moved))];
          expect(largestMove(before, after)).toBeLessThan(UNCHANGED_MM);
          expect(relativeMiss(after.flatAreaMm2, before.flatAreaMm2)).toBeLessThan(PATTERN_RELATIVE);
        },
      ),
      settings(12),
    );
  });

  it("on the left is the image of the right, and says so", () => {
    fc.assert(
      fc.property(anySection, (random) => {
        const project = projectOf({ ...random, settings: { ...random.settings, symmetry: "mirrored" } });
        const laid = layDrawable(project);
        const [right, left] = laid.parts;
        if (!right || !left) throw new Error("two parts");
        expect([right.id, right.hand, left.id, left.hand]).toEqual(["S1R", "right", "S1L", "left"]);
        expect(left.name).toContain("left");
        expect(left.flatAreaMm2).toBe(right.flatAreaMm2);
        const image = right.loops
          .flatMap(polygonOf)
          .map(({ u, v }) => `${u.toFixed(6)} ${(0 - v).toFixed(6)}`)
          .sort();
        expect(
          left.loops
            .flatMap(polygonOf)
            .map(({ u, v }) => `${u.toFixed(6)} ${v.toFixed(6)}`)
            .sort(),
        ).toEqual(image);
        for (const loop of left.loops) expect(signedArea(polygonOf(loop))).toBeGreaterThan(0);
      }),
      settings(8),
    );
  });

  it("is changed by no node that is put into one of its lines or curves", () => {
    fc.assert(
      fc.property(anySection, fc.nat(), fc.double({ min: 0.2, max: 0.8, noNaN: true }), (random, pick, t) => {
        const project = projectOf(random);
        const laid = layDrawable(project);
        const node = at(random.outline, pick % random.outline.length);
        const side = at(random.profile, pick % (random.profile.length - 1));
        const inPlan = applyCommand(project, {
          kind: "split-segment",
          line: { of: "item", itemId: "s1" },
          afterNodeId: node.id,
          t,
          newNodeId: "extra",
        });
        const inBoth = applyCommand(inPlan, {
          kind: "split-segment",
          line: { of: "profile", profileId: "p" },
          afterNodeId: side.id,
          t,
          newNodeId: "extra",
        });
        const before = rightPart(laid);
        const after = rightPart(layTray(inBoth));
        expect(relativeMiss(after.flatAreaMm2, before.flatAreaMm2)).toBeLessThan(PATTERN_RELATIVE);
        const sum = (part: Part) => part.edges.reduce((total, { flatLengthMm }) => total + flatLengthMm, 0);
        expect(Math.abs(sum(after) - sum(before))).toBeLessThan(UNCHANGED_MM);
        for (const p of nodesAround(before)) {
          const nearest = Math.min(...nodesAround(after).map((q) => Math.hypot(q.u - p.u, q.v - p.v)));
          expect(nearest).toBeLessThan(UNCHANGED_MM);
        }
      }),
      settings(12),
    );
  });

  it("is the same whichever way its outline was drawn", () => {
    fc.assert(
      fc.property(anySection, (random) => {
        const project = projectOf(random);
        const laid = layDrawable(project);
        const reversed = rightPart(layTray(projectOf({ ...random, outline: drawnBackward(random.outline) })));
        const forward = rightPart(laid);
        expect(relativeMiss(reversed.flatAreaMm2, forward.flatAreaMm2)).toBeLessThan(1e-9);
        const corners = (part: Part) =>
          nodesAround(part)
            .map(({ u, v }) => `${u.toFixed(5)} ${v.toFixed(5)}`)
            .sort();
        expect(corners(reversed)).toEqual(corners(forward));
      }),
      settings(8),
    );
  });
});

describe("a random section that a corner divides", PATIENCE, () => {
  it("has flat edges and areas as in space, and loses at the fold what the set-backs take", () => {
    let divided = 0;
    fc.assert(
      fc.property(anyCorneredSection, (random) => {
        const project = projectOf(random);
        const laid = layDrawable(project);
        const { outline, profile } = curvesOf(project);
        const parts = laid.parts.filter(({ hand }) => hand !== "left");
        if (parts.length > 1) divided++;
        const sheet = bruteSheetOf(profile, random.changes);
        for (const part of parts) {
          expect(relativeMiss(part.spaceAreaMm2, part.flatAreaMm2)).toBeLessThan(2 * PATTERN_RELATIVE);
          for (const edge of part.edges) {
            expect(Math.abs(edge.spaceLengthMm - edge.flatLengthMm)).toBeLessThan(
              PATTERN_RELATIVE * Math.max(edge.drawnLengthMm, 20),
            );
          }
        }
        const drawnArea = bruteArea(sheet, outline, 0);
        const lost = laid.joints.filter(
          ({ kind, partIds }) => kind === "corner" && !partIds[0].endsWith("L"),
        );
        if (random.settings.drawnFace === "neutral") {
          // Set-backs are nothing at the neutral fibre but for square cuts.
          const taken = lost.reduce(
            (sum, joint) => sum + joint.lengthMm * (joint.setBackMm[0] + joint.setBackMm[1]),
            0,
          );
          const flat = parts.reduce((sum, { flatAreaMm2 }) => sum + flatAreaMm2, 0);
          // A strip along the fold of skew ends: its area is length × width to the second order in the width.
          const second = lost.reduce(
            (sum, joint) => sum + 4 * (joint.setBackMm[0] ** 2 + joint.setBackMm[1] ** 2),
            0,
          );
          expect(Math.abs(flat + taken - drawnArea)).toBeLessThan(2 * PATTERN_RELATIVE * drawnArea + second);
        }
      }),
      settings(12),
    );
    expect(divided).toBeGreaterThan(6);
  });
});
