import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import type { Project } from "../../../core/project/index.ts";
import { shoppingList } from "../../../core/shopping/index.ts";
import { filletArcMm, filletMm2 } from "../../../core/skins/fillets.ts";
import { edgeWords } from "../../../core/skins/index.ts";
import { cornerRadiusMm, roundedOffMm } from "../../../core/skins/outside-corners.ts";
import { readExample } from "../../read-example.ts";

const demo = readExample("hill-climb-floor");
const withEdges = (laminate: Project["laminate"]) => designTray({ ...demo, laminate }).skins;

function never(): never {
  throw new Error("not there");
}

/** The area between two lines from a corner and the circle that touches both, by adding up thin slices across the bisector. */
function sliced(insideRad: number, radiusMm: number): number {
  const half = insideRad / 2;
  const centreMm = radiusMm / Math.sin(half);
  const touchMm = (radiusMm / Math.tan(half)) * Math.cos(half);
  const slices = 200_000;
  let area = 0;
  for (let i = 0; i < slices; i++) {
    const x = (touchMm * (i + 0.5)) / slices;
    const away = radiusMm ** 2 - (centreMm - x) ** 2;
    area += (2 * (x * Math.tan(half) - Math.sqrt(Math.max(0, away))) * touchMm) / slices;
  }
  return area;
}

describe("fillets", () => {
  it("at a right angle take r² (1 − π/4), and at any angle what slices across them add up to", () => {
    expect(filletMm2(Math.PI / 2, 10)).toBeCloseTo(100 * (1 - Math.PI / 4), 9);
    for (const degrees of [40, 75, 90, 110, 140])
      expect(filletMm2((degrees * Math.PI) / 180, 12) / sliced((degrees * Math.PI) / 180, 12)).toBeCloseTo(
        1,
        4,
      );
    expect(filletArcMm(Math.PI / 2, 10)).toBeCloseTo(5 * Math.PI, 9);
  });

  it("of the demo run along both sides of every fence: 21.5 mm² over its seat's length", () => {
    const { fillets, massKg, faces } = designTray(demo).skins;
    expect(fillets).toHaveLength(8);
    for (const { lengthMm, volumeMm3, between } of fillets) {
      expect(Math.abs(volumeMm3 / (lengthMm * 21.46) - 1)).toBeLessThan(0.02);
      expect(lengthMm).toBeGreaterThan(1200);
      expect(between).not.toBe("sheets");
    }
    expect(fillets.filter(({ between }) => between === "glued fence")).toHaveLength(4);
    const inCloth = faces.reduce((sum, face) => sum + face.massKg, 0);
    expect(massKg - inCloth).toBeCloseTo(
      fillets.reduce((sum, one) => sum + one.massKg, 0),
      12,
    );
    expect(withEdges({ filletMm: 0 }).fillets).toEqual([]);
  });
});

describe("outside corners", () => {
  it("rounded to 6 mm over a right angle lie 2.49 mm inside the drawn edge, over 20 degrees 0.09 mm", () => {
    expect(roundedOffMm(Math.PI / 2, 6)).toBeCloseTo(6 * (Math.SQRT2 - 1), 9);
    expect(roundedOffMm((20 * Math.PI) / 180, 6)).toBeCloseTo(0.0926, 4);
  });

  it("may be sharper where every ply crosses them on the bias", () => {
    const ply = (degrees: number) => ({
      cloth: { id: "c", name: "c", arealKgPerM2: 0.2, rollWidthMm: 1000, origins: {} },
      warpRad: (degrees * Math.PI) / 180,
    });
    expect(cornerRadiusMm(0, [ply(45), ply(-45)])).toBe(3.2);
    expect(cornerRadiusMm(0, [ply(45), ply(0)])).toBe(6);
    expect(cornerRadiusMm(Math.PI / 4, [ply(0), ply(90)])).toBe(3.2);
  });
});

