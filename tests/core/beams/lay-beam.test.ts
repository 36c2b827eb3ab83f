import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Beam, layBeam } from "../../../core/beams/index.ts";
import { assert, at } from "../../../core/foundation/index.ts";

function laid(beam: Beam) {
  const lying = layBeam(beam);
  assert(lying !== undefined, "the beam lies");
  return lying;
}

/** Supports at uneven places and heights, and patches of load that reach over the ends as well. */
const beams = fc
  .record({
    gaps: fc.array(fc.integer({ min: 20, max: 600 }), { minLength: 1, maxLength: 9 }),
    heights: fc.array(fc.integer({ min: -40, max: 40 }), { minLength: 10, maxLength: 10 }),
    over: fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 200 })),
    patches: fc.array(
      fc.record({
        from: fc.double({ min: -0.2, max: 1, noNaN: true }),
        share: fc.double({ min: 0.01, max: 0.5, noNaN: true }),
        n: fc.double({ min: -0.1, max: 0.3, noNaN: true }),
      }),
      { maxLength: 4 },
    ),
    stiffness: fc.integer({ min: 300, max: 80_000 }),
  })
  .map(({ gaps, heights, over, patches, stiffness }): Beam => {
    const places = [100];
    for (const gap of gaps) places.push(at(places, -1) + gap);
    const supports = places.map((atMm, i) => ({ atMm, heightMm: at(heights, i) }));
    const [fromMm, toMm] = [100 - over[0], at(places, -1) + over[1]];
    const loads = patches.map(({ from, share, n }) => ({
      fromMm: fromMm + from * (toMm - fromMm),
      toMm: fromMm + (from + share) * (toMm - fromMm),
      nPerMm: n,
    }));
    return { stiffness, fromMm, toMm, supports, loads };
  });

describe("a beam over any supports", () => {
  it("lies on every one of them, and its forces and their turning balance its loads", () => {
    fc.assert(
      fc.property(beams, (beam) => {
        const lying = laid(beam);
        for (const { atMm, heightMm } of beam.supports) expect(lying.heightAt(atMm)).toBeCloseTo(heightMm, 6);
        let [force, turning] = [0, 0];
        for (const { fromMm, toMm, nPerMm } of beam.loads) {
          const [from, to] = [Math.max(fromMm, beam.fromMm), Math.min(toMm, beam.toMm)];
          if (to <= from) continue;
          force += nPerMm * (to - from);
          turning += (nPerMm * (to * to - from * from)) / 2;
        }
        const sum = lying.reactionsN.reduce((total, one) => total + one, 0);
        const turned = lying.reactionsN.reduce((total, one, i) => total + one * at(beam.supports, i).atMm, 0);
        expect(sum).toBeCloseTo(force, 6);
        expect(turned / 1000).toBeCloseTo(turning / 1000, 5);
      }),
      { seed: 11, numRuns: 300 },
    );
  });

  it("bends as its moment says, everywhere, without a kink", () => {
    fc.assert(
      fc.property(beams, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (beam, share) => {
        const lying = laid(beam);
        const place = beam.fromMm + share * (beam.toMm - beam.fromMm);
        const h = 0.5;
        // Where a load begins or a support stands within the step, curvature is not smooth enough for the difference.
        const breaks = [
          ...beam.supports.map(({ atMm }) => atMm),
          ...beam.loads.flatMap(({ fromMm, toMm }) => [fromMm, toMm]),
        ];
        fc.pre(breaks.every((one) => Math.abs(one - place) > 2 * h));
        const bend =
          (lying.heightAt(place - h) - 2 * lying.heightAt(place) + lying.heightAt(place + h)) / (h * h);
        expect(bend).toBeCloseTo(lying.momentAt(place) / beam.stiffness, 4);
        for (const { atMm } of beam.supports) {
          const e = 1e-4;
          const before = (lying.heightAt(atMm) - lying.heightAt(atMm - e)) / e;
          const after = (lying.heightAt(atMm + e) - lying.heightAt(atMm)) / e;
          const bent = e * (Math.abs(lying.momentAt(atMm)) / beam.stiffness + 1);
          expect(Math.abs(before - after)).toBeLessThan(3 * bent);
        }
      }),
      { seed: 12, numRuns: 300 },
    );
  });

  it("without loads is the natural spline through its supports, and goes on straight beyond the last", () => {
    const places = [0, 180, 300, 640, 700];
    const heights = [10, -4, 22, 3, 30];
    const lying = laid({
      stiffness: 1250,
      fromMm: -80,
      toMm: 790,
      supports: places.map((atMm, i) => ({ atMm, heightMm: at(heights, i) })),
      loads: [],
    });
    const spline = naturalSpline(places, heights);
    for (let x = 0; x <= 700; x += 7) expect(lying.heightAt(x)).toBeCloseTo(spline(x), 8);
    const slope = (lying.heightAt(700) - lying.heightAt(699.999)) / 0.001;
    expect(lying.heightAt(790)).toBeCloseTo(30 + 90 * slope, 4);
    expect(lying.momentAt(0)).toBeCloseTo(0, 12);
    expect(lying.momentAt(790)).toBe(0);
  });

  it("is not made of one support, of none, of places that fall back, or of no stiffness", () => {
    const supports = [0, 100].map((atMm) => ({ atMm, heightMm: 0 }));
    const beam: Beam = { stiffness: 1, fromMm: 0, toMm: 100, supports, loads: [] };
    expect(layBeam(beam)).toBeDefined();
    expect(layBeam({ ...beam, supports: [] })).toBeUndefined();
    expect(layBeam({ ...beam, supports: supports.slice(1) })).toBeUndefined();
    expect(layBeam({ ...beam, supports: supports.toReversed() })).toBeUndefined();
    expect(layBeam({ ...beam, stiffness: 0 })).toBeUndefined();
    expect(layBeam({ ...beam, stiffness: Number.NaN })).toBeUndefined();
  });
});

/** The natural spline by its second derivatives. */
function naturalSpline(places: readonly number[], heights: readonly number[]): (x: number) => number {
  // Full system of second derivatives, by elimination with pivots: slow, and independent of the code under test.
  const n = places.length;
  const rows = places.map((_, i) => {
    const row = Array.from({ length: n + 1 }, () => 0);
    if (i === 0 || i === n - 1) {
      row[i] = 1;
      return row;
    }
    const [h, k] = [at(places, i) - at(places, i - 1), at(places, i + 1) - at(places, i)];
    row[i - 1] = h;
    row[i] = 2 * (h + k);
    row[i + 1] = k;
    row[n] = 6 * ((at(heights, i + 1) - at(heights, i)) / k - (at(heights, i) - at(heights, i - 1)) / h);
    return row;
  });
  for (let c = 0; c < n; c++)
    for (let r = 0; r < n; r++) {
      if (r === c) continue;
      const ratio = at(at(rows, r), c) / at(at(rows, c), c);
      rows[r] = at(rows, r).map((value, k) => value - ratio * at(at(rows, c), k));
    }
  const seconds = rows.map((row, i) => at(row, n) / at(row, i));
  return (x) => {
    let i = 0;
    while (i < n - 2 && at(places, i + 1) < x) i++;
    const [a, b] = [at(places, i), at(places, i + 1)];
    const h = b - a;
    const [p, q] = [(b - x) / h, (x - a) / h];
    return (
      p * at(heights, i) +
      q * at(heights, i + 1) +
      ((p ** 3 - p) * at(seconds, i) + (q ** 3 - q) * at(seconds, i + 1)) * ((h * h) / 6)
    );
  };
}
