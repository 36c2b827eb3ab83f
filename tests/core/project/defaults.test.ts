import { describe, expect, it } from "vitest";
import {
  checkDocument,
  coreOf,
  emptyProject,
  foamOf,
  glueOf,
  newFence,
  readProject,
  resolveLines,
  ribBoardOf,
  soundProject,
  writeProject,
} from "../../../core/project/index.ts";
import { oneSection, plan, rectangle } from "./small-projects.ts";

const empty = emptyProject({ id: "empty", title: "Empty", issuedOn: "2026-01-01" });

describe("an empty project", () => {
  it("is a valid file, complains of nothing but that nothing is drawn, and computes with itself", () => {
    expect(readProject(writeProject(empty)).ok).toBe(true);
    expect(checkDocument(empty).map(({ kind }) => kind)).toEqual(["nothing-drawn"]);
    expect(soundProject(empty)).toEqual(empty);
    expect(resolveLines(empty).problems).toEqual([]);
  });

  it("finds the foam, the glue and the board that it names", () => {
    expect(foamOf(empty, empty.core.foamId)?.name).toBe("XPS board");
    expect(glueOf(empty)?.hazard).toBe("isocyanate");
    expect(ribBoardOf(empty)?.thicknessMm).toBe(12);
    expect(foamOf(empty, "balsa")).toBeUndefined();
  });

  it("has stock for its foam", () => {
    expect(empty.stock).toContainEqual({ id: "stock-1", ...empty.core, lengthMm: 1250, widthMm: 600 });
  });

  it("says where every figure of a material comes from", () => {
    const { foams, cloths, resins, glues, boards } = empty.materials;
    for (const material of [...foams, ...cloths, ...resins, ...glues, ...boards]) {
      const figures = Object.entries(material).filter(([, value]) => typeof value === "number");
      expect(Object.keys(material.origins)).toEqual(expect.arrayContaining(figures.map(([key]) => key)));
    }
  });

  it("lets a hot wire near polystyrene only", () => {
    // Source: OSHA hazard bulletin 1989-05-10 for polyurethane (PUBLISHED); PVC PUBLISHED-weak; PET common practice.
    const hot = empty.materials.foams.filter((foam) => foam.hotWire === "allowed");
    expect(hot.map(({ id }) => id)).toEqual(["xps"]);
  });
});

describe("a sheet's foam", () => {
  it("is the tray's unless it names its own", () => {
    const project = oneSection(rectangle(0, 1000, 0, 200));
    const [section] = project.items;
    if (!section) throw new Error("no section");
    expect(coreOf(project, section)).toEqual({ foamId: "xps", thicknessMm: 10 });
    const thick = { ...section, core: { foamId: "pvc-80", thicknessMm: 20 } };
    expect(coreOf(project, thick)).toEqual({ foamId: "pvc-80", thicknessMm: 20 });
  });
});

it("a new fence is 40 mm deep over the length of its line", () => {
  const fence = newFence({ id: "f", number: 1, name: "", elements: [plan("a", 0, 0), plan("b", 300, 400)] });
  expect(fence.lowerEdge).toEqual({
    kind: "depths",
    nodes: [
      { id: "d1", alongMm: 0, depthMm: 40 },
      { id: "d2", alongMm: 500, depthMm: 40 },
    ],
  });
});
