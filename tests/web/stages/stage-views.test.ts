import { describe, expect, it } from "vitest";
import type { SpaceShape } from "../../../core/book/index.ts";
import { parsePositions, wordPositions } from "../../../web/stages/jig/RibPlacesFields.tsx";
import { planBounds, planLines } from "../../../web/stages/plan/index.ts";
import { chosenPart } from "../../../web/stages/sheets/SheetsStage.tsx";
import { sampleDesign } from "../sample-design.ts";

describe("the part that Sheets shows", () => {
  it("is the chosen one, else one of the chosen item, else the first", () => {
    expect(chosenPart(sampleDesign, { kind: "part", partId: "S2L" })?.id).toBe("S2L");
    expect(chosenPart(sampleDesign, { kind: "item", itemId: "s2" })?.id).toBe("S2R");
    expect(chosenPart(sampleDesign, { kind: "part", partId: "gone" })?.id).toBe("S1");
    expect(chosenPart({ ...sampleDesign, parts: [] }, undefined)).toBeUndefined();
  });
});

describe("typed rib positions", () => {
  it("are read between semicolons or spaces, in mm or inches", () => {
    expect(parsePositions("0; 300,5;  600")).toEqual([0, 300.5, 600]);
    expect(parsePositions("")).toEqual([]);
    expect(parsePositions("100; x; 200")).toEqual([100, 200]);
  });

  it("are read back as they are shown", () => {
    const atMm = [-400, 0, 12.25];
    expect(parsePositions(wordPositions(atMm))).toEqual(atMm);
  });
});

describe("the tray from above", () => {
  const square = [
    { x: 0, y: 0, z: 5 },
    { x: 10, y: 0, z: 5 },
    { x: 10, y: 20, z: 5 },
  ];
  const shape: SpaceShape = { id: "S1", partId: "S1", kind: "section", hand: "right", loops: [square] };

  it("shows a sheet as its closed outline and an upright fence as one open line from front to rear", () => {
    expect(planLines(shape)[0]?.end).toBe("closed");
    const upright = [square[1], square[0], square[2]].filter((point) => point !== undefined);
    const fence: SpaceShape = { ...shape, kind: "fence", loops: [upright] };
    expect(planLines(fence)).toEqual([
      {
        spots: [
          [0, 0],
          [10, 0],
          [10, 20],
        ],
        end: "open",
      },
    ]);
  });

  it("is bounded by all shapes", () => {
    expect(planBounds([shape])).toEqual({ left: 0, right: 10, bottom: 0, top: 20 });
    expect(planBounds([])).toBeUndefined();
  });
});
