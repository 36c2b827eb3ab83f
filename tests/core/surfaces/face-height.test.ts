import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { resolveLines } from "../../../core/project/index.ts";
import {
  buildSheets,
  faceHeightAt,
  polygonsContain,
  type SectionSheet,
} from "../../../core/surfaces/index.ts";
import { type BruteSheet, bruteOffset } from "../brute-force.ts";
import { anySection, projectOf } from "../random-sections.ts";
import { rectangle, section, sideNode, soundTray, tray } from "../trays.ts";

const SEED = 977;
/** The brute force's own noise, mm. */
const HEIGHT_MM = 1e-5;

const sectionsOf = (made: { readonly sheets: readonly { readonly kind: string }[] }) =>
  made.sheets.filter((sheet): sheet is SectionSheet => sheet.kind === "section");

describe("the height of a face over a place in plan", () => {
  it("is that of the point which lies square above the drawn surface, at any depth", () => {
    let compared = 0;
    fc.assert(
      fc.property(anySection, fc.integer({ min: -10, max: 30 }), (random, depthMm) => {
        const project = projectOf(random);
        const lines = resolveLines(project);
        const made = buildSheets(project, lines);
        fc.pre(lines.problems.length + made.problems.length === 0);
        const profile = lines.profiles.p;
        const [sheet] = sectionsOf(made);
        if (!profile || !sheet) throw new Error("a sheet over its profile");
        const brute: BruteSheet = {
          profile: profile.pieces,
          pivotYMm: random.changes.pivotYMm ?? 0,
          headingRad: random.changes.headingRad ?? 0,
          tiltRad: random.changes.tiltRad ?? 0,
        };
        for (let x = 205; x < 800; x += 90) {
          for (let y = 55; y < 650; y += 85) {
            const face = bruteOffset(brute, { x, y }, depthMm);
            const height = faceHeightAt(sheet, depthMm, face);
            expect(height !== undefined).toBe(polygonsContain(sheet.planLoops, { x, y }));
            if (height === undefined) continue;
            compared++;
            expect(Math.abs(height - face.z)).toBeLessThan(HEIGHT_MM);
          }
        }
      }),
      { seed: SEED, numRuns: 20 },
    );
    expect(compared).toBeGreaterThan(200);
  }, 120_000);

  it.each([1, -1])("ends at a profile corner on the mitre, and goes on to it (turn %i)", (turn) => {
    // 15° down and 15° up (or up and down): the mitre is upright, at x = 300 at every depth.
    const slope = turn * Math.tan((15 * Math.PI) / 180);
    const profile = [
      sideNode("a", -50, 600 + 350 * slope),
      sideNode("b", 300, 600),
      sideNode("c", 650, 600 + 350 * slope),
    ];
    const laid = soundTray(tray({ p: profile }, [section(1, rectangle(0, 600, 0, 300))]));
    const [front, rear] = sectionsOf(laid);
    if (!front || !rear) throw new Error("two sheets");
    for (const depthMm of [0, 0.8, 10.8, 20.8, 21.6]) {
      const rise = depthMm / Math.cos(Math.atan(slope));
      for (const off of [0.01, 1, 5, 40]) {
        const z = 600 + slope * off + rise;
        expect(faceHeightAt(front, depthMm, { x: 300 - off, y: 100 })).toBeCloseTo(z, 9);
        expect(faceHeightAt(rear, depthMm, { x: 300 + off, y: 100 })).toBeCloseTo(z, 9);
        expect(faceHeightAt(front, depthMm, { x: 300 + off, y: 100 })).toBeUndefined();
        expect(faceHeightAt(rear, depthMm, { x: 300 - off, y: 100 })).toBeUndefined();
      }
    }
  });
});
