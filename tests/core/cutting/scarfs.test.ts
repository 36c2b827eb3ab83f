import { describe, expect, it } from "vitest";
import { boundsOfPoints, cutStrips } from "../../../core/cutting/index.ts";
import { at } from "../../../core/foundation/index.ts";
import { NO_PANELS } from "../../../core/panels/index.ts";
import { emptyProject } from "../../../core/project/index.ts";
import { totalTray } from "../../../core/totals/index.ts";
import { jigOf } from "../totals/jig-of.ts";
import { flatPart, rectangle } from "./flat-parts.ts";
import { plainProject } from "./plain-project.ts";

const { cutting } = plainProject();
const T_MM = 10;
const RATIO = 8;
const scarfed = plainProject({ cutting: { ...cutting, scarfRatio: RATIO } });
const board = flatPart([rectangle(2000, 500)]);

describe("strips that are spliced by a scarf", () => {
  it("are each cut longer by half the scarf, tapered from as far inside, on opposite faces", () => {
    const { strips, seams } = cutStrips([board], scarfed);
    const [seam] = seams;
    expect(seams).toHaveLength(1);
    expect(seam?.scarfMm).toBe(RATIO * T_MM);
    const [front, rear] = [at(strips, 0), at(strips, 1)];
    const atMm = seam?.atMm ?? 0;
    // The two strips overlap by the whole scarf, and their middles meet where a butt would be.
    expect(boundsOfPoints(front.cutLinesMm).mostUMm).toBeCloseTo(atMm + (RATIO * T_MM) / 2, 9);
    expect(boundsOfPoints(rear.cutLinesMm).leastUMm).toBeCloseTo(atMm - (RATIO * T_MM) / 2, 9);
    expect(boundsOfPoints([front.outlineMm]).mostUMm).toBeCloseTo(atMm, 9);
    const [frontTaper, rearTaper] = [front.tapers?.[0], rear.tapers?.[0]];
    expect(frontTaper).toMatchObject({ face: "upper face", lengthMm: RATIO * T_MM });
    expect(rearTaper).toMatchObject({ face: "lower face", lengthMm: RATIO * T_MM });
    for (const { u } of frontTaper?.lineMm ?? []) expect(u).toBeCloseTo(atMm - (RATIO * T_MM) / 2, 9);
    for (const { u } of rearTaper?.lineMm ?? []) expect(u).toBeCloseTo(atMm + (RATIO * T_MM) / 2, 9);
    expect(frontTaper?.lineMm).toHaveLength(2);
  });

  it("still fit the stock with what the scarf adds, though one that butts would only just", () => {
    // Two butted strips of 1250 fill the sheets; with scarfs there are three.
    const long = flatPart([rectangle(2500, 500)]);
    expect(cutStrips([long], plainProject()).strips).toHaveLength(2);
    const { strips, problems } = cutStrips([long], scarfed);
    expect(problems).toEqual([]);
    expect(strips).toHaveLength(3);
    for (const { cutLinesMm } of strips) {
      const { leastUMm, mostUMm } = boundsOfPoints(cutLinesMm);
      expect(mostUMm - leastUMm).toBeLessThanOrEqual(1250 + 1e-6);
    }
  });

  it("take glue over the slope of the taper, √(1 + r²) times that of a butt", () => {
    const { materials, glue } = emptyProject({ id: "p", title: "", issuedOn: "2026-11-30" });
    const massOf = (scarfRatio: number) => {
      const project = plainProject({ materials, glue, cutting: { ...cutting, scarfRatio } });
      const { strips, seams } = cutStrips([board], project);
      const tray = {
        parts: [board],
        strips,
        seams,
        joints: [],
        jig: jigOf([]),
        plates: [],
        panels: NO_PANELS,
      };
      return totalTray(tray, project).glueMassKg;
    };
    expect(massOf(0)).toBeGreaterThan(0);
    expect(massOf(RATIO) / massOf(0)).toBeCloseTo(Math.sqrt(1 + RATIO ** 2), 6);
  });

  it.each([0, -3, Number.NaN])("are butted at a ratio of %d", (scarfRatio) => {
    const { strips, seams } = cutStrips([board], plainProject({ cutting: { ...cutting, scarfRatio } }));
    expect(seams[0]?.scarfMm).toBeUndefined();
    expect(strips.every(({ tapers }) => tapers === undefined)).toBe(true);
  });
});
