import { describe, expect, it } from "vitest";
import { designTray, layOutCloth } from "../../../core/design.ts";
import { verifyLayout } from "../../../core/packing/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { clothPiece } from "../../../core/skins/cloth-pieces.ts";
import { readExample } from "../../read-example.ts";

const demo = readExample("hill-climb-floor");
const bias: Project = {
  ...demo,
  laminate: {
    lower: [
      { clothId: "glass-160", warpRad: Math.PI / 4 },
      { clothId: "glass-280", warpRad: 0 },
    ],
  },
};

describe("cloth on its rolls", () => {
  for (const [name, project] of Object.entries({ demo, bias })) {
    const design = layOutCloth(designTray(project));
    const patches = design.skins.faces.flatMap(({ fields }) =>
      fields.flatMap(({ side, patches: own }) => own.map((patch) => ({ side, patch }))),
    );

    it(`every patch of the ${name} lies on its roll once, warp along it, free of the others and of the selvedges`, () => {
      const laid = design.cloth.flatMap(({ lengths }) => lengths.flatMap(({ pieces }) => pieces));
      expect(laid.map(({ patchId }) => patchId).sort()).toEqual(patches.map(({ patch }) => patch.id).sort());
      for (const { clothId, widthMm, lengths } of design.cloth)
        for (const { lengthMm, pieces } of lengths) {
          const own = pieces.map(({ patchId }) => {
            const found = patches.find(({ patch }) => patch.id === patchId);
            if (found === undefined) throw new Error(patchId);
            expect(found.patch.clothId).toBe(clothId);
            return clothPiece(found.patch, found.side);
          });
          const faults = verifyLayout(
            {
              pieces: own,
              stock: { kind: "sheets", sizes: [{ id: "roll", lengthMm, widthMm, quantity: 1 }] },
              clearanceMm: 3,
              marginMm: 10,
            },
            {
              sheets: [{ sizeId: "roll", lengthMm, widthMm, usedMm: lengthMm }],
              placements: pieces.map(({ patchId: pieceId, angleRad, x, y }) => ({
                pieceId,
                sheet: 0,
                angleRad,
                x,
                y,
              })),
              unplaced: [],
            },
          );
          expect(faults).toEqual([]);
        }
    });

    it(`the roll of the ${name} is no shorter than its patches, and less than half of it is lost`, () => {
      for (const { clothId, widthMm, rollMm, wasteShare } of design.cloth) {
        const area = patches.reduce(
          (sum, { patch }) => (patch.clothId === clothId ? sum + patch.areaMm2 : sum),
          0,
        );
        expect(rollMm * widthMm).toBeGreaterThan(area);
        expect(wasteShare).toBeCloseTo(1 - area / (rollMm * widthMm), 9);
        expect(wasteShare).toBeLessThan(0.5);
      }
    });
  }

  it("is the same every time", () => {
    const design = designTray(demo);
    expect(layOutCloth(design).cloth).toEqual(layOutCloth(design).cloth);
  });

  it("a patch of the lower face is cut as it is seen from below, one of the upper face as from above", () => {
    const outlineMm = [
      { u: 0, v: 0 },
      { u: 300, v: 0 },
      { u: 300, v: 100 },
    ];
    const patch = { id: "p", fieldId: "f", partId: "S1", ply: 1, clothId: "c", holesMm: [], areaMm2: 15000 };
    const seen = (side: "lower face" | "upper face") =>
      clothPiece({ ...patch, warpRad: 0, outlineMm }, side).outline.map(({ x, y }) => [x, y + 0]);
    expect(seen("upper face")).toEqual([
      [0, 0],
      [300, 0],
      [300, 100],
    ]);
    expect(seen("lower face")).toEqual([
      [300, -100],
      [300, 0],
      [0, 0],
    ]);
    // Cut at 45 degrees: 300 mm along u come to lie slantwise, as far along the roll as across it.
    const [from, to] = clothPiece({ ...patch, warpRad: Math.PI / 4, outlineMm }, "upper face").outline;
    expect(to && from && to.x - from.x).toBeCloseTo(300 / Math.SQRT2, 9);
    expect(to && from && to.y - from.y).toBeCloseTo(-300 / Math.SQRT2, 9);
  });

  it("no strip cut on the bias is longer than its roll is wide times the root of two", () => {
    for (const { patch } of designTray(bias).skins.faces.flatMap(({ fields }) =>
      fields.flatMap(({ patches }) => patches.map((own) => ({ patch: own }))),
    )) {
      if (patch.clothId !== "glass-160") continue;
      const us = patch.outlineMm.map(({ u }) => u);
      expect(Math.max(...us) - Math.min(...us)).toBeLessThanOrEqual(1000 * Math.SQRT2);
    }
  });
});
