import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { at, type FlatPoint } from "../../../core/foundation/index.ts";
import { fittedEdges } from "../../../core/marking/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { readExample } from "../../read-example.ts";

/** What a line of points lies off the nearest stretch of another, at each of its points. */
const missesMm = (line: readonly FlatPoint[], other: readonly FlatPoint[]): readonly number[] =>
  line.map((p) =>
    Math.min(
      ...other.map((b, i) => {
        const a = at(other, i - 1);
        const [du, dv] = [b.u - a.u, b.v - a.v];
        const share = ((p.u - a.u) * du + (p.v - a.v) * dv) / (du * du + dv * dv || 1);
        const t = Math.min(1, Math.max(0, share));
        return Math.hypot(p.u - a.u - t * du, p.v - a.v - t * dv);
      }),
    ),
  );

/** A line with points every tenth of each stretch. */
const sampled = (line: readonly FlatPoint[]): readonly FlatPoint[] =>
  line.slice(1).flatMap((b, i) => {
    const a = at(line, i);
    return Array.from({ length: 10 }, (_, k) => ({
      u: a.u + ((b.u - a.u) * k) / 10,
      v: a.v + ((b.v - a.v) * k) / 10,
    }));
  });

const demo = readExample("hill-climb-floor");
const withCutting = (cutting: Partial<Project["cutting"]>): Project => ({
  ...demo,
  cutting: { ...demo.cutting, ...cutting },
});
const closerOf = (project: Project) => {
  const design = designTray(project);
  const step = design.glueUp.find(({ title }) => title.startsWith("Close the gap"));
  const strips = design.strips.filter(({ partId }) => step?.adds.includes(partId));
  return { design, step, strips };
};

describe("a closer", () => {
  it("is cut 8 mm large at one joint, the one farthest from the centre line, and nowhere else", () => {
    const { strips } = closerOf(demo);
    expect(strips.map(({ id }) => id)).toEqual(["T1R-a", "T1R-b", "T1L-a", "T1L-b"]);
    for (const strip of strips) {
      const edges = strip.loops.flatMap((loop) => loop.edges);
      const fitted = edges.filter(({ spare }) => spare !== undefined);
      expect(fitted.map(({ edgeId, spare }) => [edgeId, spare?.for])).toEqual([["second", "gap"]]);
      const line = at(strip.cutLinesMm, 0);
      for (const edge of edges) {
        // Near its corners the fitted edge is cut along its neighbours, so it is judged away from them.
        const ends = [at(edge.points, 0), at(edge.points, -1)];
        const inner = sampled(edge.points).filter((p) =>
          ends.every((q) => Math.hypot(p.u - q.u, p.v - q.v) > 20),
        );
        expect(inner.length).toBeGreaterThan(0);
        for (const missMm of missesMm(inner, line)) {
          expect(missMm).toBeCloseTo(fitted.includes(edge) ? 8 : 0, 6);
        }
      }
      expect(Math.max(...missesMm(line, strip.outlineMm))).toBeCloseTo(8, 2);
    }
  });

  it("keeps its finished outline, and everything beside it, as without spare", () => {
    const spared = designTray(demo);
    const plain = designTray(withCutting({ closerSpareMm: 0 }));
    expect(spared.strips.map(({ outlineMm }) => outlineMm)).toEqual(
      plain.strips.map(({ outlineMm }) => outlineMm),
    );
    const changed = spared.strips.filter(
      (strip, i) => JSON.stringify(strip.cutLinesMm) !== JSON.stringify(at(plain.strips, i).cutLinesMm),
    );
    expect(changed.map(({ id }) => id)).toEqual(["T1R-a", "T1R-b", "T1L-a", "T1L-b"]);
    expect(plain.strips.every(({ loops }) => loops.every(({ edges }) => edges.every((e) => !e.spare)))).toBe(
      true,
    );
  });

  it("has its spare besides the kerf, and says in its step how it is fitted", () => {
    const { strips, step } = closerOf(
      withCutting({ tool: "saw", kerfMm: 3, bladeSide: "part", closerSpareMm: 5 }),
    );
    const strip = at(strips, 0);
    expect(Math.max(...missesMm(at(strip.cutLinesMm, 0), strip.outlineMm))).toBeGreaterThan(8);
    expect(step?.cautions[0]).toContain("Cut each 5.0 mm large where it meets S2R and S2L");
  });

  it("has its net line on the face shown: half the thickness times the tangent of the bevel beside the outline", () => {
    const { strips, design } = closerOf(demo);
    const strip = at(strips, 0);
    const [edge] = fittedEdges(strip, 10, design.project, "gap");
    const bevelRad = strip.edges.find(({ edgeId }) => edgeId === "second")?.bevelRad[0] ?? 0;
    const offMm = 5 * Math.tan(Math.abs(bevelRad));
    expect(offMm).toBeGreaterThan(0.5);
    for (const missMm of missesMm(edge?.netLineMm.slice(1, -1) ?? [], strip.outlineMm))
      expect(missMm).toBeCloseTo(offMm, 2);
  });

  it("is drawn at its size, and told so, where the spare would make it larger than any stock", () => {
    const stock = demo.stock.map((one) => ({ ...one, lengthMm: 725, widthMm: 73.5 }));
    const narrow = { ...demo, stock };
    const { problems, strips } = designTray(narrow);
    const told = problems.filter(({ kind }) => kind === "no-spare-for-closer");
    expect(told.length).toBeGreaterThan(0);
    const names = told.map(({ name }) => name);
    for (const strip of strips.filter(({ id }) => names.includes(id)))
      expect(strip.cutLinesMm[0]).toEqual(strip.outlineMm);
  });
});
