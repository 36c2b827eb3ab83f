import { describe, expect, it } from "vitest";
import { type Curve, pointOnPiece } from "../../../core/curves/index.ts";
import { designTray } from "../../../core/design.ts";
import { checkDocument, foamOf, type Project, resolveLines } from "../../../core/project/index.ts";
import { readExample } from "../../read-example.ts";

const floor = readExample("hill-climb-floor");
const practice = readExample("practice-piece");

function extentOf(curves: readonly Curve[]) {
  const points = curves.flatMap((curve) =>
    curve.pieces.flatMap((piece) => Array.from({ length: 51 }, (_, i) => pointOnPiece(piece, i / 50))),
  );
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return { fromX: Math.min(...xs), toX: Math.max(...xs), fromY: Math.min(...ys), toY: Math.max(...ys) };
}

const outlinesOf = (project: Project) => Object.values(resolveLines(project).plan);

describe.each([
  ["the hill-climb floor", floor],
  ["the practice piece", practice],
])("%s", (_title, project) => {
  it("has nothing wrong in what was typed and drawn", () => {
    expect(checkDocument(project)).toEqual([]);
    expect(resolveLines(project).problems).toEqual([]);
    expect(outlinesOf(project)).toHaveLength(project.items.length);
  });

  it("has stock of its foam and thickness, 1250 by 600", () => {
    expect(project.stock).toMatchObject([{ ...project.core, lengthMm: 1250, widthMm: 600 }]);
  });
});

describe("the hill-climb floor", () => {
  it("has a bend of each kind that can be made, and says of each tight one how it is made", () => {
    const { parts, problems } = designTray(floor);
    const verdicts = new Set(parts.flatMap(({ zones }) => zones.map(({ verdict }) => verdict)));
    expect([...verdicts].sort()).toEqual(["bend cold", "flat", "planks", "relief slots"]);
    expect(problems).toEqual([]);
  });

  it("bends no tighter than its foam does when nothing is chosen, but for its front lip", () => {
    const unchosen = floor.items.map((item) => (item.kind === "section" ? { ...item, bends: [] } : item));
    const told = designTray({ ...floor, items: unchosen }).problems;
    expect(told.map(({ kind, name }) => [kind, name])).toEqual([["bend-too-tight", "Front lip"]]);
  });

  it("has a lip 195 mm long before a floor of two metres, 1.4 m wide", () => {
    const { fromX, toX, toY } = extentOf(outlinesOf(floor));
    expect(toX - fromX).toBeCloseTo(2195, 6);
    expect(2 * toY).toBeGreaterThan(1380);
    expect(2 * toY).toBeLessThanOrEqual(1410);
  });

  it("has a step and a lip between its edges, a wheel arch, and a plate with a wing", () => {
    expect(Object.keys(resolveLines(floor).transitions)).toHaveLength(2);
    expect(Object.keys(resolveLines(floor).openings)).toHaveLength(1);
    const plates = floor.items.filter((item) => item.kind === "plate");
    expect(plates.map(({ wings }) => wings.length)).toEqual([1]);
  });

  it("has two fences a side, one of them curved", () => {
    const fences = floor.items.filter((item) => item.kind === "fence");
    expect(fences).toHaveLength(2);
    const isCurved = fences.map(({ line }) => line.elements.some(({ next }) => next === "curve"));
    expect(isCurved).toEqual([false, true]);
  });
});

describe("the practice piece", () => {
  it("bends no tighter than its foam bends cold", () => {
    const ratio = foamOf(practice, practice.core.foamId)?.leastBendRatio ?? Number.POSITIVE_INFINITY;
    const toNeutral = practice.skins.lowerMm + practice.core.thicknessMm / 2;
    const radii = practice.profiles.flatMap(({ nodes }) => nodes.flatMap(({ radiusMm }) => radiusMm ?? []));
    expect(radii.length).toBeGreaterThan(0);
    for (const radius of radii)
      expect(radius - toNeutral).toBeGreaterThanOrEqual(ratio * practice.core.thicknessMm);
  });

  it("is one whole section of about 600 by 300 on two ribs along it", () => {
    const { fromX, toX, fromY, toY } = extentOf(outlinesOf(practice));
    expect([toX - fromX, toY - fromY]).toEqual([590, 290]);
    expect(practice.symmetry).toBe("none");
    expect(practice.jig.along).toMatchObject({ kind: "typed", atMm: [60, 230] });
  });
});
