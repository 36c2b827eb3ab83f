import { FillRule, intersectD } from "clipper2-ts";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Design, designTray } from "../../../core/design.ts";
import type { Panel } from "../../../core/panels/index.ts";
import type { Fence, Project } from "../../../core/project/index.ts";
import { panelFence, panelTray } from "./panel-trays.ts";

const cloth = { id: "c", name: "Glass 200", arealKgPerM2: 0.2, rollWidthMm: 1000, origins: {} };
const ply = { clothId: "c", warpRad: 0 };
const settings = {
  fibreMassShare: 0.5,
  preWetKgPerM2: 0.1,
  peelPlyKgPerM2: 0.05,
  wasteShare: 0.15,
  hardenerPer100: 30,
};

/** A tray whose panels have two plies of 200 g/m² at half fibre by mass on each face. */
function made(fences: readonly Fence[], changes: Partial<Project> = {}) {
  const project = panelTray(fences);
  return designTray({
    ...project,
    materials: { ...project.materials, cloths: [cloth] },
    laminate: { ...settings, lower: [ply, ply] },
    ...changes,
  });
}

const kinds = ({ problems }: Design) => problems.map(({ kind }) => kind);
const partOf = ({ parts }: Design, id: string) => {
  const part = parts.find((one) => one.id === id);
  if (part === undefined) throw new Error(id);
  return part;
};
/** t = W (1/2550 + 1/1150) for a ply at half fibre by mass, from kg/m² to mm. */
const skinMm = 2 * 0.2 * 1000 * (1 / 2550 + 1 / 1150);
const shoelace = (loop: readonly { readonly x: number; readonly y: number }[]) =>
  Math.abs(
    loop.reduce((sum, a, i) => {
      const b = loop[(i + 1) % loop.length] ?? a;
      return sum + (a.x * b.y - b.x * a.y) / 2;
    }, 0),
  );

describe("a fence that is cut from a panel", () => {
  it("is as thick as foam and both skins, and its bevel on a leaning sheet follows that", () => {
    const project = panelTray([panelFence(1, 300)]);
    const leaning = project.items.map((item) => (item.kind === "section" ? { ...item, tiltRad: 0.1 } : item));
    const design = made([], { items: leaning });
    const part = partOf(design, "F1");
    expect(part.thicknessMm).toBeCloseTo(10 + 2 * skinMm, 9);
    for (const { leftZMm, rightZMm } of part.seat)
      expect(leftZMm - rightZMm).toBeCloseTo((10 + 2 * skinMm) * Math.tan(0.1), 6);
  });

  it("ends at the drawn lower edge, where skin would wrap one that is skinned in place", () => {
    const { panel: _, ...inPlace } = panelFence(2, 400);
    const design = made([panelFence(1, 300), inPlace]);
    const heightOf = (id: string) => {
      const [loop] = partOf(design, id).loops;
      const vs = loop?.edges.flatMap(({ points }) => points.map(({ v }) => v)) ?? [];
      return Math.max(...vs) - Math.min(...vs);
    };
    expect(heightOf("F1")).toBeCloseTo(60, 6);
    expect(heightOf("F2")).toBeCloseTo(60 - 0.8, 6);
  });

  it("has no trim left on it, and others have", () => {
    const { panel: _, ...inPlace } = panelFence(2, 400);
    const project = panelTray([]);
    const design = made([panelFence(1, 300), inPlace], {
      cutting: { ...project.cutting, trimMm: 7, kerfMm: 0 },
    });
    const widthOf = (id: string) => {
      const [line = []] = design.strips.find(({ partId }) => partId === id)?.cutLinesMm ?? [];
      return Math.max(...line.map(({ u }) => u)) - Math.min(...line.map(({ u }) => u));
    };
    expect(widthOf("F1")).toBeCloseTo(800, 6);
    expect(widthOf("F2")).toBeCloseTo(814, 6);
  });

  it("opens the ribs of the cradle by its own thickness and 3 mm, one skinned in place by its skins besides", () => {
    const { panel: _, ...inPlace } = panelFence(2, 400);
    const jig = panelTray([]).jig;
    const cradled = { ...jig, attitude: "inverted", making: { cradle: { paddingMm: 3 } } } as const;
    const design = made([panelFence(1, 200), inPlace], { jig: cradled });
    const ribs = design.jig.cradle?.ribs ?? [];
    const widths = (id: string) =>
      ribs.flatMap(({ notches }) =>
        notches.filter(({ fencePartId }) => fencePartId === id).map(({ fromMm, toMm }) => toMm - fromMm),
      );
    expect(widths("F1").length).toBeGreaterThan(1);
    for (const width of widths("F1")) expect(width).toBeCloseTo(10 + 2 * skinMm + 3, 6);
    for (const width of widths("F2")) expect(width).toBeCloseTo(10 + 2 * 0.8 + 3, 6);
  });

  it("takes the thickness that was measured, and says which notches no longer take it", () => {
    const jig = panelTray([]).jig;
    const cradled = { ...jig, attitude: "inverted", making: { cradle: { paddingMm: 3 } } } as const;
    const measured = (measuredMm: number) =>
      made([panelFence(1, 200, { panel: { measuredMm } })], { jig: cradled });
    const thick = measured(14);
    expect(partOf(thick, "F1").thicknessMm).toBe(14);
    const problem = thick.problems.find(({ kind }) => kind === "panel-off-thickness");
    const notched = thick.jig.cradle?.ribs.filter(({ notches }) => notches.length > 0).map(({ id }) => id);
    expect(notched?.length).toBeGreaterThan(1);
    expect(problem).toMatchObject({ measuredMm: 14, ribIds: notched });
    expect(kinds(measured(12))).not.toContain("panel-off-thickness");
    const absurd = measured(3);
    expect(kinds(absurd)).toContain("number-out-of-range");
    expect(partOf(absurd, "F1").thicknessMm).toBeCloseTo(10 + 2 * skinMm, 9);
  });
});

