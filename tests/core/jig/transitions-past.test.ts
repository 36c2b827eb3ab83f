import { expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { wordProblem } from "../../../core/foundation/index.ts";
import { emptyProject, type Project, type TransitionEdge } from "../../../core/project/index.ts";
import { rectangle, section, straightProfile, transition, tray } from "../trays.ts";

const { jig: plainJig } = emptyProject({ id: "tray", title: "Tray", issuedOn: "2026-01-01" });

/** A transition of 10 mm foam between two edges with the same height over x, beside a level floor. */
function told(heights: readonly (readonly [x: number, z: number])[], jig: Partial<Project["jig"]> = {}) {
  const edge = (y: number): TransitionEdge => ({
    kind: "free",
    nodes: heights.map(([x, z], i) => ({ id: `e${i + 1}`, x, y, z, next: "curve" })),
  });
  const design = designTray({
    ...tray(
      { p: straightProfile(-100, 100, 1200, 100) },
      [section(1, rectangle(0, 1000, -300, 0)), transition(1, edge(20), edge(300))],
      { thicknessMm: 10 },
    ),
    jig: { ...plainJig, attitude: "upright", across: { kind: "spacing", spacingMm: 200 }, ...jig },
  });
  return design.problems.filter(({ kind }) => kind === "no-run-past");
}

const xs = Array.from({ length: 41 }, (_, i) => 25 * i);
/** Level, and at its rear end bent by R 2000 up to the edge, or 300 mm before it. */
const bentUpTo = (toX: number) =>
  xs.map((x): readonly [number, number] => {
    const inMm = Math.max(0, Math.min(x, toX) - (toX - 500));
    const slope = inMm / 2000;
    return [x, 100 + (2000 - Math.sqrt(2000 ** 2 - inMm ** 2)) + Math.max(0, x - toX) * Math.tan(slope)];
  });

it("a transition that bends up to its free end is named, with what holds it in place of foam past it", () => {
  const problems = told(bentUpTo(1000));
  expect(problems).toMatchObject([{ why: "transition", name: "Transition 1" }]);
  const [words] = problems.map(wordProblem);
  expect(words).toContain("set a rib across 25 mm inside that edge");
});

it("one that is straight before its ends is not, nor where nothing is to run past", () => {
  expect(told(bentUpTo(700))).toEqual([]);
  expect(told(bentUpTo(1000), { lie: { runPastMm: 0 } })).toEqual([]);
  expect(told(bentUpTo(1000), { across: { kind: "none" } })).toEqual([]);
});

it("one whose bent end a rib holds is not", () => {
  expect(told(bentUpTo(1000), { across: { kind: "automatic" } })).toEqual([]);
  expect(told(bentUpTo(1000), { across: { kind: "typed", atMm: [25, 500, 975] } })).toEqual([]);
  expect(told(bentUpTo(1000), { across: { kind: "typed", atMm: [25, 500, 900] } })).toHaveLength(1);
});
