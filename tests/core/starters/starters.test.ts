import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Design, designTray } from "../../../core/design.ts";
import { toRadians, wordProblem } from "../../../core/foundation/index.ts";
import { type Project, readProject, writeProject } from "../../../core/project/index.ts";
import {
  STARTERS,
  type Starter,
  type StarterName,
  starterOf,
  type TypedNumbers,
  usualNumbers,
} from "../../../core/starters/index.ts";

const START = { id: "tray", issuedOn: "2026-11-25" };
const SEED = 20261125;
/** Lengths by hand against those of the document, whose nodes stand on hundredths of a mm. */
const SETTLED_MM = 0.02;
/** Foam of 10 mm behind a skin of 0.8 mm: how far the neutral fibre lies behind the drawn face. */
const NEUTRAL_MM = 5.8;

describe.each(STARTERS.map((starter) => [starter.word, starter] as const))("%s", (_word, starter) => {
  it("asks for at most eight numbers, each with a word, a unit and a usual value in its range", () => {
    expect(starter.numbers.length).toBeLessThanOrEqual(8);
    expect(new Set(starter.numbers.map(({ word }) => word)).size).toBe(starter.numbers.length);
    expect(starter.make(usualNumbers(starter), START).ok).toBe(true);
  });

  it("begins as a tray with nothing open, which is written to a file and read from it the same", () => {
    const project = made(starter);
    expect(problemsOf(designTray(project))).toEqual([]);
    const read = readProject(writeProject(project));
    expect(read).toEqual({ ok: true, project });
  });

  it("has nothing open anywhere in its ranges, but that the widest are skinned from a plank", {
    timeout: 30_000,
  }, () => {
    fc.assert(
      fc.property(numbersOf(starter), (typed) => {
        const { problems } = designTray(made(starter, typed));
        expect(problems.filter(({ kind }) => kind !== "skin-out-of-reach").map(wordProblem)).toEqual([]);
      }),
      { seed: SEED, numRuns: 4 },
    );
  });

  it.each(starter.numbers.map(({ name, word }) => [word, name] as const))(
    "names %s where it is too small, too large or no number, and what to type",
    (word, name) => {
      const usual = usualNumbers(starter);
      for (const value of [-1e6, 1e6, Number.NaN]) {
        const result = starter.make({ ...usual, [name]: value }, START);
        const problems = result.ok ? [] : result.problems;
        expect(problems.map(({ place }) => place.setting)).toEqual([`starter.${name}`]);
        expect(problems.map(wordProblem)[0]).toMatch(
          new RegExp(`^${word} is .+\\. Type a number from .+ to `),
        );
      }
    },
  );
});

describe("a starter's number that depends on another", () => {
  it("is told with the range that the other leaves it", () => {
    const ramp = named("rear-ramp");
    const result = ramp.make({ ...usualNumbers(ramp), heightMm: 40, fenceMm: 35 }, START);
    expect(result.ok ? [] : result.problems.map(wordProblem)).toEqual([
      "Fence depth is 35. Type a number from 15 to 30 mm.",
    ]);
  });

  it("is not judged while the other is wrong", () => {
    const ramp = named("rear-ramp");
    const result = ramp.make({ ...usualNumbers(ramp), heightMm: 4, fenceMm: 35 }, START);
    expect(result.ok ? [] : result.problems.map(({ name }) => name)).toEqual(["Height above the ground"]);
  });
});

