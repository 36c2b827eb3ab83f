import { SMOOTH_FOLD_RAD } from "../foundation/index.ts";
import type { FaceDepths } from "../laminate/index.ts";
import type { JointCut } from "./types.ts";

/** Beyond this a bevel cannot be cut in foam by hand (design stage 4). */
const LARGEST_BEVEL_RAD = Math.PI / 3;

/** How one fold is cut: for both sheets the bevel off square and the set-back of the neutral fibre. */
export interface FoldCut {
  readonly cut: JointCut;
  readonly bevelRad: readonly [number, number];
  readonly setBackMm: readonly [number, number];
}

/**
 * The cut of a joint with fold φ (rad, positive when the core lies inside the fold) between sheets whose faces lie
 * at `a` and `b`. The drawn edge is where the drawn faces meet.
 *
 * - *Square* where the wedge left open, 2 t tan(φ/2), is within the glue's gap limit: the sheets touch at the inner
 *   core face (core inside) or at the lower core face (core outside).
 * - *Mitre* else: tan β₁ = (t₂ − t₁ cos φ) / (t₁ sin φ), β₂ likewise, t from air face to inner core face; for equal
 *   thickness φ/2. The neutral fibre moves by its depth times tan β.
 * - *Butt* where a bevel is negative or over 60°: the thicker sheet runs through, the other ends on its inner face.
 *
 * Both edges share the glue line. Derivation: the mitre plane holds the drawn edge and the line where the inner
 * faces meet.
 */
export function cutOfFold(
  foldRad: number,
  a: FaceDepths,
  b: FaceDepths,
  glue: { readonly gapMm: number; readonly gapLimitMm: number },
): FoldCut {
  const half = Math.tan(foldRad / 2);
  const [ta, tb] = [a.coreUpperMm - a.airMm, b.coreUpperMm - b.airMm];
  const gap = glue.gapMm / 2;
  const wedgeMm = 2 * Math.max(a.coreUpperMm - a.coreLowerMm, b.coreUpperMm - b.coreLowerMm) * Math.abs(half);
  if (Math.abs(foldRad) <= SMOOTH_FOLD_RAD || wedgeMm <= glue.gapLimitMm) {
    const touch = (depths: FaceDepths) => (foldRad > 0 ? depths.coreUpperMm : depths.coreLowerMm) * half;
    return { cut: "square", bevelRad: [0, 0], setBackMm: [touch(a) + gap, touch(b) + gap] };
  }
  const bevels = mitreBevels(ta, tb, foldRad);
  if (bevels) {
    return {
      cut: "mitre",
      bevelRad: bevels,
      setBackMm: [a.neutralMm * Math.tan(bevels[0]) + gap, b.neutralMm * Math.tan(bevels[1]) + gap],
    };
  }
  return buttCut(foldRad, a, b, gap);
}

/**
 * The bevels of a mitre between sheets of thickness t₁ and t₂ (air face to inner core face), or undefined where one
 * is of the wrong sign or over 60°. Check: 20 on 10 at 60° gives 0° and 60°, at 30° no mitre (design stage 4).
 */
export function mitreBevels(t1: number, t2: number, foldRad: number): readonly [number, number] | undefined {
  const bevel = (own: number, other: number) =>
    Math.atan2((other - own * Math.cos(foldRad)) * Math.sign(foldRad), own * Math.abs(Math.sin(foldRad)));
  const signed = [bevel(t1, t2), bevel(t2, t1)] as const;
  const usable = signed.every(
    (beta) => beta * Math.sign(foldRad) >= -1e-9 && Math.abs(beta) <= LARGEST_BEVEL_RAD + 1e-9,
  );
  return usable ? signed : undefined;
}

function buttCut(foldRad: number, a: FaceDepths, b: FaceDepths, gap: number): FoldCut {
  const isFirstThrough = a.coreUpperMm - a.airMm >= b.coreUpperMm - b.airMm;
  const [through, ending] = isFirstThrough ? [a, b] : [b, a];
  const bevel = foldRad > 0 ? Math.PI / 2 - foldRad : 0;
  const endingSetBack =
    foldRad > 0
      ? (through.coreUpperMm - ending.neutralMm * Math.cos(foldRad)) / Math.sin(foldRad)
      : ending.coreLowerMm * Math.tan(foldRad / 2);
  const [first, second] = isFirstThrough ? [0, endingSetBack] : [endingSetBack, 0];
  return {
    cut: "butt",
    bevelRad: isFirstThrough ? [0, bevel] : [bevel, 0],
    setBackMm: [first + gap, second + gap],
  };
}
