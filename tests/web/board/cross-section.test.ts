import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { applyCommand, newFence, newPlate, newTransition } from "../../../core/project/index.ts";
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

describe("a transition and a plate at the hairline", () => {
  const tray = applyCommand(
    applyCommand(trayWithSection(), {
      kind: "add-transition",
      transition: newTransition({
        id: "t1",
        number: 1,
        name: "Outward",
        first: { kind: "stretch", edge: { itemId: "s1", fromNodeId: "n3", toNodeId: "n4", hand: "right" } },
        second: {
          kind: "free",
          nodes: [
            { id: "n1", x: 0, y: 600, z: 100, next: "line" },
            { id: "n2", x: 1000, y: 600, z: 100, next: "line" },
          ],
        },
      }),
    }),
    {
      kind: "add-plate",
      plate: {
        ...newPlate({
          id: "pl1",
          number: 1,
          name: "Plate",
          closed: true,
          zMm: 30,
          elements: [
            { kind: "node", id: "n1", x: 200, y: 150, next: "line" },
            { kind: "node", id: "n2", x: 800, y: 150, next: "line" },
            { kind: "node", id: "n3", x: 800, y: 350, next: "line" },
            { kind: "node", id: "n4", x: 200, y: 350, next: "line" },
          ],
        }),
        wings: [
          {
            id: "w1",
            edgeId: "n3",
            angleRad: Math.PI / 2,
            insideRadiusMm: 3,
            lengthMm: 20,
            startInsetMm: 0,
            endInsetMm: 0,
            startTaperRad: 0,
            endTaperRad: 0,
          },
        ],
      },
    },
  );
  const cut = crossSection(designTray(tray), 500);

  it("a transition rises straight from the section's edge to its own", () => {
    const transition = cut.sheets.find((sheet) => sheet.itemId === "t1" && sheet.hand === "right");
    for (const [y, z] of transition?.air ?? [])
      expect(z).toBeCloseTo(60 + ((y - 400) / 200) * 40, SCREEN_DIGITS);
    expect(transition?.air[0]?.[0]).toBeCloseTo(400, 1);
    expect(transition?.air.at(-1)?.[0]).toBeCloseTo(600, 1);
  });

  it("a plate's base is a strip of metal at its height, and a wing stands on its edge, right and left", () => {
    const pieces = cut.metal.map(({ outline }) => ({
      lowest: Math.min(...outline.map(([, z]) => z)),
      highest: Math.max(...outline.map(([, z]) => z)),
      isLeft: outline.every(([y]) => y < 0),
    }));
    const base = pieces.find(({ lowest, highest }) => highest - lowest < 2);
    expect([base?.lowest, base?.highest]).toEqual([30, 31.5]);
    expect(Math.max(...pieces.map(({ highest }) => highest))).toBeCloseTo(30 + 20, SCREEN_DIGITS);
    expect(pieces.filter(({ isLeft }) => isLeft)).toHaveLength(pieces.length / 2);
  });
});