/** Every piece of a panel inside its trimmed edges, and none over another, by clipper2-ts. */
function expectSound({ lengthMm, widthMm, edgeMm, pieces }: Panel) {
  for (const [i, { linesMm }] of pieces.entries()) {
    for (const { x, y } of linesMm.flat()) {
      expect(x).toBeGreaterThanOrEqual(edgeMm - 0.3);
      expect(x).toBeLessThanOrEqual(lengthMm - edgeMm + 0.3);
      expect(y).toBeGreaterThanOrEqual(edgeMm - 0.3);
      expect(y).toBeLessThanOrEqual(widthMm - edgeMm + 0.3);
    }
    for (const other of pieces.slice(i + 1)) {
      const common = intersectD(
        linesMm.map((loop) => [...loop]),
        other.linesMm.map((loop) => [...loop]),
        FillRule.EvenOdd,
        5,
      );
      expect(common.reduce((sum, loop) => sum + shoelace(loop), 0)).toBeLessThan(0.01);
    }
  }
}

describe("panels", () => {
  it("have every fence of the tray either on them or skinned in place, exactly once", () => {
    const choice = fc.record({
      isPanel: fc.boolean(),
      seat: fc.constantFrom("core" as const, "skin" as const),
      bowMm: fc.constantFrom(0, 0, 12),
      depthMm: fc.integer({ min: 20, max: 110 }),
      foamMm: fc.constantFrom(10, 10, 20),
    });
    fc.assert(
      fc.property(fc.array(choice, { minLength: 1, maxLength: 5 }), (choices) => {
        const fences = choices.map(({ isPanel, seat, bowMm, depthMm, foamMm }, i): Fence => {
          const y = 80 + 100 * i;
          const { panel, ...bare } = panelFence(i + 1, y, {
            seat,
            lowerEdge: { kind: "depths", nodes: [{ id: "d", alongMm: 0, depthMm }] },
            line: {
              closed: false,
              elements: [
                { kind: "node", id: "a", x: 100, y, next: "curve" },
                { kind: "node", id: "b", x: 500, y: y + bowMm, meets: "smooth", next: "curve" },
                { kind: "node", id: "c", x: 900, y, next: "line" },
              ],
            },
            core: { foamId: "xps", thicknessMm: foamMm },
          });
          return isPanel && panel ? { ...bare, panel } : bare;
        });
        const stock = [10, 20].map((thicknessMm) => ({
          ...{ id: `s${thicknessMm}`, foamId: "xps", thicknessMm, lengthMm: 1250, widthMm: 600 },
        }));
        const design = made(fences, { stock });
        const onPanels = design.panels.panels.flatMap(({ pieces }) => pieces.map(({ partId }) => partId));
        const inPlace = design.skins.faces.find(({ face }) => face === "fence sides")?.partIds ?? [];
        const all = fences.map(({ number }) => `F${number}`);
        expect([...onPanels, ...inPlace].sort()).toEqual(all);
        const wanted = choices.flatMap(({ isPanel, seat, bowMm }, i) =>
          isPanel && seat === "skin" && bowMm === 0 ? [`F${i + 1}`] : [],
        );
        expect(onPanels.toSorted()).toEqual(wanted);
        expect(design.panels.bonds.map(({ partId }) => partId).sort()).toEqual(wanted);
        const glued = design.glueUp.flatMap(({ joins }) => joins);
        for (const { id, partIds } of design.joints)
          expect(glued.includes(id)).toBe(!onPanels.includes(partIds[0]));
        const barred = design.problems.filter(({ kind }) => kind === "panel-not-possible").length;
        expect(barred).toBe(choices.filter(({ isPanel }) => isPanel).length - wanted.length);
        for (const panel of design.panels.panels) expectSound(panel);
      }),
      { seed: 11, numRuns: 12 },
    );
  });

  it("weigh 2 (W/f + uptake) of skin a square metre, and mix what their peel ply and waste take besides", () => {
    const [panel] = made([panelFence(1, 200), panelFence(2, 300)]).panels.panels;
    if (panel === undefined) throw new Error("no panel");
    const m2 = (panel.lengthMm * panel.widthMm) / 1e6;
    // Two plies of 200 g/m² with as much resin, 100 g/m² drunk, 50 g/m² into the peel ply, 15 % of the mix lost.
    expect(panel.skinKg).toBeCloseTo(2 * m2 * (0.8 + 0.1), 9);
    expect(panel.mixedKg).toBeCloseTo((2 * m2 * (0.4 + 0.1 + 0.05)) / 0.85, 9);
    expect(panel.foamKg).toBeCloseTo(m2 * 0.01 * 32, 9);
    expect(panel.cloths).toEqual([
      { clothId: "c", name: "Glass 200", areaMm2: 4 * panel.lengthMm * panel.widthMm },
    ]);
    const mixed = panel.faces
      .flatMap(({ cards }) => cards)
      .reduce((sum, one) => sum + one.count * one.mixedKg, 0);
    expect(mixed).toBeCloseTo(panel.mixedKg, 9);
    expect(panel.pieceMm2).toBeCloseTo(2 * 800 * 60, 3);
    expect(panel.lengthMm).toBe(830);
    expect(panel.widthMm).toBe(60 + 60 + 6 + 30);
  });

  it("weigh 3.40 kg/m² with 10 mm of 80 kg/m³ and two plies of 300 g/m² a face, as the worked sum has it", () => {
    const project = panelTray([]);
    const [panel] = made([panelFence(1, 200)], {
      materials: {
        ...project.materials,
        cloths: [{ ...cloth, arealKgPerM2: 0.3 }],
        foams: project.materials.foams.map((foam) => ({ ...foam, densityKgPerM3: 80 })),
      },
    }).panels.panels;
    if (panel === undefined) throw new Error("no panel");
    const m2 = (panel.lengthMm * panel.widthMm) / 1e6;
    expect((panel.skinKg + panel.foamKg) / m2).toBeCloseTo(3.4, 9);
  });

  it("are laid with a lap at each seam where the roll is narrower than they are across its warp", () => {
    const narrow = { ...cloth, rollWidthMm: 120 };
    const project = panelTray([]);
    const materials = { ...project.materials, cloths: [narrow] };
    const [panel] = made([panelFence(1, 200), panelFence(2, 300)], { materials }).panels.panels;
    if (panel === undefined) throw new Error("no panel");
    // 100 mm of the roll are used and 50 mm lap: 156 mm take three strips, 50 mm + 50 mm + 56 mm wide without laps.
    const each = panel.lengthMm * panel.widthMm + 2 * 50 * panel.lengthMm;
    expect(panel.cloths[0]?.areaMm2).toBeCloseTo(4 * each, 3);
  });

  it("are no larger than can be laid while the resin is worked; one that alone takes longer is said", () => {
    const fences = [1, 2, 3, 4, 5].map((number) => panelFence(number, 90 * number));
    const project = panelTray([]);
    const resins = project.materials.resins.map((resin) => ({ ...resin, filmMinutes: 8 }));
    const quick = made(fences, { materials: { ...project.materials, cloths: [cloth], resins } });
    expect(made(fences).panels.panels).toHaveLength(1);
    expect(quick.panels.panels.length).toBeGreaterThan(1);
    const limit = quick.panels.panels.flatMap(({ faces }) => faces.map(({ workMinutes }) => workMinutes));
    // 60 % of the film's time, which at 20 °C is longer than at the 25 °C or 22 °C of its data sheet.
    for (const minutes of limit) expect(minutes).toBeLessThan(0.6 * 8 * 2);
    const hasty = project.materials.resins.map((resin) => ({ ...resin, filmMinutes: 1 }));
    expect(
      kinds(made(fences, { materials: { ...project.materials, cloths: [cloth], resins: hasty } })),
    ).toContain("panel-outlasts-film");
  });
});

