import { describe, expect, it } from "vitest";
import { at } from "../../core/foundation/index.ts";
import { buildJig, type Jig } from "../../core/jig/index.ts";
import type { Project } from "../../core/project/index.ts";
import { plainProject } from "../core/cutting/plain-project.ts";
import { arcProfile, box, section, trayOf } from "../core/jig/jig-trays.ts";

/** Rib tops lie on the resting face to this. */
const ON_FACE_MM = 0.01;
/** A chord over a thin board has the tangent's slope to this. */
const BEVEL_DEG = 0.01;

const { jig: plainJig, materials } = plainProject();
const bare = { skins: { lowerMm: 0, upperMm: 0 } };

function jigOf(changes: Partial<Project>): Jig {
  const { project, sheets } = trayOf(changes);
  const { jig, problems } = buildJig(sheets, project);
  expect(problems).toEqual([]);
  return jig;
}

// CLOSED FORM (case G13): under a cylinder R 1000, h = R − √(R² − x²) and bevel = asin(x / R).
describe("ribs across under a cylinder of radius 1000", () => {
  const heights = [0, 5.01256289338, 20.2041028867, 46.0607985831, 83.4848610088, 133.974596216];
  const bevelsDeg = [0, 5.739170477, 11.53695903, 17.45760312, 23.57817848, 30];
  const thin = { ...materials, boards: materials.boards.map((board) => ({ ...board, thicknessMm: 0.02 })) };
  const tray = (board = materials) =>
    jigOf({
      ...bare,
      jig: { ...plainJig, across: { kind: "typed", atMm: [0.5, 100, 200, 300, 400, 500] } },
      materials: board,
      profiles: [arcProfile("arc", 1000, 560)],
      items: [section("floor", 1, box(0, 560, 0, 300), "arc")],
    });

  it("have the heights of the closed form above the lowest one", () => {
    const { ribs, baseboard } = tray();
    for (const [i, rib] of ribs.entries()) {
      if (i === 0) continue;
      for (const height of rib.heights) {
        const expected = at(heights, i) - baseboard.levelZMm;
        expect(Math.abs(height.stationFaceMm - expected)).toBeLessThan(ON_FACE_MM);
      }
      expect(rib.straightTop).toBe(true);
    }
    expect(at(at(ribs, 0).heights, 0).stationFaceMm).toBeCloseTo(80, 9);
  });

  it("have the bevels of the closed form as the board gets thin", () => {
    for (const [i, rib] of tray(thin).ribs.entries()) {
      if (i === 0) continue;
      const bevelDeg = (Math.abs(at(rib.heights, 0).bevelRad) * 180) / Math.PI;
      expect(Math.abs(bevelDeg - at(bevelsDeg, i))).toBeLessThan(BEVEL_DEG);
    }
  });

  it("have their bodies where the foam moves away, so that a square cut never stands proud", () => {
    for (const rib of tray().ribs) {
      expect(rib.stationFace).toBe("front");
      expect(rib.cut).toBe("square");
      expect(rib.mostProudMm).toBe(0);
      for (const { farFaceMm, stationFaceMm } of rib.heights)
        expect(farFaceMm).toBeGreaterThan(stationFaceMm);
    }
  });
});
