import { describe, expect, it } from "vitest";
import { applyCommand, type Command, type Project } from "../../../core/project/index.ts";
import { lengthsIn } from "../../../web/lengths/index.ts";
import { type Comb, combsOf, type Selection, wordComb } from "../../../web/tools/index.ts";
import { contextOf, trayWithSection, workWith } from "./bench-of-tools.ts";

const PROFILE = { of: "profile", profileId: "p1" } as const;
const FLOOR: Selection = { kind: "item", itemId: "s1" };

/** The flat profile with a third node at 500, so that it rises behind. */
function rising(changes: Extract<Command, { kind: "change-node" }>["changes"]): Project {
  const commands: readonly Command[] = [
    { kind: "split-segment", line: PROFILE, afterNodeId: "n1", t: 0.5, newNodeId: "m" },
    { kind: "move-node", line: PROFILE, nodeId: "n2", to: [1100, 160] },
    { kind: "change-node", line: PROFILE, nodeId: "m", changes },
  ];
  return commands.reduce(applyCommand, trayWithSection());
}

function combOf(project: Project): Comb {
  const [comb] = combsOf(contextOf(workWith("select", project, FLOOR)), 10);
  if (!comb) throw new Error("no comb");
  return comb;
}

describe("the comb of a chosen section", () => {
  it("is that of the profile that it bends over; a straight one has none", () => {
    expect(combsOf(contextOf(workWith("select", trayWithSection(), FLOOR)), 10)).toEqual([]);
    expect(combOf(rising({ radiusMm: 900 })).view).toBe("side");
  });

  it("a rounded corner's least radius is its own, and bends cold where the foam allows it", () => {
    const comb = combOf(rising({ radiusMm: 900 }));
    expect(comb.tightest?.radiusMm).toBeCloseTo(900, 9);
    expect(comb.kinks).toEqual([]);
    expect(wordComb(comb, lengthsIn("mm"))).toMatch(
      /least radius 900\.0 mm\. .*bends cold down to .*: it bends\. No kink\.$/,
    );
  });

  it("tighter than the foam allows it says so", () => {
    expect(wordComb(combOf(rising({ radiusMm: 90 })), lengthsIn("mm"))).toContain("Tighter than its foam");
  });

  it("a curve that starts off its line's direction has a kink, told by place and angle", () => {
    const comb = combOf(rising({ next: "curve", meets: "corner", tangentOutRad: 0.2 }));
    expect(comb.kinks).toEqual([{ at: [500, 60], turnRad: expect.closeTo(0.2, 9) }]);
    expect(wordComb(comb, lengthsIn("mm"))).toContain("A kink at x 500.0, by 11.5°.");
    expect(combOf(rising({ next: "curve", meets: "smooth" })).kinks).toEqual([]);
  });
});
