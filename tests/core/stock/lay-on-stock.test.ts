import { beforeAll, describe, expect, it } from "vitest";
import { type Design, designTray, layOutStock } from "../../../core/design.ts";
import { wordProblem } from "../../../core/foundation/index.ts";
import { packWithin, verifyLayout } from "../../../core/packing/index.ts";
import { applyCommand, type Project } from "../../../core/project/index.ts";
import { gatherGroups, lockedProblem, type StockGroup, toAccepted } from "../../../core/stock/index.ts";
import { readExample } from "../../read-example.ts";

const demo = readExample("hill-climb-floor");

const groupsOf = (design: Design): readonly StockGroup[] => gatherGroups(design, design.project);

/** The demo with a layout of its foam accepted. */
function withAccepted(project: Project): Project {
  const [foam] = groupsOf(designTray(project));
  if (foam === undefined) throw new Error("The demo is cut from foam.");
  const layout = packWithin(foam.problem, 3, { kind: "sweeps", sweeps: 8 });
  if (layout === undefined) throw new Error("Pieces laid in turn are a layout.");
  return { ...project, layouts: [toAccepted(foam, layout, project)] };
}

describe("a tray laid on stock by a run without a builder", () => {
  let design: Design;
  beforeAll(() => {
    design = layOutStock(designTray(demo));
  }, 60_000);

  it("has every strip and every rib exactly once, and nothing without a place", () => {
    const placed = design.stock.flatMap(({ sheets }) =>
      sheets.flatMap(({ pieces }) => pieces.map(({ pieceId }) => pieceId)),
    );
    const all = [...design.strips.map(({ id }) => id), ...design.jig.ribs.map(({ id }) => id)];
    expect(placed.toSorted()).toEqual(all.toSorted());
    expect(design.stock.flatMap(({ unplaced }) => unplaced)).toEqual([]);
    expect(design.stock.map(({ standing }) => standing)).toEqual(["laid here", "laid here"]);
  });

  it("is sound by the exact verdict, with the edge of the sheets and the clearance kept", () => {
    for (const group of groupsOf(design)) {
      const laid = design.stock.find(({ groupId }) => groupId === group.id);
      const layout = {
        sheets: (laid?.sheets ?? []).map((sheet) => ({ sizeId: sheet.stockId, ...sheet })),
        placements: (laid?.sheets ?? []).flatMap(({ pieces }, sheet) =>
          pieces.map((piece) => ({ ...piece, sheet })),
        ),
        unplaced: [],
      };
      expect(verifyLayout(group.problem, layout)).toEqual([]);
    }
  });

  it("adds up: pieces, waste and offcut make the sheets, and the pieces are as large as the lines to cut by", () => {
    for (const { figures, sheets } of design.stock) {
      const { sheetAreaMm2, pieceAreaMm2, offcutAreaMm2, wasteShare } = figures;
      const wasteMm2 = wasteShare * (sheetAreaMm2 - offcutAreaMm2);
      expect(pieceAreaMm2 + wasteMm2 + offcutAreaMm2).toBeCloseTo(sheetAreaMm2, 3);
      expect(sheetAreaMm2).toBe(sheets.reduce((sum, { lengthMm, widthMm }) => sum + lengthMm * widthMm, 0));
    }
    // Bevelled edges reach a little farther than mid-thickness.
    const foam = design.stock[0]?.figures.pieceAreaMm2 ?? 0;
    const strips = design.strips.reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
    expect(foam).toBeGreaterThanOrEqual(strips);
    expect(foam).toBeLessThan(strips * 1.02);
  });

  it("cuts around every piece once, after straight cuts that pass through none", () => {
    for (const { cuts, pieces } of design.stock.flatMap(({ sheets }) => sheets)) {
      const firstOutline = cuts.findIndex(({ kind }) => kind === "outline");
      expect(cuts.slice(firstOutline).every(({ kind }) => kind === "outline")).toBe(true);
      expect(cuts.length - firstOutline).toBe(pieces.length);
      for (const cut of cuts) {
        if (cut.kind === "outline") continue;
        const { from, to } = cut;
        for (const { linesMm } of pieces) {
          const points = linesMm
            .flat()
            .filter(({ x, y }) => (from.x === to.x ? y > from.y && y < to.y : x > from.x && x < to.x));
          const sides = points.map(({ x, y }) => (from.x === to.x ? x - from.x : y - from.y));
          expect(Math.min(...sides) >= -1e-9 || Math.max(...sides) <= 1e-9).toBe(true);
        }
      }
    }
  });

  it("is the same again", () => {
    expect(layOutStock(designTray(demo)).stock).toEqual(design.stock);
  });
});

