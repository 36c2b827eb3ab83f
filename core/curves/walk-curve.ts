import { at, cumulate, gaussShort, length2 } from "../foundation/index.ts";
import { derivativeOnPiece, frameOnPiece } from "./pieces.ts";
import type { Curve, CurveFrame, CurvePiece } from "./types.ts";

/**
 * A curve made ready for many look-ups by arc length: as `frameAtLength`, but the lengths of its cubics are
 * tabled once. Beyond the ends it holds the ends.
 */
export function walkCurve(curve: Curve): (sMm: number) => CurveFrame {
  const finders = curve.pieces.map(parameterFinder);
  return (sMm) => {
    let index = curve.pieces.length - 1;
    while (index > 0 && at(curve.startsMm, index) > sMm) index--;
    const startMm = at(curve.startsMm, index);
    const lengthMm = (curve.startsMm[index + 1] ?? curve.lengthMm) - startMm;
    const share = Math.min(1, Math.max(0, lengthMm > 0 ? (sMm - startMm) / lengthMm : 0));
    return frameOnPiece(at(curve.pieces, index), at(finders, index)(share));
  };
}

/** From a share of a piece's length to its parameter: Newton on the tabled length, kept inside its step. */
function parameterFinder(piece: CurvePiece): (share: number) => number {
  if (piece.kind !== "cubic") return (share) => share;
  const speed = (t: number) => length2(derivativeOnPiece(piece, t));
  const table = cumulate(speed, { rule: gaussShort, mostSteps: 256 });
  const steps = table.length - 1;
  return (share) => {
    const target = share * at(table, -1);
    let [step, above] = [0, steps];
    while (above - step > 1) {
      const middle = (step + above) >> 1;
      if (at(table, middle) <= target) step = middle;
      else above = middle;
    }
    const [from, gain] = [step / steps, at(table, step + 1) - at(table, step)];
    let t = from + (gain > 0 ? (target - at(table, step)) / gain / steps : 0);
    for (let i = 0; i < 20; i++) {
      const missing = target - at(table, step) - gaussShort(speed, from, t);
      const next = Math.min(from + 1 / steps, Math.max(from, t + missing / (speed(t) || 1)));
      if (Math.abs(next - t) <= 1e-13) return next;
      t = next;
    }
    return t;
  };
}
