import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { applyCommand, newFence } from "../../../core/project/index.ts";
import { crossSection } from "../../../web/board/cross-section.ts";
import { trayWithSection } from "../tools/bench-of-tools.ts";

/** Heights are exact on a flat sheet; the screen shows a tenth of a mm. */
const SCREEN_DIGITS = 3;

describe("the section at the hairline", () => {
  const tray = applyCommand(trayWithSection(), {
    kind: "add-fence",
    fence: {
      ...newFence({
        id: "f1",
        number: 1,
        name: "Fence",
        elements: [
          { kind: "node", id: "n1", x: 200, y: 250, next: "line" },
          { kind: "node", id: "n2", x: 800, y: 250, next: "line" },
        ],
      }),
      lowerEdge: {
        kind: "heights",
        nodes: [
          { kind: "node", id: "n1", x: 200, z: 20, next: "line" },
          { kind: "node", id: "n2", x: 800, z: 30, next: "line" },
        ],
      },
    },
  });
  const cut = crossSection(designTray(tray), 500);

  it("shows the air side where it is drawn and 10 mm of foam a skin's thickness inside it", () => {
    const right = cut.sheets.find((sheet) => sheet.hand === "right");
    expect(right?.air[0]?.[0]).toBeCloseTo(100, 1);
    expect(right?.air.at(-1)?.[0]).toBeCloseTo(400, 1);
    const skinMm = tray.skins.lowerMm;
    for (const [face, zMm] of [
      [right?.air, 60],
      [right?.coreLower, 60 + skinMm],
      [right?.coreUpper, 60 + skinMm + 10],
    ] as const) {
      for (const [, z] of face ?? []) expect(z).toBeCloseTo(zMm, SCREEN_DIGITS);
    }
  });

  it("shows the left hand as the mirror image", () => {
    const left = cut.sheets.find((sheet) => sheet.hand === "left");
    expect(left?.air[0]?.[0]).toBeCloseTo(-400, 1);
    expect(left?.air.at(-1)?.[0]).toBeCloseTo(-100, 1);
  });

  it("shows a fence of its foam's thickness from its lower edge up to the foam", () => {
    const right = cut.fences.find((fence) => fence.hand !== "left");
    const [a, b, c, d] = right?.corners ?? [];
    expect([a?.[0], b?.[0]]).toEqual([245, 255]);
    // The finished lower edge rises from 20 to 30 over the fence; its foam ends a skin above that.
    expect(right?.finishedZMm).toBeCloseTo(25, SCREEN_DIGITS);
    expect(a?.[1]).toBeCloseTo(25 + tray.skins.lowerMm, SCREEN_DIGITS);
    expect(c?.[1]).toBeCloseTo(60 + tray.skins.lowerMm, SCREEN_DIGITS);
    expect(d?.[1]).toBeCloseTo(60 + tray.skins.lowerMm, SCREEN_DIGITS);
  });

  it("shows nothing where the tray is not", () => {
    expect(crossSection(designTray(tray), 1200)).toEqual({ xMm: 1200, sheets: [], fences: [], metal: [] });
  });
});