describe("developed lengths and folds by hand", () => {
  it("a floor with a ramp: two flats less the bend's tangents, and the arc at the neutral fibre", () => {
    const design = usualDesign("rear-ramp");
    const angleRad = toRadians(9);
    const tangentMm = 900 * Math.tan(angleRad / 2);
    const lengthMm = 1400 - tangentMm + (900 - NEUTRAL_MM) * angleRad + 550 / Math.cos(angleRad) - tangentMm;
    expectMm(edgeOf(design, "S1", "c3").flatLengthMm, lengthMm);
    expect(partOf(design, "S1").verdict).toBe("bend cold");
  });

  it("a floor with a ramp: the outer floor follows the centre floor, and both meet without a fold", () => {
    const design = usualDesign("rear-ramp");
    const { stations } = jointOf(design, "S1", "S2R");
    for (const { foldRad } of stations) expect(Math.abs(foldRad)).toBeLessThan(1e-9);
  });

  it("two tunnels: the wall is flat, leans by 45° against the keel, and is as high as the roof stands above it", () => {
    const design = usualDesign("two-tunnels");
    const wall = partOf(design, "T1R");
    expect(wall.verdict).toBe("flat");
    expect(wall.twist?.maxTwistRad).toBeLessThan(1e-6);
    const entryMm = 35 + 600 * Math.tan(toRadians(4));
    const exitMm = 35 + 1100 * Math.tan(toRadians(8));
    expectMm(edgeOf(design, "T1R", "end").drawnLengthMm, entryMm * Math.SQRT2);
    expectMm(edgeOf(design, "T1R", "start").drawnLengthMm, exitMm * Math.SQRT2);
    const { stations } = jointOf(design, "S1", "T1R");
    for (const { foldRad } of stations) expect(Math.abs(foldRad)).toBeCloseTo(Math.PI / 4, 6);
  });

  it("two tunnels: the roof is two slopes less the bend's tangents, and the arc over the throat", () => {
    const [entryRad, exitRad] = [toRadians(4), toRadians(8)];
    const radiusMm = 900;
    const tangentMm = radiusMm * Math.tan((entryRad + exitRad) / 2);
    const slopesMm = 600 / Math.cos(entryRad) + 1100 / Math.cos(exitRad);
    const arcMm = (radiusMm - NEUTRAL_MM) * (entryRad + exitRad);
    const lengthMm = slopesMm - 2 * tangentMm + arcMm;
    expectMm(edgeOf(usualDesign("two-tunnels"), "S2R", "r4").flatLengthMm, lengthMm);
  });

  it("a front lip: the blade's ends are as long as its reach at its angle, and it does not twist", () => {
    const design = usualDesign("front-lip");
    expect(partOf(design, "T1R").twist?.maxTwistRad).toBeLessThan(1e-6);
    const lengthMm = 60 / Math.cos(toRadians(25));
    for (const edgeId of ["start", "end"]) expectMm(edgeOf(design, "T1R", edgeId).drawnLengthMm, lengthMm);
  });

  it("a front lip: its leading edge is set back for the blade straight across the centre line", () => {
    const { loops } = partOf(usualDesign("front-lip"), "S1");
    const leading = loops
      .flatMap(({ edges }) => edges.flatMap(({ points }) => points))
      .filter(({ u, v }) => Math.abs(v) < 100 && u < 200);
    expect(leading.length).toBeGreaterThan(2);
    const setBackMm = NEUTRAL_MM * Math.tan(toRadians(25) / 2);
    for (const { u } of leading) expectMm(u, 60 + setBackMm);
  });

  it("a practice piece: half flat, half at 12°, and the arc between at the neutral fibre", () => {
    const angleRad = toRadians(12);
    const tangentMm = 700 * Math.tan(angleRad / 2);
    const lengthMm = 295 - tangentMm + (700 - NEUTRAL_MM) * angleRad + 295 / Math.cos(angleRad) - tangentMm;
    const { loops } = partOf(usualDesign("practice-piece"), "S1");
    const us = loops.flatMap(({ edges }) => edges.flatMap(({ points }) => points.map(({ u }) => u)));
    expectMm(Math.max(...us) - Math.min(...us), lengthMm);
  });
});

function named(name: StarterName): Starter {
  const starter = starterOf(name);
  if (!starter) throw new Error(`no starter ${name}`);
  return starter;
}

const designs = new Map<StarterName, Design>();

function usualDesign(name: StarterName): Design {
  const design = designs.get(name) ?? designTray(made(named(name)));
  designs.set(name, design);
  return design;
}

function made(starter: Starter, typed: TypedNumbers = usualNumbers(starter)): Project {
  const result = starter.make(typed, START);
  if (!result.ok) throw new Error(result.problems.map(wordProblem).join(" "));
  return result.value;
}

const problemsOf = (design: Design): readonly string[] => design.problems.map(wordProblem);

const expectMm = (lengthMm: number, byHandMm: number): void =>
  expect(Math.abs(lengthMm - byHandMm), `${lengthMm} by hand ${byHandMm}`).toBeLessThan(SETTLED_MM);

function jointOf(design: Design, ...ids: readonly [string, string]) {
  const joint = design.joints.find(({ partIds }) => ids.every((id) => partIds.includes(id)));
  if (!joint) throw new Error(`no joint of ${ids.join(" and ")}`);
  return joint;
}

function partOf(design: Design, id: string) {
  const part = design.parts.find((each) => each.id === id);
  if (!part) throw new Error(`no part ${id} among ${design.parts.map((each) => each.id).join(", ")}`);
  return part;
}

function edgeOf(design: Design, partId: string, edgeId: string) {
  const { edges } = partOf(design, partId);
  const edge = edges.find((each) => each.edgeId === edgeId);
  if (!edge) throw new Error(`no edge ${edgeId} among ${edges.map((each) => each.edgeId).join(", ")}`);
  return edge;
}

/** Numbers of a starter anywhere in their ranges, ends often, each drawn in the range that those before leave it. */
const numbersOf = (starter: Starter): fc.Arbitrary<TypedNumbers> =>
  fc
    .array(fc.oneof(fc.constantFrom(0, 1), fc.double({ min: 0, max: 1, noNaN: true })), {
      minLength: starter.numbers.length,
      maxLength: starter.numbers.length,
    })
    .map((shares) => {
      const typed: Record<string, number> = {};
      for (const [index, number] of starter.numbers.entries()) {
        const { least, most } = number.range((name) => typed[name] ?? Number.NaN);
        typed[number.name] = least + (most - least) * (shares[index] ?? 0);
      }
      return typed;
    });
