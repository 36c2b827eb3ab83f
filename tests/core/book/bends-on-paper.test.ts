import { describe, expect, it } from "vitest";
import { drawBook } from "../../../core/book/index.ts";
import { designTray } from "../../../core/design.ts";
import type { BendMethod } from "../../../core/project/index.ts";
import { readFonts } from "../../read-fonts.ts";
import { arcProfile, rectangle, section, tray } from "../trays.ts";

const fonts = readFonts();

/** The words of every sheet of the book of a tray with one bend, by the sheets' titles. */
function wordsOf(method: BendMethod): readonly string[] {
  const project = tray(
    { p: arcProfile([0, 100], 1000, 0.4, 1) },
    [section(1, rectangle(0, 380, 0, 300), { bends: [{ atMm: 200, method }] })],
    { drawnFace: "neutral", leastBendRatio: 40 },
  );
  return drawBook(designTray(project), fonts).pages.map(({ marks }) =>
    marks.flatMap((mark) => (mark.kind === "text" ? [mark.text] : [])).join(" "),
  );
}

describe("the book of a tray with a bend", () => {
  it("has a page to try slots on scrap where a sheet is slotted, with the angle that they close by", () => {
    const [trial] = wordsOf("closing slots").filter((words) => words.includes("Trial of three relief slots"));
    // Three slots, 3 mm wide and 17 deep: 3 × 10.085°; two degrees more mean a kerf of 34 tan(32.255° / 6).
    expect(trial).toContain("30.3°");
    expect(trial).toContain("3.20");
    expect(trial).toContain("Saw: goggles");
    expect(wordsOf("bend cold").some((words) => words.includes("Trial of three"))).toBe(false);
  });

  it("tells on the jig page what holds a cold bend down, and nothing of a slotted one", () => {
    const isTold = (method: BendMethod) =>
      wordsOf(method).some((words) => words.includes("Holding the bends down"));
    expect(isTold("bend cold")).toBe(true);
    expect(isTold("closing slots")).toBe(false);
  });
});
