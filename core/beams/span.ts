import type { BeamLoad, BeamSupport } from "./types.ts";

/** What lies between two supports, as a beam that ends on them: how its loads alone turn its ends, times E I. */
export interface Span {
  readonly fromMm: number;
  readonly lengthMm: number;
  readonly startHeightMm: number;
  /** How the straight between its supports rises. */
  readonly grade: number;
  readonly patches: readonly Patch[];
  readonly loadN: number;
  /** What its loads press on its first support alone. */
  readonly startN: number;
  readonly turnAtStart: number;
  readonly turnAtEnd: number;
}

/** A load in the span's own length. */
interface Patch {
  readonly from: number;
  readonly to: number;
  readonly nPerMm: number;
}

export function spanBetween(left: BeamSupport, right: BeamSupport, loads: readonly BeamLoad[]): Span {
  const lengthMm = right.atMm - left.atMm;
  const patches = loads.flatMap(({ fromMm, toMm, nPerMm }): Patch[] => {
    const [from, to] = [Math.max(fromMm - left.atMm, 0), Math.min(toMm - left.atMm, lengthMm)];
    return to > from && nPerMm !== 0 ? [{ from, to, nPerMm }] : [];
  });
  const loadN = patches.reduce((sum, { from, to, nPerMm }) => sum + nPerMm * (to - from), 0);
  const startN = patches.reduce(
    (sum, { from, to, nPerMm }) => sum + (nPerMm * (to - from) * (lengthMm - (from + to) / 2)) / lengthMm,
    0,
  );
  const fourth = pressedFrom(patches, lengthMm, 4) / 24;
  const third = pressedFrom(patches, lengthMm, 3) / 6;
  return {
    fromMm: left.atMm,
    lengthMm,
    startHeightMm: left.heightMm,
    grade: (right.heightMm - left.heightMm) / lengthMm,
    patches,
    loadN,
    startN,
    turnAtStart: -(startN * lengthMm * lengthMm) / 6 + fourth / lengthMm,
    turnAtEnd: (startN * lengthMm * lengthMm) / 3 + fourth / lengthMm - third,
  };
}

/** Sum over the loads of q (⟨x − from⟩ⁿ − ⟨x − to⟩ⁿ): what has pressed up to x, in the brackets of Macaulay (1919). */
function pressedFrom(patches: readonly Patch[], x: number, power: number): number {
  let sum = 0;
  for (const { from, to, nPerMm } of patches)
    sum += nPerMm * (Math.max(0, x - from) ** power - Math.max(0, x - to) ** power);
  return sum;
}

/** A span once the moments over its supports are known. */
export interface LaidSpan {
  readonly heightAt: (atMm: number) => number;
  readonly momentAt: (atMm: number) => number;
  readonly slopeAtStart: number;
  readonly slopeAtEnd: number;
  /** What the span presses on its two supports, N. */
  readonly shareOfStart: number;
  readonly shareOfEnd: number;
}

export function laySpan(span: Span, startMoment: number, endMoment: number, stiffness: number): LaidSpan {
  const { fromMm, lengthMm, startHeightMm, grade, patches, startN, loadN } = span;
  const slopeAtStart =
    grade + (span.turnAtStart - (startMoment * lengthMm) / 3 - (endMoment * lengthMm) / 6) / stiffness;
  const slopeAtEnd =
    grade + (span.turnAtEnd + (startMoment * lengthMm) / 6 + (endMoment * lengthMm) / 3) / stiffness;
  const rise = (endMoment - startMoment) / lengthMm;
  return {
    momentAt: (atMm) => {
      const x = atMm - fromMm;
      return startMoment + (startN + rise) * x - pressedFrom(patches, x, 2) / 2;
    },
    heightAt: (atMm) => {
      const x = atMm - fromMm;
      const bent =
        ((startN + rise) * x ** 3) / 6 + (startMoment * x * x) / 2 - pressedFrom(patches, x, 4) / 24;
      return startHeightMm + slopeAtStart * x + bent / stiffness;
    },
    slopeAtStart,
    slopeAtEnd,
    shareOfStart: startN + rise,
    shareOfEnd: loadN - startN - rise,
  };
}
