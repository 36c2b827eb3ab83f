import { describe, expect, it } from "vitest";
import { layLines } from "../../../core/book/lay-lines.ts";
import { stripLoops } from "../../../core/book/strip-piece.ts";
import { designTray } from "../../../core/design.ts";
import { partPlaces } from "../../../core/patterns/index.ts";
import { faceHeightAt, type SectionSheet } from "../../../core/surfaces/index.ts";
import { readExample } from "../../read-example.ts";

/** A pencil line. */
const MARK_MM = 0.1;

const design = designTray(readExample("hill-climb-floor"));
const partOf = (id: string) => {
  const part = design.parts.find((one) => one.id === id);
  if (part === undefined) throw new Error(`no part ${id}`);
  return part;
};
const linesOf = (stripId: string) => {
  const strip = design.strips.find((one) => one.id === stripId);
  if (strip === undefined) throw new Error(`no strip ${stripId}`);
  return layLines(design, partOf(strip.partId), stripLoops(strip));
};

describe("lines where ribs and fences touch a strip", () => {
  it("lie on a flat sheet at the rib's own station", () => {
    const ribs = design.jig.ribs.filter((rib) => rib.runs === "across");
    const found = [...linesOf("S1-a"), ...linesOf("S1-b")].filter((lay) => lay.words.startsWith("rib "));
    expect(found.length).toBeGreaterThan(3);
    for (const { words, line } of found) {
      const rib = ribs.find((one) => `rib ${one.id}` === words);
      for (const point of line.points) expect(Math.abs(point.x - (rib?.atMm ?? 0))).toBeLessThan(MARK_MM);
    }
  });

  it("are mirror images on the two hands", () => {
    const right = linesOf("S2R-b").filter((lay) => lay.words.startsWith("fence"));
    const left = linesOf("S2L-b").filter((lay) => lay.words.startsWith("fence"));
    expect(right.length).toBeGreaterThan(0);
    expect(left.map((lay) => lay.words)).toEqual(right.map((lay) => lay.words.replace("R ", "L ")));
    right.forEach((lay, i) => {
      const mirrored = left[i]?.line.points ?? [];
      expect(mirrored).toHaveLength(lay.line.points.length);
      lay.line.points.forEach((p, k) => {
        expect(mirrored[k]?.x).toBeCloseTo(p.x, 6);
        expect(mirrored[k]?.y).toBeCloseTo(-p.y, 6);
      });
    });
  });

  it("come to lie at the rib's station when the strip is bent again", () => {
    const sheet = design.sheets.find((one): one is SectionSheet => one.id === "S2" && one.kind === "section");
    const place = partPlaces(design.sheets, partOf("S2R"));
    const depthMm = sheet?.depths.coreUpperMm ?? 0;
    const found = linesOf("S2R-b").filter((lay) => lay.words.startsWith("rib "));
    expect(found.length).toBeGreaterThan(2);
    for (const { words, line } of found) {
      const rib = design.jig.ribs.find((one) => `rib ${one.id}` === words);
      for (const point of line.points) {
        const space = place?.({ u: point.x, v: point.y }, depthMm);
        expect(Math.abs((space?.x ?? 0) - (rib?.atMm ?? 0))).toBeLessThan(MARK_MM);
        const height =
          sheet === undefined ? undefined : faceHeightAt(sheet, depthMm, space ?? { x: 0, y: 0 });
        if (height !== undefined) expect(Math.abs((space?.z ?? 0) - height)).toBeLessThan(MARK_MM);
      }
    }
  });
});
