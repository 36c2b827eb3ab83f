import { describe, expect, it } from "vitest";
import type { SideNode } from "../../../core/project/index.ts";
import {
  fence,
  layTray,
  partOf,
  planNode,
  rectangle,
  section,
  sideNode,
  straightProfile,
  type TraySettings,
  tray,
} from "../trays.ts";

/** Flat, up a radius of 500 by 20°, straight, and back down a radius of 400: 20 mm foam, skins 0.8. */
const RISE = (20 * Math.PI) / 180;
const profile: readonly SideNode[] = [
  sideNode("a", 0, 0),
  sideNode("b", 300, 0, { radiusMm: 500 }),
  sideNode("c", 300 + 400 * Math.cos(RISE), 400 * Math.sin(RISE), { radiusMm: 400 }),
  sideNode("d", 900, 400 * Math.sin(RISE)),
];

const laid = (settings: TraySettings, drawn = profile) =>
  layTray(tray({ p: drawn }, [section(1, rectangle(0, 900, 0, 200))], settings));

const NEUTRAL_MM = 10.8;

describe("the bend zones of a section", () => {
  const part = partOf(laid({ leastBendRatio: 20 }), "S1");
  const [tangentUp, tangentDown] = [500 * Math.tan(RISE / 2), 400 * Math.tan(RISE / 2)];
  const lengths = [
    300 - tangentUp,
    (500 - NEUTRAL_MM) * RISE,
    400 - tangentUp - tangentDown,
    (400 + NEUTRAL_MM) * RISE,
    900 - 300 - 400 * Math.cos(RISE) - tangentDown,
  ];

  it("follow each other without gaps along the flat pattern, as long as the neutral fibre is there", () => {
    expect(part.zones.map(({ verdict }) => verdict)).toEqual([
      "flat",
      "bend cold",
      "flat",
      "bend cold",
      "flat",
    ]);
    let at = 0;
    part.zones.forEach((zone, i) => {
      expect(zone.fromUMm).toBeCloseTo(at, 6);
      at += lengths[i] ?? 0;
      expect(zone.toUMm).toBeCloseTo(at, 6);
    });
  });

  it("have the radius and strain of the neutral fibre, and name the face inside the bend", () => {
    const [, up, , down] = part.zones;
    expect(up?.leastRadiusMm).toBeCloseTo(500 - NEUTRAL_MM, 9);
    expect(up?.strain).toBeCloseTo(10 / (500 - NEUTRAL_MM), 12);
    expect(up?.inside).toBe("upper face");
    expect(down?.leastRadiusMm).toBeCloseTo(400 + NEUTRAL_MM, 9);
    expect(down?.inside).toBe("lower face");
    expect(part.maxStrain).toBe(down?.strain);
    expect(part.minRadiusMm).toBe(down?.leastRadiusMm);
  });

  it.each([
    { leastBendRatio: 410.8 / 20, verdict: "bend cold" },
    { leastBendRatio: 410.9 / 20, verdict: "relief slots" },
  ] as const)(
    "are judged against the foam's least radius: $leastBendRatio thicknesses, $verdict",
    ({ leastBendRatio, verdict }) => {
      const tray20 = laid({ leastBendRatio });
      expect(partOf(tray20, "S1").verdict).toBe(verdict);
      expect(tray20.problems.map(({ kind }) => kind)).toEqual(
        verdict === "relief slots" ? ["bend-too-tight"] : [],
      );
    },
  );

  it("inside a spline have its tightest place: a parabola's apex", () => {
    // z = x² / 1000 − x from 0 to 1000: 1 / z″ = 500 at its apex.
    const knotSpacingMm = Math.hypot(1000, 1000);
    const parabola = [
      sideNode("a", 0, 0, { next: "curve", tangentOutRad: -Math.PI / 4, knotSpacingMm }),
      sideNode("b", 1000, 0, { tangentInRad: Math.PI / 4 }),
    ];
    const drawn = partOf(laid({ leastBendRatio: 20, drawnFace: "neutral" }, parabola), "S1");
    expect(drawn.minRadiusMm).toBeCloseTo(500, 6);
    expect(drawn.zones).toHaveLength(1);
  });

  it("of an oblique cylinder are those of its right section", () => {
    // Rulings turned by ψ in plan over an arc of radius R: where that is level the right section is shorter along x by
    // cos ψ and as high, so its radius there is R cos² ψ; it grows from there.
    const heading = 0.25;
    const level = [
      sideNode("a", -400, 0),
      sideNode("b", 300, 0, { radiusMm: 1000 }),
      sideNode("c", 1000, 70),
    ];
    const project = tray({ p: level }, [section(1, rectangle(0, 600, 100, 300), { headingRad: heading })], {
      leastBendRatio: 20,
      drawnFace: "neutral",
    });
    const drawn = partOf(layTray(project), "S1");
    expect(drawn.minRadiusMm).toBeGreaterThan(1000 * Math.cos(heading) ** 2 - 1e-6);
    expect(drawn.minRadiusMm).toBeLessThan(1000 * Math.cos(heading) ** 2 * 1.001);
  });
});

describe("the bend zones of a fence", () => {
  it("are those of its line, and name the face inside the bend", () => {
    const line = [planNode("a", 50, 50), planNode("b", 300, 50, { radiusMm: 400 }), planNode("c", 500, 150)];
    const project = tray(
      { p: straightProfile(0, 100, 600, 100) },
      [section(1, rectangle(0, 600, 0, 300)), fence(1, line)],
      { thicknessMm: 10, leastBendRatio: 20 },
    );
    const part = partOf(layTray(project), "F1");
    expect(part.zones.map(({ verdict }) => verdict)).toEqual(["flat", "bend cold", "flat"]);
    expect(part.minRadiusMm).toBeCloseTo(400, 6);
    expect(part.maxStrain).toBeCloseTo(5 / 400, 8);
    // Rearward it turns toward +y, outboard.
    expect(part.zones[1]?.inside).toBe("outboard face");
  });
});
