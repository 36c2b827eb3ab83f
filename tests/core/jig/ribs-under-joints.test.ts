import { describe, expect, it } from "vitest";
import { buildJig } from "../../../core/jig/index.ts";
import { rectangle, section, soundTray, straightProfile, tray } from "../trays.ts";

const FLAT = { p: straightProfile(0, 60, 1000, 60) };
const ON_FACE_MM = 0.01;

describe("a rib along the ridge of two halves that fall to both sides", () => {
  const tiltRad = -0.15;
  const halves = tray(FLAT, [section(1, rectangle(0, 1000, 0, 300), { tiltRad, pivotYMm: 0 })], {
    symmetry: "mirrored",
    thicknessMm: 10,
    gapLimitMm: 0,
  });

  it.each(["upright", "inverted"] as const)("%s touches the mitre that fills it", (attitude) => {
    const project = {
      ...halves,
      jig: {
        ...halves.jig,
        attitude,
        across: { kind: "none" },
        along: { kind: "typed", atMm: [0] },
      } as const,
    };
    const { jig, problems } = buildJig(soundTray(project).sheets, project);
    expect(problems.map(({ kind }) => kind)).not.toContain("rib-under-nothing");
    const [rib] = jig.ribs;
    // The faces of both halves, carried on, meet over the centre line at depth / cos τ above the drawn ridge.
    const depthMm = attitude === "upright" ? 0.8 : 10.8;
    const ridgeMm = 60 + depthMm / Math.cos(tiltRad);
    const sign = attitude === "upright" ? 1 : -1;
    const inside = rib?.heights.filter(({ atMm }) => atMm > 1 && atMm < 999) ?? [];
    expect(inside.length).toBeGreaterThan(5);
    for (const { stationFaceMm } of inside) {
      const expected = sign * (ridgeMm - jig.baseboard.levelZMm);
      expect(Math.abs(stationFaceMm - expected)).toBeLessThan(ON_FACE_MM);
    }
  });
});
