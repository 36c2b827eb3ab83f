import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Design, designTray } from "../../../core/design.ts";
import { assert, at } from "../../../core/foundation/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { plainProject } from "../cutting/plain-project.ts";
import { arcProfile, box, section, straightProfile } from "./jig-trays.ts";
import { stripOffCurve } from "./strip-off-curve.ts";

/** A floor of 1200 by 400 on ribs across at given places, upright, of 10 mm foam that bends to any radius. */
function floorOn(ribsMm: readonly number[], changes: Partial<Project> = {}): Design {
  const plain = plainProject();
  const foams = plain.materials.foams.map((foam) => ({ ...foam, leastBendRatio: 5 }));
  return designTray(
    plainProject({
      drawnFace: "neutral",
      materials: { ...plain.materials, foams },
      profiles: [
        straightProfile("p", [
          [0, 100],
          [1200, 100],
        ]),
      ],
      items: [section("s1", 1, box(0, 1200, 0, 400), "p")],
      jig: { ...plain.jig, across: { kind: "typed", atMm: ribsMm } },
      ...changes,
    }),
  );
}

const middleLine = ({ lie }: Design) => {
  const line = lie.lines[Math.floor(lie.lines.length / 2)];
  assert(line !== undefined, "foam lies on ribs");
  return line;
};

describe("level foam on level ribs", () => {
  // Weight of 10 mm foam of 32 kg/m³ and 0.8 mm of wet laminate, on a strip 1 mm wide.
  const load = (0.32 + 0.8 * 1.64) * 9.80665e-6;
  const stiffness = (15 * 1000) / 12;

  it("sags between two ribs as a beam on two supports, and comes up beyond them", () => {
    const design = floorOn([200, 1000]);
    const [worst] = design.lie.worst;
    assert(worst !== undefined, "it lies");
    // Overhangs of a and a span of l: 5 w l⁴/384EI − w a² l²/16EI in the middle (superposition, any handbook).
    const [a, l] = [200, 800];
    const middle = (5 * load * l ** 4) / 384 / stiffness - (load * a * a * l * l) / 16 / stiffness;
    expect(-worst.errorMm).toBeCloseTo(middle, 2);
    expect(worst.at.x).toBeCloseTo(600, 0);
    expect(worst.battenMm).toBeCloseTo(0, 9);
    expect(design.problems.map(({ kind }) => kind)).toContain("foam-off-shape");
  });

  it("lies within the tolerance on ribs closer together, and is no problem", () => {
    const design = floorOn([25, 250, 550, 850, 1075, 1175]);
    expect(Math.abs(at(design.lie.worst, 0).errorMm)).toBeLessThan(0.5);
    expect(design.problems).toEqual([]);
  });

  it("presses on its ribs with all that it weighs", () => {
    const { lie } = floorOn([100, 400, 900]);
    // Both lanes near an edge and those between weigh the same: 1200 mm of it, over 800 mm of width with the left hand.
    const pressed = lie.forces.reduce((sum, { pressN, holdDownN }) => sum + pressN - holdDownN, 0);
    expect(pressed).toBeCloseTo(load * 1200 * 800, 2);
  });

  it("is pushed in by a hand as a beam is under a patch in its middle", () => {
    const design = floorOn([0.5, 1199.5], {
      jig: { ...floorOn([1]).project.jig, across: { kind: "typed", atMm: [0.5, 600, 1199.5] } },
    });
    const { pushes } = middleLine(design);
    // Two spans of l, a patch c long in the middle of one, from the integral of a point load's influence on the strip.
    const [l, c] = [599.5, 100];
    const q = 30 / c / Math.min(800, 100 + 0.6 * l);
    let sag = 0;
    const parts = 2000;
    for (let i = 0; i < parts; i++) {
      const x = l / 2 - c / 2 + (c * (i + 0.5)) / parts;
      const [b, m] = [l - x, l / 2];
      const near = Math.min(m, x) === m ? [b, m] : [x, l - m];
      const [far, place] = [near[0] ?? 0, near[1] ?? 0];
      const simple = (far * place * (l * l - far * far - place * place)) / (6 * l * stiffness);
      // The moment over the middle rib of two equal spans: P x (l² − x²) / (4 l²).
      const moment = (x * (l * l - x * x)) / (4 * l * l);
      const lifted = (moment * m * (l * l - m * m)) / (6 * l * stiffness);
      sag += ((q * c) / parts) * (simple - lifted);
    }
    expect(at(pushes, 0).deflectionMm).toBeCloseTo(sag, 0);
    expect(at(pushes, 0).deflectionMm / sag).toBeCloseTo(1, 2);
  });
});