describe("a tray with a panel", () => {
  it("weighs its parts and what holds them together, and balances where they lie", () => {
    const { weight, panels } = made([panelFence(1, 200)]);
    const fence = weight.parts.find(({ partId }) => partId === "F1");
    // Foam 0.8 × 0.06 m × 10 mm of 32 kg/m³; two skins of 0.9 kg/m².
    expect(fence?.foamKg).toBeCloseTo(0.8 * 0.06 * 0.01 * 32, 6);
    expect(fence?.skinKg.likely).toBeCloseTo(2 * 0.8 * 0.06 * 0.9, 6);
    expect(fence?.centre.z).toBeCloseTo(120 - 30, 3);
    const [bond] = panels.bonds;
    if (bond === undefined) throw new Error("no bond");
    // 0.35 kg/m² under the edge; fillets r² (1 − π/4) of 800 kg/m³ on both sides; tape of a quarter round and two legs of 50 mm.
    expect(bond.resinKg).toBeCloseTo(0.8 * ((10 + 2 * skinMm) / 1000) * 0.35, 9);
    expect(bond.filletKg).toBeCloseTo(2 * 0.8 * 1e-4 * (1 - Math.PI / 4) * 800, 6);
    expect(bond.tapeKg).toBeCloseTo(2 * 0.8 * (0.01 * (Math.PI / 2) + 0.1) * 0.4, 6);
    // The sheet is glued from two strips: that seam is all there is besides.
    const seamKg = weight.otherKg - bond.resinKg - bond.filletKg - bond.tapeKg;
    expect(seamKg).toBeGreaterThan(0);
    expect(seamKg).toBeLessThan(0.005);
    const total = weight.parts.reduce((sum, { massKg }) => sum + massKg.likely, weight.otherKg);
    expect(weight.massKg.likely).toBeCloseTo(total, 9);
  });

  it("has its foam among the sheets to buy, once, and not in the glue", () => {
    const { totals, stock, panels } = made([panelFence(1, 200)]);
    const without = made([]);
    const [panel] = panels.panels;
    if (panel === undefined) throw new Error("no panel");
    const more = (totals.stock[0]?.areaMm2 ?? 0) - (without.totals.stock[0]?.areaMm2 ?? 0);
    expect(more).toBeCloseTo(panel.lengthMm * panel.widthMm, 3);
    expect(totals.glueMassKg).toBeCloseTo(without.totals.glueMassKg, 12);
    expect(stock[0]?.pieceIds.filter((id) => id === panel.id)).toHaveLength(1);
    expect(stock[0]?.pieceIds).not.toContain("F1");
  });

  it("laminates it while the tray is glued, and bonds the fence on when the lower skin has cured", () => {
    const { schedule } = made([panelFence(1, 200)]);
    const task = (id: string) => {
      const found = schedule.tasks.find((one) => one.id === id);
      if (found === undefined) throw new Error(id);
      return found;
    };
    const startOf = (id: string) => task(id).stints[0]?.fromMinute ?? 0;
    expect(task("panel A first face").after).toEqual([{ taskId: "templates", waitMinutes: 0 }]);
    expect(startOf("panel A second face")).toBeGreaterThanOrEqual(task("panel A first face").curedAtMinute);
    expect(startOf("panel A cut")).toBeGreaterThanOrEqual(task("panel A second face").curedAtMinute);
    expect(startOf("panel bond")).toBeGreaterThanOrEqual(task("panel A cut").curedAtMinute);
    expect(startOf("panel bond")).toBeGreaterThanOrEqual(task("skin lower face 1").curedAtMinute);
    expect(startOf("trim")).toBeGreaterThanOrEqual(task("panel bond").curedAtMinute);
  });
});