describe("free edges", () => {
  const total = (skins: ReturnType<typeof withEdges>, face: string) =>
    skins.faces
      .filter((one) => one.face === face)
      .flatMap(({ fields }) => fields.flatMap(({ patches }) => patches))
      .reduce((sum, { areaMm2 }) => sum + areaMm2, 0);
  const lowerEdgesMm = designTray(demo)
    .parts.filter(({ kind }) => kind !== "fence")
    .flatMap(({ edges }) => edges.filter(({ role }) => role === "free"))
    .reduce((sum, { flatLengthMm }) => sum + flatLengthMm, 0);

  it("that are wrapped are closed by the face that is laid second: foam and 25 mm, the second ply 10 mm less", () => {
    const [wrapped, plain] = [withEdges({ edgeFinish: "wrapped" }), withEdges({ edgeFinish: "insert" })];
    expect(total(wrapped, "lower face")).toBeCloseTo(total(plain, "lower face"), 3);
    const more = total(wrapped, "upper face") - total(plain, "upper face");
    // Corners are cut out of it or shared: within a tenth.
    expect(Math.abs(more / (lowerEdgesMm * (35 + 25)) - 1)).toBeLessThan(0.1);
  });

  it("that get a flange run 20 mm out on both faces, and take foam away", () => {
    const [flange, plain] = [withEdges({ edgeFinish: "flange" }), withEdges({ edgeFinish: "insert" })];
    for (const face of ["lower face", "upper face"])
      expect(Math.abs((total(flange, face) - total(plain, face)) / (lowerEdgesMm * 40) - 1)).toBeLessThan(
        0.1,
      );
    const [edges] = flange.edges;
    const fenceEdgesMm = (edges?.lengthMm ?? 0) - lowerEdgesMm;
    // Of sheets 20 mm wide and 10 mm thick, and half of 30 by 10 behind it; of fences two wedges of 30 by 5.
    const expectedMm3 = lowerEdgesMm * (20 * 10 + (30 * 10) / 2) + fenceEdgesMm * ((30 * 5) / 2);
    expect(fenceEdgesMm).toBeGreaterThan(4 * 1200);
    expect((edges?.foamAwayMm3 ?? 0) / expectedMm3).toBeCloseTo(1, 2);
    expect(edgeWords(edges ?? never())).toContain("between waxed battens");
  });

  it("with a flange get it under the second face, once the tray has been turned over", () => {
    const titles = (skins: ReturnType<typeof withEdges>, face: string) =>
      skins.faces
        .filter((one) => one.face === face)
        .flatMap(({ sessions }) => sessions.map(({ steps }) => steps.map(({ title }) => title)));
    const [flange, wrapped] = [withEdges({ edgeFinish: "flange" }), withEdges({})];
    const isFlange = (title: string) => title.startsWith("Along flanges");
    // The demo is laid upside down: its lower face comes first.
    expect(demo.jig.attitude).toBe("inverted");
    expect(titles(flange, "upper face").map((own) => own.filter(isFlange).length)[0]).toBe(1);
    expect(titles(flange, "upper face").slice(1).flat().some(isFlange)).toBe(false);
    expect([...titles(flange, "lower face"), ...titles(wrapped, "upper face")].flat().some(isFlange)).toBe(
      false,
    );
  });

  it("with inserts weigh what the strips weigh, less their foam, and are glued in before the joints are faired", () => {
    const [plain, insert] = [{}, { edgeFinish: "insert", insertKgPerM3: 600 } as const].map((laminate) =>
      designTray({ ...demo, laminate }),
    );
    if (!plain || !insert) throw new Error();
    const foam = demo.materials.foams.find(({ id }) => id === demo.core.foamId)?.densityKgPerM3 ?? 0;
    for (const id of ["S1", "S3"]) {
      const of = (design: typeof plain) => ({
        part: design.parts.find((part) => part.id === id) ?? never(),
        weight: design.weight.parts.find(({ partId }) => partId === id) ?? never(),
      });
      const [before, after] = [of(plain), of(insert)];
      const stripM3 = (before.part.flatAreaMm2 - after.part.flatAreaMm2) * 10 * 1e-9;
      expect(after.weight.insertKg).toBeCloseTo(600 * stripM3, 6);
      expect(before.weight.foamKg - after.weight.foamKg).toBeCloseTo(foam * stripM3, 6);
      expect(before.weight.insertKg).toBe(0);
    }
    const tasks = insert.schedule?.tasks ?? [];
    const task = tasks.find(({ id }) => id === "inserts");
    const fairing = tasks.find(({ id }) => id === "fairing");
    const metres = insert.skins.edges.reduce((sum, { lengthMm }) => sum + lengthMm / 1000, 0);
    expect(Math.abs((task?.workMinutes ?? 0) - 15 * metres)).toBeLessThan(5);
    expect(fairing?.after.find(({ taskId }) => taskId === "inserts")?.waitMinutes).toBeGreaterThan(60);
    expect(plain.schedule?.tasks.some(({ id }) => id === "inserts")).toBe(false);
    const strip = shoppingList(insert).lines.find(({ key }) => key === "insert");
    expect(strip?.name).toBe("Strip for hard inserts, 10.0 × 20.0 mm");
    expect(strip?.unit).toBe("m");
    expect(strip?.needed).toBe(Math.ceil(1.1 * metres));
  });

  it("may have a finish of their own, on both hands", () => {
    const { edges } = withEdges({ edgeFinishes: [{ itemId: "s3", edgeId: "n2", finish: "trimmed" }] });
    expect(edges.map(({ finish }) => finish).sort()).toEqual(["trimmed", "wrapped"]);
    const front = edges.find(({ finish }) => finish === "trimmed")?.lengthMm ?? 0;
    expect(front).toBeGreaterThan(400);
    expect(front).toBeLessThan(460);
  });
});