describe("foam bent to R 1000 over ribs 300 apart", () => {
  const RADIUS = 1000;
  /** Weightless foam on an arc whose sheet ends `overMm` beyond its last rib, both in arc length. */
  function bent(ribArcsMm: readonly number[], toArcMm: number) {
    const plain = plainProject();
    // The lower face rests on the ribs: it is the one of R 1000, 5 mm outside the middle of the foam that is drawn.
    const drawnMm = RADIUS - 5;
    const place = (arcMm: number) => RADIUS * Math.sin(arcMm / RADIUS);
    const toMm = drawnMm * Math.sin(toArcMm / RADIUS);
    const design = designTray(
      plainProject({
        drawnFace: "neutral",
        skins: { lowerMm: 0, upperMm: 0 },
        materials: {
          ...plain.materials,
          foams: plain.materials.foams.map((foam) => ({
            ...foam,
            densityKgPerM3: 5,
            modulusMPa: 1e5,
            leastBendRatio: 5,
          })),
        },
        profiles: [arcProfile("arc", drawnMm, toMm, 24)],
        items: [section("s1", 1, box(0, toMm, 0, 300), "arc")],
        jig: {
          ...plain.jig,
          across: { kind: "typed", atMm: ribArcsMm.map(place) },
          lie: { wetKgPerM2: 0, pushN: 0, runPastMm: 0 },
        },
      }),
    );
    return middleLine(design);
  }
  const mostOff = (offs: readonly (readonly [number, number])[], fromMm: number, toMm: number) =>
    Math.max(...offs.flatMap(([along, off]) => (along >= fromMm && along <= toMm ? [Math.abs(off)] : [])));

  it("stands off by some 4 mm in the end span, and 7 mm from there to an edge 25 mm past the last rib", () => {
    const ribs = [0.5, 300, 600, 900];
    const line = bent(ribs, 925);
    const offs = line.stations.map(({ alongMm, battenMm }) => [alongMm, battenMm] as const);
    const own = stripOffCurve([0, 300, 600, 900], 0, 925, () => 1 / RADIUS);
    const [inside, beyond] = [mostOff(offs, 600, 900), mostOff(offs, 900, 930)];
    expect(inside).toBeCloseTo(mostOff(own, 600, 900), 1);
    expect(beyond).toBeCloseTo(mostOff(own, 900, 930), 1);
    expect(inside).toBeGreaterThan(4);
    expect(inside + beyond).toBeGreaterThan(6);
    expect(inside + beyond).toBeLessThan(8);
  });

  it("stands off by less than 2 mm where it runs past the trim line over an outboard rib", () => {
    const ribs = [0.5, 300, 600, 900, 1000];
    const line = bent(ribs, 1000.5);
    const offs = line.stations.map(({ alongMm, battenMm }) => [alongMm, battenMm] as const);
    const own = stripOffCurve([0, 300, 600, 900, 1000], 0, 1000, () => 1 / RADIUS);
    const inside = mostOff(offs, 600, 900);
    expect(inside).toBeCloseTo(mostOff(own, 600, 900), 1);
    expect(inside).toBeLessThan(2);
  });

  it("presses on the end ribs and must be held down on the inner ones, by the moment over their distance", () => {
    const { forcesPerMm } = bent([0.5, 300, 600, 900], 900.5);
    // Three spans: 1.2 E I / R over both inner supports, so 1.2 / l of it down at the ends and up beside them.
    const force = (1.2 * ((1e5 * 1000) / 12 / RADIUS)) / 300;
    for (const [i, share] of [1, -1, -1, 1].entries())
      expect(at(forcesPerMm, i) / force).toBeCloseTo(share, 2);
  });
});

it("does not throw, hang or answer NaN, whatever ribs are typed", () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: -200, max: 1400 }), { maxLength: 12 }),
      fc.constantFrom("upright" as const, "inverted" as const),
      fc.record({
        toleranceMm: fc.constantFrom(0, -1, Number.NaN, 0.2, 1),
        pushN: fc.constantFrom(0, 30, 1e9, Number.NaN),
      }),
      fc.constantFrom(0, 15, Number.NaN),
      (ribs, attitude, lie, modulusMPa) => {
        const plain = plainProject();
        const design = floorOn(ribs, {
          materials: {
            ...plain.materials,
            foams: plain.materials.foams.map((foam) => ({ ...foam, modulusMPa })),
          },
          jig: { ...plain.jig, attitude, across: { kind: "typed", atMm: ribs }, lie },
        });
        const numbers = JSON.stringify(design.lie);
        expect(numbers).not.toContain("null");
        const named = design.problems.flatMap(({ place }) => place.setting ?? []);
        if (!(lie.toleranceMm >= 0.05)) expect(named).toContain("jig.lie.toleranceMm");
        if (!(modulusMPa > 0))
          expect(design.problems.map(({ kind }) => kind)).toContain("number-out-of-range");
      },
    ),
    { seed: 5, numRuns: 60 },
  );
});
