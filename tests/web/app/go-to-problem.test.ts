import { describe, expect, it } from "vitest";
import { whereToLook } from "../../../web/app/go-to-problem.ts";

describe("where a problem is put right", () => {
  it("chooses the node of the item that it names, on the board", () => {
    expect(whereToLook({ place: { itemId: "s2", nodeId: "n4" } })).toEqual({
      stage: "draw",
      selection: { kind: "item", itemId: "s2", nodeId: "n4" },
    });
  });

  it("chooses a profile on the board, a rib in the jig, a part among the sheets", () => {
    expect(whereToLook({ place: { profileId: "p1" } })).toEqual({
      stage: "draw",
      selection: { kind: "profile", profileId: "p1" },
    });
    expect(whereToLook({ place: { ribId: "A3" } })).toEqual({
      stage: "jig",
      selection: { kind: "rib", ribId: "A3" },
    });
    expect(whereToLook({ place: { partId: "S2R" } })).toEqual({
      stage: "sheets",
      selection: { kind: "part", partId: "S2R" },
    });
  });

  it.each([
    ["jig.across.spacingMm", "jig"],
    ["materials.boards.ply-12.thicknessMm", "jig"],
    ["glue.glueId", "glue"],
    ["materials.glues.pu-glue.openMinutes", "glue"],
    ["paper.marginMm", "print"],
    ["marking.intervalMm", "sheets"],
    ["core.thicknessMm", "stock"],
    ["stock.stock-1.lengthMm", "stock"],
    ["materials.foams.xps.leastBendRatio", "stock"],
    ["materials.metals.steel-mild.kFactor", "stock"],
    ["openingSettings.webMm", "stock"],
    ["joints.toleranceMm", "stock"],
  ])("finds the setting %s in the stage %s", (setting, stage) => {
    expect(whereToLook({ place: { setting } }).stage).toBe(stage);
  });

  it("chooses an opening, and a node of a transition's free edge", () => {
    expect(whereToLook({ place: { openingId: "o1", nodeId: "n2" } })).toEqual({
      stage: "draw",
      selection: { kind: "opening", openingId: "o1", nodeId: "n2" },
    });
    expect(whereToLook({ place: { itemId: "t1", nodeId: "n3", line: "second-edge" } })).toEqual({
      stage: "draw",
      selection: { kind: "item", itemId: "t1", nodeId: "n3", line: "second-edge" },
    });
  });

  it("chooses the node on a fence's lower edge, not the one of the same number on its line in plan", () => {
    expect(whereToLook({ place: { itemId: "f1", nodeId: "n2", line: "lower-edge" } }).selection).toEqual({
      kind: "item",
      itemId: "f1",
      nodeId: "n2",
      line: "lower-edge",
    });
  });

  it("chooses the node of the profile where a section bends too tightly", () => {
    expect(whereToLook({ place: { itemId: "s2", profileId: "p2", nodeId: "n3" } }).selection).toEqual({
      kind: "profile",
      profileId: "p2",
      nodeId: "n3",
    });
  });

  it("shows the board for a problem that names nothing", () => {
    expect(whereToLook({ place: {} })).toEqual({ stage: "draw", selection: undefined });
  });
});
