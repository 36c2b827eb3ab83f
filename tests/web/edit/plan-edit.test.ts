import { describe, expect, it } from "vitest";
import { applyCommand, cuttingOf, readCutting, writeCutting } from "../../../core/project/index.ts";
import { countGrips } from "../../../web/edit/count-grips.ts";
import { planEdit } from "../../../web/edit/plan-edit.ts";
import { lengthsIn } from "../../../web/lengths/index.ts";
import { withFence } from "../../core/project/small-projects.ts";

const MM = lengthsIn("mm");
const fence = { line: { of: "item", itemId: "fence" } } as const;
const floor = { line: { of: "item", itemId: "one" } } as const;

describe("what is asked for in numbers", () => {
  it("a row of three more fences is drawn, and all four are chosen", () => {
    const planned = planEdit(withFence(), [fence], { kind: "repeat", count: 3, x: 0, y: 20 }, MM);
    if (!planned.ok) throw new Error(planned.words);
    const drawn = planned.commands.reduce(applyCommand, withFence());
    expect(drawn.items.filter(({ kind }) => kind === "fence")).toHaveLength(4);
    expect(planned.chosen).toHaveLength(4);
  });

  it("nothing goes left of the centre line of a mirrored tray", () => {
    const refusals = [
      planEdit(withFence(), [fence], { kind: "move", x: 0, y: -101, z: 0, profiles: "stay" }, MM),
      planEdit(withFence(), [fence], { kind: "repeat", count: 6, x: 0, y: -20 }, MM),
      planEdit(withFence(), [fence], { kind: "mirror", across: "lengthwise", atMm: 0, makes: "copy" }, MM),
      planEdit(withFence(), [fence], { kind: "parallel", distanceMm: -101, makes: "copy" }, MM),
    ];
    for (const refused of refusals) {
      expect(refused.ok).toBe(false);
      expect(!refused.ok && refused.words).toMatch(/centre line/);
    }
  });

  it("a move upward takes the profile along only where that is asked for", () => {
    const heights = (profiles: "stay" | "go along") => {
      const planned = planEdit(withFence(), [floor], { kind: "move", x: 0, y: 0, z: 12, profiles }, MM);
      return planned.ok && planned.commands.reduce(applyCommand, withFence()).profiles[0]?.nodes[0]?.z;
    };
    expect([heights("stay"), heights("go along")]).toEqual([50, 62]);
  });

  it("a parallel is of one outline; a row has a spacing; a size is over nothing", () => {
    const words = [
      planEdit(withFence(), [fence, floor], { kind: "parallel", distanceMm: 5, makes: "copy" }, MM),
      planEdit(withFence(), [fence], { kind: "repeat", count: 2, x: 0, y: 0 }, MM),
      planEdit(withFence(), [fence], { kind: "scale", percent: 0, x: 0, y: 0 }, MM),
    ].map((planned) => (planned.ok ? "" : planned.words));
    expect(words).toEqual([
      "Choose one outline or one fence to draw the parallel of.",
      "Type how far each stands from the last.",
      "Type a size over 0 %.",
    ]);
  });

  it("what is chosen is counted by kind", () => {
    const node = { line: fence.line, nodeId: "a" };
    expect(countGrips(withFence(), [fence, floor, node]).map(({ words }) => words)).toEqual([
      "1 section",
      "1 fence",
      "1 node",
    ]);
  });
});

describe("copied text", () => {
  it("holds the things that were copied", () => {
    const cutting = cuttingOf(withFence(), [fence, floor]);
    expect(readCutting(writeCutting(cutting))).toEqual({ ok: true, cutting });
  });

  it("of any other kind is refused in one plain sentence", () => {
    const messages = ["", "x,y\n1,2", "{", "[]", '{"format":"traywright"}'].map((text) => {
      const read = readCutting(text);
      return read.ok ? "" : read.message;
    });
    expect(new Set(messages.slice(1)).size).toBe(1);
    expect(messages[0]).toMatch(/Nothing has been copied/);
    expect(messages[1]).toMatch(/not part of a drawing/);
  });

  it("that is broken or of another version says so", () => {
    const text = writeCutting(cuttingOf(withFence(), [fence]));
    const broken = readCutting(text.replace('"fence"', '"fnece"'));
    expect(!broken.ok && broken.message).toMatch(/has faults/);
    const older = readCutting(text.replace(/"version":\d+/, '"version":1'));
    expect(!older.ok && older.message).toMatch(/another version/);
  });
});
