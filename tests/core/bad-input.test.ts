import { describe, expect, it } from "vitest";
import { type Design, designTray } from "../../core/design.ts";
import { type Problem, wordProblem } from "../../core/foundation/index.ts";
import { badCases, goodProject, manyNodes } from "./bad-projects.ts";

/** What takes longer on a busy machine hangs; how long it takes is measured in tests/bench. */
const NO_HANG_MS = 20_000;

const placesOf = ({ place }: Problem): readonly string[] =>
  Object.entries(place).flatMap(([key, value]) =>
    key === "setting" ? [String(value).split(/[.[]/)[0] ?? ""] : [value],
  );

/** What a builder needs of the good section, without what may be named after the other items. */
const goodPartsOf = (design: Design) =>
  design.parts
    .filter((part) => part.itemId === "good")
    .map(({ id, flatAreaMm2, spaceAreaMm2, loops, verdict }) => ({
      id,
      flatAreaMm2,
      spaceAreaMm2,
      loops,
      verdict,
    }));

describe("a bad sketch", () => {
  const reference = goodPartsOf(designTray(goodProject()));

  it("is measured against a good section that computes: a right and a left part", () => {
    expect(reference.map(({ id }) => id)).toEqual(["S1R", "S1L"]);
    expect(designTray(goodProject()).problems).toEqual([]);
  });

  it.each(badCases().map((bad) => [bad.title, bad] as const))(
    "%s is named, leads to the thing, and leaves the rest of the tray alone",
    (_title, bad) => {
      const design = designTray(bad.project);
      const named = design.problems.filter((problem) => bad.kinds.includes(problem.kind));
      expect(design.problems.map(({ kind }) => kind)).toEqual(expect.arrayContaining([...bad.kinds]));
      expect(named.flatMap(placesOf)).toContain(bad.leadsTo);
      for (const problem of design.problems) {
        expect(wordProblem(problem)).not.toMatch(/NaN|undefined|Infinity|\[object/);
      }
      expect(goodPartsOf(design)).toEqual(reference);
    },
    NO_HANG_MS,
  );

  it(
    "of 2,000 nodes is computed whole",
    () => {
      const design = designTray(manyNodes());
      expect(design.parts.map(({ id }) => id)).toEqual(["S1R", "S1L", "S2R", "S2L"]);
      expect(goodPartsOf(design)).toEqual(reference);
    },
    NO_HANG_MS,
  );
});
