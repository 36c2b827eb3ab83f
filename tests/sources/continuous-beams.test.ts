import { describe, expect, it } from "vitest";
import { type BeamLoad, layBeam } from "../../core/beams/index.ts";
import { assert, at } from "../../core/foundation/index.ts";

/**
 * Equal spans under an even load. PUBLISHED: T. Hicks, Civil Engineering Formulas, table 2.1 (moments and reactions); the
 * sheets for three spans of one pipe designer's site (deflections, and spans that are loaded in part). The figures with more
 * places are the exact fractions that those tables round.
 */
const LENGTH = 400;
const LOAD = 0.02;
const STIFFNESS = 6250;

function beamOf(spans: number, loaded: readonly number[]) {
  const supports = Array.from({ length: spans + 1 }, (_, i) => ({ atMm: i * LENGTH, heightMm: 0 }));
  const loads = loaded.map((i): BeamLoad => ({ fromMm: i * LENGTH, toMm: (i + 1) * LENGTH, nPerMm: LOAD }));
  const laid = layBeam({ stiffness: STIFFNESS, fromMm: 0, toMm: spans * LENGTH, supports, loads });
  assert(laid !== undefined, "the beam lies");
  return {
    reactions: laid.reactionsN.map((force) => force / (LOAD * LENGTH)),
    moment: (place: number) => laid.momentAt(place * LENGTH) / (LOAD * LENGTH ** 2),
    sag: (place: number) => (-laid.heightAt(place * LENGTH) * STIFFNESS) / (LOAD * LENGTH ** 4),
  };
}

/** The largest value over a span, and where, by a fine look. */
function mostIn(of: (place: number) => number, span: number): readonly [value: number, share: number] {
  const steps = 20_000;
  let best: readonly [number, number] = [Number.NEGATIVE_INFINITY, 0];
  for (let i = 0; i <= steps; i++) {
    const value = of(span + i / steps);
    if (value > best[0]) best = [value, i / steps];
  }
  return best;
}

const all = (spans: number) => Array.from({ length: spans }, (_, i) => i);

describe("equal spans, all loaded", () => {
  it.each([
    { spans: 1, reactions: [1 / 2, 1 / 2], moments: [1 / 8], sag: 0.0130208333, where: 0.5 },
    { spans: 2, reactions: [3 / 8, 5 / 4, 3 / 8], moments: [9 / 128], sag: 0.005416122, where: 0.42154 },
    {
      spans: 3,
      reactions: [2 / 5, 11 / 10, 11 / 10, 2 / 5],
      moments: [0.08, 0.025],
      sag: 0.006884213,
      where: 0.44604,
    },
    {
      spans: 6,
      reactions: [41 / 104, 59 / 52, 25 / 26, 53 / 52, 25 / 26, 59 / 52, 41 / 104],
      moments: [0.0777089, 0.0340699, 0.0433155],
      sag: 0.00654164,
      where: undefined,
    },
  ])("$spans of them (C1, C2, C3, C6)", ({ spans, reactions, moments, sag, where }) => {
    const beam = beamOf(spans, all(spans));
    for (const [i, reaction] of reactions.entries()) expect(at(beam.reactions, i)).toBeCloseTo(reaction, 9);
    for (const [i, moment] of moments.entries()) expect(mostIn(beam.moment, i)[0]).toBeCloseTo(moment, 7);
    const [most, share] = mostIn(beam.sag, 0);
    expect(most).toBeCloseTo(sag, 9);
    if (where !== undefined) expect(share).toBeCloseTo(where, 3);
  });

  it("of three, the middle one sags 1/1920, and over its supports stands 1/10 (C3)", () => {
    const beam = beamOf(3, all(3));
    expect(beam.sag(1.5)).toBeCloseTo(1 / 1920, 10);
    expect(beam.moment(1)).toBeCloseTo(-1 / 10, 10);
  });

  it("of very many, an inner one is held as if built in at both ends (C7)", () => {
    const beam = beamOf(40, all(40));
    expect(at(beam.reactions, 20)).toBeCloseTo(1, 8);
    expect(beam.moment(20)).toBeCloseTo(-1 / 12, 8);
    expect(beam.moment(20.5)).toBeCloseTo(1 / 24, 8);
    expect(beam.sag(20.5)).toBeCloseTo(1 / 384, 8);
  });
});

describe("three spans, loaded in part", () => {
  it("the first two: the far end must be held down (C8)", () => {
    const beam = beamOf(3, [0, 1]);
    const published = [0.383, 1.2, 0.45, -0.033];
    for (const [i, reaction] of published.entries()) expect(at(beam.reactions, i)).toBeCloseTo(reaction, 3);
    expect(mostIn(beam.moment, 0)[0]).toBeCloseTo(0.0735, 3);
    expect(mostIn(beam.moment, 1)[0]).toBeCloseTo(0.0534, 3);
    const [sag, share] = mostIn(beam.sag, 0);
    expect(sag).toBeCloseTo(0.0059, 4);
    expect(share).toBeCloseTo(0.43, 2);
  });

  it("the outer two (C9)", () => {
    const beam = beamOf(3, [0, 2]);
    const published = [0.45, 0.55, 0.55, 0.45];
    for (const [i, reaction] of published.entries()) expect(at(beam.reactions, i)).toBeCloseTo(reaction, 9);
    expect(beam.moment(1)).toBeCloseTo(-0.05, 9);
    expect(mostIn(beam.moment, 0)[0]).toBeCloseTo(0.1013, 3);
    const [sag, share] = mostIn(beam.sag, 0);
    expect(sag).toBeCloseTo(0.0099, 4);
    expect(share).toBeCloseTo(0.479, 3);
  });
});

describe("foam of 10 mm, 80 kg/m³ and 75 MPa under 1.2 kg/m² of wet skin (C10)", () => {
  // A strip 1 mm wide: 19.6133 Pa, 6.25 N m² for each metre of width.
  const load = (0.01 * 80 + 1.2) * 9.80665 * 1e-6;
  const stiffness = (75 * 10 ** 3) / 12;
  const sagOf = (spans: number, span: number, lengthMm: number) => {
    const supports = Array.from({ length: spans + 1 }, (_, i) => ({ atMm: i * lengthMm, heightMm: 0 }));
    const toMm = spans * lengthMm;
    const laid = layBeam({
      stiffness,
      fromMm: 0,
      toMm,
      supports,
      loads: [{ fromMm: 0, toMm, nPerMm: load }],
    });
    assert(laid !== undefined, "the foam lies");
    return mostIn((place) => -laid.heightAt(place * lengthMm), span)[0];
  };

  it("sags over 400 mm as worked by hand", () => {
    expect(load * 1e6).toBeCloseTo(19.6133, 4);
    expect(sagOf(1, 0, 400)).toBeCloseTo(1.0460427, 6);
    expect(sagOf(3, 0, 400)).toBeCloseTo(0.5530507, 6);
    expect(sagOf(41, 20, 400)).toBeCloseTo(0.2092085, 6);
  });

  it("sags half a millimetre at the spacings worked by hand", () => {
    expect(sagOf(1, 0, 332.5946)).toBeCloseTo(0.5, 5);
    expect(sagOf(3, 0, 390.0419)).toBeCloseTo(0.5, 5);
  });
});
