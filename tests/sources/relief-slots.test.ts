import { describe, expect, it } from "vitest";
import {
  arcOf,
  type BentCurve,
  closingAngleRad,
  kerfOfClosing,
  laySlots,
  type SlotSide,
  slotCount,
  slotPitchMm,
  turnOf,
} from "../../core/bending/index.ts";
import { at, toDegrees, toRadians } from "../../core/foundation/index.ts";

/** Closed forms. */
const CLOSED_FORM = 1e-9;
/** Neutral lengths are printed to a tenth of a millimetre. */
const PRINTED_MM = 0.05;
/** No straight is too long. */
const ANY_SAGITTA_MM = 1e6;
/** What the slots of a zone may miss the turn by. */
const TURN_MISS_DEG = 0.1;

describe("relief slots", () => {
  // K1 (METHOD): the workshop's spacing is R × the closing angle ("Building Construction" vol. 3, Curved Risers, fig. 11).
  // K2, CLOSED FORM: slots 3 wide and 17 deep in 20 mm, radius 300 to the uncut skin, 90°.
  it("of 3 by 17 mm close by 10.08°, and nine of them 52.8 mm apart turn 90° at a radius of 300", () => {
    const closing = closingAngleRad({ kerfMm: 3, depthMm: 17 });
    expect(Math.abs(toDegrees(closing) - 10.08490213834183)).toBeLessThan(CLOSED_FORM);
    expect(toRadians(90) / closing).toBeCloseTo(8.92423136738518, 9);
    expect(slotCount(toRadians(90), closing)).toBe(9);
    expect(Math.abs(slotPitchMm(300, closing) - 52.80442411664446)).toBeLessThan(CLOSED_FORM * 100);
    expect(300 * Math.sin(closing)).toBeCloseTo(52.53218884, 7);
    expect(300 * Math.tan(closing)).toBeCloseTo(53.35658239, 7);
  });

  // K3, CLOSED FORM.
  it("of 3 by 17.5 mm close by 9.80°, and seven of them turn 60° at a radius of 500", () => {
    const closing = closingAngleRad({ kerfMm: 3, depthMm: 17.5 });
    expect(Math.abs(toDegrees(closing) - 9.79818490757553)).toBeLessThan(CLOSED_FORM);
    expect(toRadians(60) / closing).toBeCloseTo(6.123583149937354, 9);
    expect(slotCount(toRadians(60), closing)).toBe(7);
    expect(slotPitchMm(500, closing)).toBeCloseTo(85.50529367820464, 8);
  });

  // K5, CLOSED FORM: the slots' widths together are nearly the turn times their depth.
  it("have together the width by which the faces differ over their depth, within half a per cent", () => {
    const byAngle = toRadians(90) / closingAngleRad({ kerfMm: 3, depthMm: 17 });
    const byLength = (toRadians(90) * 17) / 3;
    expect(byLength).toBeCloseTo(8.901179185171081, 9);
    expect(Math.abs(byLength / byAngle - 1)).toBeLessThan(0.005);
  });

  // O3, O4 (CLOSED FORM) for the sheet bent whole; the web's own middle for slots.
  it("lie on the web: a bend of 300 in 20 mm foam is 486.9 long whole, 500.3 closing, 473.6 opening", () => {
    const lengthAt = (radiusMm: number, degrees: number) => arcOf(radiusMm, toRadians(degrees)).lengthMm;
    expect(lengthAt(300 + 10, 90)).toBeCloseTo(486.946861306418, 9);
    expect(lengthAt(500 + 10, 60)).toBeCloseTo(534.070751110265, 9);
    expect(Math.abs(lengthAt(300 + 20 - 1.5, 90) - 500.3)).toBeLessThan(PRINTED_MM);
    expect(Math.abs(lengthAt(300 + 1.5, 90) - 473.6)).toBeLessThan(PRINTED_MM);
  });

  it("measured by how far they close give back the blade's kerf", () => {
    expect(kerfOfClosing(17, closingAngleRad({ kerfMm: 3, depthMm: 17 }))).toBeCloseTo(3, 12);
  });
});

/** A bend that tightens evenly: its curvature falls from 1/200 to 1/800 over its length. */
const TIGHTENING: BentCurve = {
  lengthMm: 300,
  turnAt: (s) => s / 200 + ((1 / 800 - 1 / 200) * s * s) / 600,
};

describe("a pattern of slots", () => {
  it.each(["closing", "opening"] as const)("turns by the design angle, %s", (side: SlotSide) => {
    for (const web of [arcOf(318.5, toRadians(90)), arcOf(301.5, toRadians(37)), TIGHTENING]) {
      const pattern = laySlots(web, { side, kerfMm: 3, depthMm: 17, sagittaMm: 1 });
      // What the slots close or open by, from their mouths alone.
      const change = side === "closing" ? 3 - pattern.mouthMm : pattern.mouthMm - 3;
      const turned = pattern.placesMm.length * 2 * Math.atan(change / (2 * 17));
      expect(Math.abs(toDegrees(turned - turnOf(web)))).toBeLessThan(TURN_MISS_DEG);
    }
  });

  it("has nine slots where only the turn asks for them, and ten where the straights must keep 1 mm", () => {
    const web = arcOf(318.5, toRadians(90));
    const cut = { side: "closing", kerfMm: 3, depthMm: 17 } as const;
    expect(laySlots(web, { ...cut, sagittaMm: ANY_SAGITTA_MM }).placesMm).toHaveLength(9);
    const kept = laySlots(web, { ...cut, sagittaMm: 1 });
    expect(kept.placesMm).toHaveLength(10);
    expect(kept.polygonMm).toBeLessThan(1);
    // The rise of a 31.85 mm chord's arc: R (1 − cos(4.5°)).
    expect(kept.polygonMm).toBeCloseTo(318.5 * (1 - Math.cos(toRadians(4.5))), 6);
  });

  it("starts and ends half a pitch inside, and its pitch follows the curvature", () => {
    const even = laySlots(arcOf(300, 1), { side: "opening", kerfMm: 2, depthMm: 8, sagittaMm: 1 });
    const [least, most] = even.pitchMm ?? [0, 0];
    expect(most - least).toBeLessThan(1e-9);
    expect(at(even.placesMm, 0)).toBeCloseTo(least / 2, 9);
    expect(300 - at(even.placesMm, -1)).toBeCloseTo(least / 2, 9);
    const pitches = laySlots(TIGHTENING, { side: "closing", kerfMm: 2, depthMm: 8, sagittaMm: 1 }).placesMm;
    const steps = pitches.slice(1).map((place, i) => place - at(pitches, i));
    expect(steps).toEqual(steps.toSorted((a, b) => a - b));
    expect(at(steps, -1)).toBeGreaterThan(1.5 * at(steps, 0));
  });

  it("shuts no slot further than it can, and tells what stays open", () => {
    const { turnRad, closingRad, mouthMm } = laySlots(arcOf(318.5, toRadians(90)), {
      side: "closing",
      kerfMm: 3,
      depthMm: 17,
      sagittaMm: ANY_SAGITTA_MM,
    });
    expect(turnRad).toBeLessThanOrEqual(closingRad);
    expect(mouthMm).toBeCloseTo(3 - 34 * Math.tan(toRadians(5)), 9);
  });
});