describe("a layout that the builder accepted", () => {
  it("is used as it is, also by a run without a builder", () => {
    const project = withAccepted(demo);
    const [foam] = designTray(project).stock;
    expect(foam?.standing).toBe("accepted");
    expect(layOutStock(designTray(project)).stock[0]).toEqual(foam);
  });

  it("is out of date, and said to be, once a strip or a sheet changes; undone it holds again", () => {
    const project = withAccepted(demo);
    const wider = applyCommand(project, {
      kind: "change-settings",
      changes: { cutting: { ...project.cutting, trimMm: 3 } },
    });
    const design = designTray(wider);
    expect(design.stock[0]).toMatchObject({ standing: "out of date", sheets: [] });
    expect(design.problems.map(({ kind }) => kind)).toContain("layout-out-of-date");
    const again = applyCommand(wider, { kind: "change-settings", changes: { cutting: project.cutting } });
    expect(designTray(again).stock[0]?.standing).toBe("accepted");
  });

  it("names two pieces that were drawn over each other, and marks both, until they are apart again", () => {
    const project = withAccepted(demo);
    const [layout] = project.layouts;
    const [first, second] = layout?.pieces ?? [];
    if (!layout || !first || !second) throw new Error("Two pieces are laid.");
    const over = { ...second, sheet: first.sheet, angleRad: first.angleRad, x: first.x, y: first.y };
    const pieces = layout.pieces.map((piece) => (piece === second ? over : piece));
    const design = designTray({ ...project, layouts: [{ ...layout, pieces }] });
    const said = design.problems.filter(({ kind }) => kind === "pieces-collide").map(wordProblem);
    expect(said.join()).toContain(`${first.pieceId} and ${second.pieceId} lie over each other`);
    const wrong =
      design.stock[0]?.sheets.flatMap((sheet) => sheet.pieces.filter(({ isWrong }) => isWrong)) ?? [];
    expect(wrong.map(({ pieceId }) => pieceId)).toEqual(
      expect.arrayContaining([first.pieceId, second.pieceId]),
    );
    expect(designTray(project).problems.map(({ kind }) => kind)).not.toContain("pieces-collide");
  });

  it("names a piece that was drawn over the edge, and one that it leaves out", () => {
    const project = withAccepted(demo);
    const [layout] = project.layouts;
    const [first, ...others] = layout?.pieces ?? [];
    if (!layout || !first) throw new Error("A piece is laid.");
    const off = designTray({
      ...project,
      layouts: [{ ...layout, pieces: [{ ...first, x: -5000 }, ...others] }],
    });
    expect(off.problems.map(({ kind }) => kind)).toContain("piece-off-sheet");
    const left = designTray({ ...project, layouts: [{ ...layout, pieces: others }] });
    expect(left.problems.find(({ kind }) => kind === "piece-without-stock")?.name).toBe(first.pieceId);
  });

  it("holds its locked pieces where they lie in a new search", () => {
    const project = withAccepted(demo);
    const [layout] = project.layouts;
    if (!layout) throw new Error("A layout is accepted.");
    const [first, ...others] = layout.pieces;
    if (!first) throw new Error("A piece is laid.");
    const locked = {
      ...project,
      layouts: [{ ...layout, pieces: [{ ...first, locked: true as const }, ...others] }],
    };
    const [foam] = groupsOf(designTray(locked));
    if (!foam) throw new Error("The demo is cut from foam.");
    const found = packWithin(lockedProblem(foam, locked), 8, { kind: "sweeps", sweeps: 8 });
    expect(found?.placements.find(({ pieceId }) => pieceId === first.pieceId)).toEqual(first);
    expect(found && toAccepted(foam, found, locked).pieces.filter((piece) => piece.locked)).toHaveLength(1);
  });
});

describe("stock that does not suffice", () => {
  it("is a problem for each strip that has no place", () => {
    const stock = demo.stock.map((sheet) => ({ ...sheet, quantity: 2 }));
    const design = layOutStock(designTray({ ...demo, stock }));
    const left = design.stock[0]?.unplaced ?? [];
    expect(left.length).toBeGreaterThan(0);
    const named = design.problems
      .filter(({ kind }) => kind === "piece-without-stock")
      .map(({ name }) => name);
    expect(named).toEqual(left);
  });

  it("costs what its sheets cost", () => {
    const stock = demo.stock.map((sheet) => ({ ...sheet, priceEach: 20 }));
    const [foam] = layOutStock(designTray({ ...demo, stock })).stock;
    expect(foam?.figures.price).toBe(20 * (foam?.sheets.length ?? 0));
    expect(foam?.figures.wastePrice).toBeLessThan(foam?.figures.price ?? 0);
  });
});
