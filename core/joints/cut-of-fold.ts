import { SMOOTH_FOLD_RAD } from "../foundation/index.ts";
import type { FaceDepths } from "../laminate/index.ts";
import type { JointCut } from "./types.ts";

/** Beyond this a bevel cannot be cut in foam by hand (design stage 4). */
const LARGEST_BEVEL_RAD = Math.PI / 3;

/** How one fold is cut: for both sheets the bevel off square and the set-back of the neutral fibre. */
export interface FoldCut {
  readonly cut: JointCut;
  readonly through?: 0 | 1;
  readonly bevelRad: readonly [number, number];
  readonly setBackMm: readonly [number, number];
}

/** How a joint is to be cut all along: `through` says which sheet of a butt runs through, the thicker if absent. */
export interface CutChoice {
  readonly cut: JointCut;
  readonly through?: 0 | 1;
}

/**
 * The cut that suits every fold of a joint: square where the wedges are within the glue's gap limit all along, a
 * mitre where every fold allows it, else a butt.
 */
export function cutForFolds(
  foldsRad: readonly number[],
  a: FaceDepths,
  b: FaceDepths,
  glue: { readonly gapLimitMm: number },
): CutChoice {
  if (foldsRad.every((fold) => isWithinGap(fold, a, b, glue.gapLimitMm))) return { cut: "square" };
  const [ta, tb] = [a.coreUpperMm - a.airMm, b.coreUpperMm - b.airMm];
  const isMitred = (fold: number) =>
    Math.abs(fold) <= SMOOTH_FOLD_RAD || mitreBevels(ta, tb, fold) !== undefined;
  return foldsRad.every(isMitred) ? { cut: "mitre" } : { cut: "butt" };
}

/** Whether a cut can be made at a fold at all: its bevels within what a hand can cut. */
export function canCut(choice: CutChoice, foldRad: number, a: FaceDepths, b: FaceDepths): boolean {
  if (choice.cut === "square" || Math.abs(foldRad) <= SMOOTH_FOLD_RAD) return true;
  if (choice.cut === "mitre")
    return mitreBevels(a.coreUpperMm - a.airMm, b.coreUpperMm - b.airMm, foldRad) !== undefined;
  return buttCut(foldRad, a, b, 0, choice.through).bevelRad.every(
    (bevel) => Math.abs(bevel) <= LARGEST_BEVEL_RAD + 1e-9,
  );
}

function isWithinGap(foldRad: number, a: FaceDepths, b: FaceDepths, gapLimitMm: number): boolean {
  const thickestMm = Math.max(a.coreUpperMm - a.coreLowerMm, b.coreUpperMm - b.coreLowerMm);
  return (
    Math.abs(foldRad) <= SMOOTH_FOLD_RAD || 2 * thickestMm * Math.abs(Math.tan(foldRad / 2)) <= gapLimitMm
  );
}

/**
 * The cut of a joint with fold φ (rad, positive when the core lies inside the fold) between sheets whose faces lie
 * at `a` and `b`. The drawn edge is where the drawn faces meet.
 *
 * - *Square* where the wedge left open, 2 t tan(φ/2), is within the glue's gap limit: the sheets touch at the inner
 *   core face (core inside) or at the lower core face (core outside).
 * - *Mitre* else: tan β₁ = (t₂ − t₁ cos φ) / (t₁ sin φ), β₂ likewise, t from air face to inner core face; for equal
 *   thickness φ/2. The neutral fibre moves by its depth times tan β.
 * - *Butt* where a bevel is negative or over 60°; see `buttCut`.
 *
 * Both edges share the glue line. Derivation: the mitre plane holds the drawn edge and the line where the inner
 * faces meet.
 */
