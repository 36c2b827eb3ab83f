import { describe, expect, it } from "vitest";
import { cutStrips, type Strip, signedAreaMm2 } from "../../../core/cutting/index.ts";
import { at } from "../../../core/foundation/index.ts";
import { faceTable, markingTables, shownFace } from "../../../core/marking/index.ts";
import type { PartEdge } from "../../../core/patterns/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { flatPart, rectangle } from "../cutting/flat-parts.ts";
import { plainProject } from "../cutting/plain-project.ts";

const ROUNDING_MM = 1e-9;
const THICK_MM = 20;
const rad = (degrees: number) => (degrees * Math.PI) / 180;

const projectWith = (cutting: Partial<Project["cutting"]>) => {
  const plain = plainProject();
  return { ...plain, cutting: { ...plain.cutting, kerfMm: 0, trimMm: 0, ...cutting } };
};

/** A strip of 400 by 100 mm whose edge along v = 100 has the given bevels from its start (u = 400) to its end. */
function bevelledStrip(project: Project, startRad: number, endRad: number): Strip {
  const strip = at(cutStrips([flatPart([rectangle(400, 100)])], project).strips, 0);
  const isTop = (i: number) =>
    strip.loops.flatMap(({ edges }) => edges)[i]?.points.every(({ v }) => Math.abs(v - 100) < 1e-9);
  const edges = strip.edges.map((edge, i): PartEdge => {
    if (isTop(i) !== true) return edge;
    const bevels = [
      { alongMm: 0, bevelRad: startRad },
      { alongMm: 400, bevelRad: endRad },
    ];
    return { ...edge, bevelRad: [startRad, endRad], bevels };
  });
  return { ...strip, edges };
}

const vsAt = (points: readonly { u: number; v: number }[], u: number) =>
  points.filter((p) => Math.abs(p.u - u) < 1e-6).map(({ v }) => v);

describe("the line on the face shown", () => {
  // CLOSED FORM: from mid-thickness to the face it moves by t/2 tan β: 10 tan 30° = 5.773502692 mm.
  it("lies half the thickness times the tangent of the bevel inside, where the face is the shorter one", () => {
    const project = projectWith({});
    const { cutLinesMm } = shownFace(bevelledStrip(project, rad(30), rad(30)), THICK_MM, project);
    const line = at(cutLinesMm, 0);
    expect(Math.abs(Math.max(...line.map(({ v }) => v)) - (100 - 5.7735026918963))).toBeLessThan(ROUNDING_MM);
    expect(Math.abs(signedAreaMm2(line) - 400 * (100 - 5.7735026918963))).toBeLessThan(1e-6);
  });

  it("lies outside by as much, where the face is the longer one", () => {
    const project = projectWith({});
    const { cutLinesMm } = shownFace(bevelledStrip(project, rad(-30), rad(-30)), THICK_MM, project);
    const top = Math.max(...at(cutLinesMm, 0).map(({ v }) => v));
    expect(Math.abs(top - 105.7735026919)).toBeLessThan(ROUNDING_MM);
  });

  it("runs from one side of the outline to the other where the bevel changes its sign", () => {
    const project = projectWith({});
    const { cutLinesMm } = shownFace(bevelledStrip(project, rad(20), rad(-10)), THICK_MM, project);
    const line = at(cutLinesMm, 0);
    expect(Math.max(...vsAt(line, 400))).toBeCloseTo(100 - 10 * Math.tan(rad(20)), 9);
    expect(Math.max(...vsAt(line, 0))).toBeCloseTo(100 + 10 * Math.tan(rad(10)), 9);
  });

  // CLOSED FORM: a blade of 2 mm tilted by 30° opens 2 / cos 30° of the face, half of it on the part's side.
  it("has the kerf of a tilted blade in it", () => {
    const project = projectWith({ kerfMm: 2, bladeSide: "middle" });
    const { cutLinesMm } = shownFace(bevelledStrip(project, rad(30), rad(30)), THICK_MM, project);
    const vs = at(cutLinesMm, 0).map(({ v }) => v);
    expect(Math.max(...vs)).toBeCloseTo(100 - 5.7735026918963 + 1 / Math.cos(rad(30)), 9);
    expect(Math.min(...vs)).toBeCloseTo(-1, 9);
  });

  it("is the line to cut by itself on a strip without bevels", () => {
    const project = projectWith({ kerfMm: 2, bladeSide: "part" });
    const strip = bevelledStrip(project, 0, 0);
    const square = { ...strip, edges: strip.edges.map((edge) => ({ ...edge, bevels: [] })) };
    expect(shownFace(square, THICK_MM, project).cutLinesMm).toEqual(strip.cutLinesMm);
  });
});

describe("bevels in the marking-out table", () => {
  it("stand beside the offset of their own edge at every station, straight between both ends", () => {
    const project = projectWith({});
    const strip = bevelledStrip(project, rad(20), rad(10));
    const table = at(markingTables([strip], project), 0);
    expect(table.rows.map(({ alongMm }) => alongMm)).toEqual([0, 100, 200, 300, 400]);
    for (const { alongMm, offsetsMm, bevelsRad } of table.rows) {
      expect(offsetsMm).toEqual([0, 100]);
      expect(bevelsRad[0]).toBe(0);
      expect(bevelsRad[1]).toBeCloseTo(rad(10 + (10 * alongMm) / 400), 12);
    }
  });

  it("belong on paper to marks on the face shown", () => {
    const project = projectWith({});
    const strip = bevelledStrip(project, rad(30), rad(30));
    const table = at(markingTables([strip], project), 0);
    const face = faceTable(table, shownFace(strip, THICK_MM, project), project);
    expect(face.origin).toEqual(table.origin);
    for (const { offsetsMm, bevelsRad } of face.rows) {
      expect(at(offsetsMm, 1)).toBeCloseTo(94.2264973081, 9);
      expect(at(bevelsRad, 1)).toBeCloseTo(rad(30), 12);
    }
  });
});
