import { describe, expect, it } from "vitest";
import {
  type ArcPiece,
  flattenPiece,
  pieceLengthMm,
  pointOnPiece,
  startOfPiece,
} from "../../core/curves/index.ts";

/** Closed forms, mm on circles up to 2 m: rounding of the coordinates, not of the small result. */
const CLOSED_FORM_MM = 1e-9;
const NO_TURN_LIMIT = 10;

/** The arc of a circle over a chord, its middle on the first axis. */
function arcOverChord(radiusMm: number, chordMm: number): ArcPiece {
  const halfRad = Math.asin(chordMm / (2 * radiusMm));
  return { kind: "arc", edgeId: "e", centre: [0, 0], radiusMm, startRad: -halfRad, sweepRad: 2 * halfRad };
}

describe("sagitta, chord and arc of a circle", () => {
  // G1. METHOD: h = L²/8R in railway notes, V(2R − V) = (C/2)²; digits of R − √(R² − C²/4).
  it("the rise of an arc over its chord", () => {
    const rows = [
      [1000, 100, 1.250782228091054],
      [500, 50, 0.6253911140455271],
      [300, 25, 0.2605297929550287],
      [2000, 200, 2.501564456182108],
    ] as const;
    for (const [radiusMm, chordMm, expected] of rows) {
      const arc = arcOverChord(radiusMm, chordMm);
      const rise = pointOnPiece(arc, 0.5)[0] - startOfPiece(arc)[0];
      expect(Math.abs(rise - expected)).toBeLessThan(CLOSED_FORM_MM);
    }
  });

  // G3. CLOSED FORM: 2R asin(c/2R) − c.
  it("an arc is longer than its chord", () => {
    const excess = (radiusMm: number, chordMm: number) =>
      pieceLengthMm(arcOverChord(radiusMm, chordMm)) - chordMm;
    expect(Math.abs(excess(1000, 100) - 0.04171361154002933)).toBeLessThan(CLOSED_FORM_MM);
    expect(Math.abs(excess(500, 50) - 0.02085680577001466)).toBeLessThan(CLOSED_FORM_MM);
  });

  // G4. CLOSED FORM: 2 √(2Rs − s²) is the longest chord with a sagitta of s = 0.1.
  it("an arc just under the longest chord of a tenth of a millimetre is one chord, just over it two", () => {
    const rows = [
      [1000, 28.2835641318417],
      [500, 19.9989999749987],
      [300, 15.490642336585],
    ] as const;
    const limits = { chordErrorMm: 0.1, turnRad: NO_TURN_LIMIT };
    for (const [radiusMm, chordMm] of rows) {
      expect(flattenPiece(arcOverChord(radiusMm, chordMm * (1 - 1e-8)), limits)).toHaveLength(2);
      expect(flattenPiece(arcOverChord(radiusMm, chordMm * (1 + 1e-8)), limits)).toHaveLength(3);
    }
  });

  // G14. CLOSED FORM: 2nR sin(θ/2n) for R = 500, 60°.
  it("chords of an arc come out short, the more the fewer they are", () => {
    const arc: ArcPiece = {
      kind: "arc",
      edgeId: "e",
      centre: [0, 0],
      radiusMm: 500,
      startRad: 0.2,
      sweepRad: Math.PI / 3,
    };
    const rows = [
      [6, 522.934456485949],
      [12, 523.432648384032],
      [24, 523.557240829467],
    ] as const;
    for (const [count, expected] of rows) {
      const parameters = flattenPiece(arc, { chordErrorMm: 1000, turnRad: Math.PI / 3 / count });
      expect(parameters).toHaveLength(count + 1);
      let sum = 0;
      parameters.slice(1).forEach((to, i) => {
        const [a, b] = [pointOnPiece(arc, parameters[i] ?? 0), pointOnPiece(arc, to)];
        sum += Math.hypot(b[0] - a[0], b[1] - a[1]);
      });
      expect(Math.abs(sum - expected)).toBeLessThan(CLOSED_FORM_MM);
    }
    expect(Math.abs(pieceLengthMm(arc) - 523.598775598299)).toBeLessThan(CLOSED_FORM_MM);
  });
});