export function cutOfFold(
  foldRad: number,
  a: FaceDepths,
  b: FaceDepths,
  glue: { readonly gapMm: number; readonly gapLimitMm: number },
  choice: CutChoice = cutForFolds([foldRad], a, b, glue),
): FoldCut {
  const half = Math.tan(foldRad / 2);
  const [ta, tb] = [a.coreUpperMm - a.airMm, b.coreUpperMm - b.airMm];
  const gap = glue.gapMm / 2;
  if (Math.abs(foldRad) <= SMOOTH_FOLD_RAD || choice.cut === "square") {
    const touch = (depths: FaceDepths) => (foldRad > 0 ? depths.coreUpperMm : depths.coreLowerMm) * half;
    return { cut: "square", bevelRad: [0, 0], setBackMm: [touch(a) + gap, touch(b) + gap] };
  }
  const butt = choice.cut === "butt" ? buttCut(foldRad, a, b, gap, choice.through) : undefined;
  if (butt?.bevelRad.every(isCuttable)) return butt;
  const bevels = mitreBevels(ta, tb, foldRad);
  if (bevels) {
    return {
      cut: "mitre",
      bevelRad: bevels,
      setBackMm: [a.neutralMm * Math.tan(bevels[0]) + gap, b.neutralMm * Math.tan(bevels[1]) + gap],
    };
  }
  return butt ?? buttCut(foldRad, a, b, gap, choice.through);
}

/** A bevel that a hand can cut. */
const isCuttable = (bevelRad: number): boolean => Math.abs(bevelRad) <= LARGEST_BEVEL_RAD + 1e-9;

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

/**
 * No mitre: the thicker sheet (t₁), or the one that the builder chose, runs through. Where its own bevel would be negative (t₂ < t₁ cos φ) it ends square
 * on the drawn edge and is tall enough for the thinner one's end, bevelled by the whole fold, to lie on. Else one
 * sheet lies flush on the other, along the plane of a face: inside the fold the thinner one on the inner face of the
 * thicker, outside it the air face of the thicker on the end of the thinner.
 */
function buttCut(foldRad: number, a: FaceDepths, b: FaceDepths, gap: number, chosen?: 0 | 1): FoldCut {
  const thicker = a.coreUpperMm - a.airMm >= b.coreUpperMm - b.airMm ? 0 : 1;
  const isFirstThrough = (chosen ?? thicker) === 0;
  const [through, ending] = isFirstThrough ? [a, b] : [b, a];
  const [own, other] = [through.coreUpperMm - through.airMm, ending.coreUpperMm - ending.airMm];
  const [first, second] =
    other < own * Math.cos(foldRad)
      ? [SQUARE_ON_EDGE, { bevelRad: foldRad, setBackMm: ending.neutralMm * Math.tan(foldRad) }]
      : flushEnds(foldRad, through, ending);
  const [ofA, ofB] = isFirstThrough ? [first, second] : [second, first];
  return {
    cut: "butt",
    through: isFirstThrough ? 0 : 1,
    bevelRad: [ofA.bevelRad, ofB.bevelRad],
    setBackMm: [ofA.setBackMm + gap, ofB.setBackMm + gap],
  };
}

interface SheetEnd {
  readonly bevelRad: number;
  readonly setBackMm: number;
}

const SQUARE_ON_EDGE: SheetEnd = { bevelRad: 0, setBackMm: 0 };

/**
 * Each sheet ends along the plane of a face of the other at `depthMm` of that face: at depth d it ends
 * (depth − d cos φ) / sin φ before the drawn edge, and its bevel is the turn of that plane off square.
 */
function flushEnds(foldRad: number, through: FaceDepths, ending: FaceDepths): readonly [SheetEnd, SheetEnd] {
  const along = (own: FaceDepths, depthMm: number): SheetEnd => ({
    bevelRad: foldRad > 0 ? foldRad - Math.PI / 2 : foldRad + Math.PI / 2,
    setBackMm: (depthMm - own.neutralMm * Math.cos(foldRad)) / Math.sin(foldRad),
  });
  return foldRad > 0
    ? [along(through, ending.airMm), along(ending, through.coreUpperMm)]
    : [along(through, ending.coreUpperMm), along(ending, through.airMm)];
}