describe("a fence that cannot be cut from a panel is named with the reason, and skinned in place", () => {
  const why = (fence: Fence, changes: Partial<Project> = {}) => {
    const design = made([fence], changes);
    expect(design.panels.panels).toEqual([]);
    expect(partOf(design, "F1").thicknessMm).toBe(10);
    return design.problems.flatMap((one) => (one.kind === "panel-not-possible" ? [one.bar] : []));
  };

  it("where it sits on the foam, is curved, or has no ply", () => {
    expect(why(panelFence(1, 200, { seat: "core" }))).toEqual([{ why: "seat" }]);
    expect(
      why(
        panelFence(1, 200, {
          line: {
            closed: false,
            elements: [
              { kind: "node", id: "a", x: 100, y: 200, next: "curve" },
              { kind: "node", id: "b", x: 500, y: 230, meets: "smooth", next: "curve" },
              { kind: "node", id: "c", x: 900, y: 200, next: "line" },
            ],
          },
        }),
      ),
    ).toEqual([{ why: "curve", offMm: expect.closeTo(30, 0) }]);
    expect(why(panelFence(1, 200, { panel: { plies: [] } }))).toEqual([{ why: "cloth" }]);
  });

  it("keeps its other plies where the cloth of one is not there", () => {
    const design = made([panelFence(1, 200, { panel: { plies: [ply, { clothId: "gone", warpRad: 0 }] } })]);
    expect(design.panels.panels[0]?.plies).toHaveLength(1);
    expect(design.problems).toContainEqual(
      expect.objectContaining({ kind: "unknown-reference", missingId: "gone" }),
    );
  });

  it("where no foam sheet is as thick, or as long with its trimmed edges", () => {
    const sheet = { id: "s", foamId: "xps", thicknessMm: 10, lengthMm: 1250, widthMm: 600 };
    expect(why(panelFence(1, 200), { stock: [{ ...sheet, thicknessMm: 20 }] })).toEqual([
      { why: "stock", foamMm: 10 },
    ]);
    const cutting = { ...panelTray([]).cutting, stockEdgeMm: 5, kerfMm: 0 };
    expect(why(panelFence(1, 200), { cutting, stock: [{ ...sheet, lengthMm: 839 }] })).toEqual([
      expect.objectContaining({ why: "size", longestMm: 799 }),
    ]);
    const just = made([panelFence(1, 200)], { cutting, stock: [{ ...sheet, lengthMm: 840.5 }] });
    expect(just.panels.panels).toHaveLength(1);
  });
});
