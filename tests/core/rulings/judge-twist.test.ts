import { describe, expect, it } from "vitest";
import { toRadians } from "../../../core/foundation/index.ts";
import {
  judgeTwist,
  pairEdges,
  pressStrain,
  type RuledSurface,
  twistProfile,
} from "../../../core/rulings/index.ts";
import { edgeOf, pairEqualFractions } from "./edges-of.ts";

const FOAM = { thicknessMm: 10, leastRadiusMm: 600, strainLimit: 10 / 1200 };

/** A helicoidal strip 1000 long, twisted evenly: every ruling is like every other. */
function helicoid(turnDegrees: number, widthMm: number): RuledSurface {
  const turn = toRadians(turnDegrees);
  const edge = (side: 1 | -1) =>
    edgeOf((t) => [
      1000 * t,
      (side * widthMm * Math.cos(turn * t)) / 2,
      (side * widthMm * Math.sin(turn * t)) / 2,
    ]);
  return pairEqualFractions(edge(-1), edge(1));
}

/** Twist between both ends of its rulings: each end's plane leans by atan(τ w / 2). */
const helicoidTwist = (turnDegrees: number, widthMm: number): number =>
  2 * Math.atan((toRadians(turnDegrees) / 1000) * (widthMm / 2));

describe("twist of a sheet", () => {
  it("is the angle between the tangent planes at both ends of a ruling", () => {
    for (const { twistRad } of twistProfile(helicoid(10, 200), 10))
      expect(Math.abs(twistRad)).toBeCloseTo(helicoidTwist(10, 200), 9);
  });

  it("costs strain by its square across the width, and bends by its rate", () => {
    const { membrane, bending } = pressStrain({
      twistRadPerMm: 2e-4,
      widthMm: 300,
      curvature: 1e-3,
      thicknessMm: 20,
    });
    expect(membrane).toBeCloseTo((2e-4 * 300) ** 2 / 12, 15);
    // The larger principal curvature of [κ τ; τ 0], by its characteristic equation x² − κ x − τ² = 0.
    const principal = bending / 10;
    expect(Math.abs(principal ** 2 - 1e-3 * principal - 4e-8)).toBeLessThan(1e-15);
  });

  it("of less than 0.1° on a gentle bend is developable", () => {
    const twist = 0.09 / (helicoidTwist(1, 200) / toRadians(1));
    expect(judgeTwist(helicoid(twist, 200), FOAM).verdict).toBe("developable");
    expect(judgeTwist(helicoid(twist * 1.3, 200), FOAM).verdict).toBe("press down");
  });

  it("is never called developable where the sheet bends tighter than the foam", () => {
    const bend = (radius: number) =>
      pairEdges(
        edgeOf((t) => [radius * Math.sin(0.5 * t), 0, radius * (1 - Math.cos(0.5 * t))]),
        edgeOf((t) => [radius * Math.sin(0.5 * t), 300, radius * (1 - Math.cos(0.5 * t))]),
        FOAM,
      );
    expect(judgeTwist(bend(620), FOAM).verdict).toBe("developable");
    expect(judgeTwist(bend(620), FOAM).leastRadiusMm).toBeCloseTo(620, 6);
    expect(judgeTwist(bend(580), FOAM).verdict).toBe("not with this foam");
  });

  it("is divided into the least number of strips that keeps each inside both limits", () => {
    const [turn, width] = [60, 400];
    const judged = judgeTwist(helicoid(turn, width), FOAM);
    const twist = helicoidTwist(turn, width);
    const fits = (n: number) => {
      const membrane = (twist / n) ** 2 / 12;
      return (
        membrane <= Math.min(0.003, 3.6 * ((10 * n) / width) ** 2) &&
        membrane + 5 * (twist / width) <= FOAM.strainLimit
      );
    };
    const least = Array.from({ length: 20 }, (_, k) => k + 1).find(fits);
    expect(judged.verdict).toBe("divide");
    expect(judged.strips).toBe(least);
    expect(judged.membraneStrain).toBeCloseTo((twist / judged.strips) ** 2 / 12, 9);
    expect(least).toBeGreaterThan(1);
  });

  it("that alone bends the foam beyond its limit cannot be had by dividing", () => {
    expect(judgeTwist(helicoid(120, 400), FOAM).verdict).toBe("not with this foam");
  });
});

describe("a fan", () => {
  it("is judged one thickness in from its apex", () => {
    // A cone of apex O over an arc: the radius of its bend grows evenly along its rulings.
    const apex = edgeOf((t) => [1e-7 * t, 0, 300]);
    const arc = edgeOf((t) => [900 * Math.sin(0.3 * t), 900 * Math.cos(0.3 * t), 0]);
    const sheet = pairEdges(apex, arc, { ...FOAM, leastRadiusMm: 0 });
    const slant = Math.hypot(900, 300);
    // Meusnier: the arc's own radius over the cosine between its plane and the normal.
    const atRim = (900 * slant) / 300;
    expect(judgeTwist(sheet, FOAM).leastRadiusMm).toBeCloseTo((atRim * 10) / slant, 3);
  });
});

describe("a crease", () => {
  it("is no developable bend: half its angle is the strain over one thickness", () => {
    const folded = (rise: number) => {
      const edge = (y: number) =>
        edgeOf(
          (t) => [500 * t, y, 0],
          (t) => [500 + 500 * t, y, rise * t],
        );
      return judgeTwist(pairEdges(edge(0), edge(300), FOAM), FOAM);
    };
    expect(folded(0.5).verdict).toBe("developable");
    expect(folded(5).verdict).toBe("press down");
    expect(folded(5).pressStrain).toBeCloseTo(Math.atan(0.01) / 2, 9);
    expect(folded(60).verdict).toBe("not with this foam");
  });
});
