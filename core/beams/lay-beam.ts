import { at } from "../foundation/index.ts";
import { layOverhang, type Overhang } from "./overhang.ts";
import { laySpan, type Span, spanBetween } from "./span.ts";
import type { Beam, LaidBeam } from "./types.ts";

/**
 * A continuous elastic beam over its actual, unequal spans, by the three-moment equation (Clapeyron 1857, as every handbook
 * of structures prints it, here with supports at different heights and with overhangs): small deflections, no shear.
 * With two supports or more in ascending order and a stiffness over 0; undefined otherwise.
 */
export function layBeam(beam: Beam): LaidBeam | undefined {
  const { supports, stiffness } = beam;
  const [first, last] = [supports[0], supports[supports.length - 1]];
  const isAscending = supports.every(({ atMm }, i) => i === 0 || atMm > at(supports, i - 1).atMm);
  if (!first || !last || supports.length < 2 || !isAscending || !(stiffness > 0)) return undefined;
  const spans = supports.slice(1).map((right, i) => spanBetween(at(supports, i), right, beam.loads));
  const [before, after] = [
    layOverhang(first.atMm, beam.fromMm, beam.loads),
    layOverhang(last.atMm, beam.toMm, beam.loads),
  ];
  const moments = supportMoments(spans, { before, after, stiffness });
  const laid = spans.map((span, i) => laySpan(span, at(moments, i), at(moments, i + 1), stiffness));
  const ends = { start: at(laid, 0).slopeAtStart, end: at(laid, -1).slopeAtEnd };
  /** The span that a place lies in. */
  const indexAt = (atMm: number): number => {
    let [low, high] = [0, spans.length];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (at(spans, middle).fromMm <= atMm) low = middle;
      else high = middle;
    }
    return low;
  };
  return {
    heightAt: (atMm) => {
      if (atMm < first.atMm)
        return before.heightAt(first.atMm - atMm, first.heightMm, -ends.start, stiffness);
      if (atMm > last.atMm) return after.heightAt(atMm - last.atMm, last.heightMm, ends.end, stiffness);
      return at(laid, indexAt(atMm)).heightAt(atMm);
    },
    momentAt: (atMm) => {
      if (atMm < first.atMm) return before.momentAt(first.atMm - atMm);
      if (atMm > last.atMm) return after.momentAt(atMm - last.atMm);
      return at(laid, indexAt(atMm)).momentAt(atMm);
    },
    reactionsN: supports.map((_, i) => {
      const left = i === 0 ? before.loadN : at(laid, i - 1).shareOfEnd;
      const right = i === laid.length ? after.loadN : at(laid, i).shareOfStart;
      return left + right;
    }),
  };
}

interface EndsOfBeam {
  readonly before: Overhang;
  readonly after: Overhang;
  readonly stiffness: number;
}

/** The moment over every support: one equation for each inner one, solved from the first to the last and back (Thomas). */
function supportMoments(spans: readonly Span[], { before, after, stiffness }: EndsOfBeam): readonly number[] {
  const last = spans.length;
  const moments = [before.momentAt(0), ...Array.from({ length: last - 1 }, () => 0), after.momentAt(0)];
  const ratios: number[] = [];
  const rests: number[] = [];
  for (let i = 1; i < last; i++) {
    const [left, right] = [at(spans, i - 1), at(spans, i)];
    const wanted = 6 * stiffness * (right.grade - left.grade) - 6 * (left.turnAtEnd - right.turnAtStart);
    const known =
      (i === 1 ? left.lengthMm * at(moments, 0) : 0) +
      (i === last - 1 ? right.lengthMm * at(moments, last) : 0);
    const below = i === 1 ? 0 : left.lengthMm;
    const pivot = 2 * (left.lengthMm + right.lengthMm) - below * (ratios[i - 2] ?? 0);
    ratios.push(i === last - 1 ? 0 : right.lengthMm / pivot);
    rests.push((wanted - known - below * (rests[i - 2] ?? 0)) / pivot);
  }
  for (let i = last - 1; i >= 1; i--)
    moments[i] = at(rests, i - 1) - at(ratios, i - 1) * (i === last - 1 ? 0 : at(moments, i + 1));
  return moments;
}
