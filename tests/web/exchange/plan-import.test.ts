import { describe, expect, it } from "vitest";
import {
  applyCommand,
  checkDocument,
  emptyProject,
  readProject,
  writeProject,
} from "../../../core/project/index.ts";
import { importCommand } from "../../../web/exchange/import-commands.ts";
import { type ImportSettings, planImport } from "../../../web/exchange/plan-import.ts";

const SETTINGS: ImportSettings = {
  kind: "section",
  unitMm: undefined,
  shiftMm: [0, 0],
  isFlipped: false,
  toleranceMm: 0.2,
  curvesBecome: "curves",
  index: undefined,
  isMirrored: true,
};
const FLOOR = "x,y\n0,0\n600,0\n600,300\n0,300\n0,0\n";
const project = emptyProject({ id: "t", title: "Tray", issuedOn: "2026-01-01" });

describe("an import", () => {
  it.each([
    ["section", FLOOR],
    ["opening", FLOOR],
    ["profile", "0;60\n700;40\n1200;55,5"],
    ["fence", "100\t200\n500\t220"],
  ] as const)("as %s makes a sound document that can be written and read", (kind, text) => {
    const plan = planImport(text, { ...SETTINGS, kind });
    if (!plan.fitted) throw new Error(plan.remarks.join(" "));
    const made = applyCommand(project, importCommand(project, kind, plan.fitted).command);
    expect(made).not.toBe(project);
    expect(readProject(writeProject(made)).ok).toBe(true);
    expect(checkDocument(made).filter(({ kind: problem }) => problem.includes("node"))).toEqual([]);
  });

  it("across the centre line is its right half where the other is the image", () => {
    const across = "0,-300\n600,-300\n600,300\n0,300\n0,-300";
    expect(planImport(across, SETTINGS)).toMatchObject({ sizeMm: [600, 300] });
    expect(planImport(across, { ...SETTINGS, isMirrored: false })).toMatchObject({ sizeMm: [600, 600] });
  });

  it.each([
    ["fence", FLOOR, "open line"],
    ["profile", "0,60\n700,40\n600,50", "turns back at x 600.0"],
    ["section", "0,-1\n9,-1\n9,-5\n0,-1", "left of the centre line"],
    ["section", "1,2\n3,x", "Line 2: “x” is no number."],
  ] as const)("as %s of %j is refused with its reason", (kind, text, reason) => {
    const plan = planImport(text, { ...SETTINGS, kind });
    expect(plan.fitted).toBeUndefined();
    expect(plan.remarks.join(" ")).toContain(reason);
  });

  it("is moved and flipped as asked, and a profile runs rearward", () => {
    const plan = planImport("100,5\n0,0", {
      ...SETTINGS,
      kind: "profile",
      shiftMm: [10, 50],
      isFlipped: true,
    });
    expect(plan.fitted?.nodes.map(({ at }) => at)).toEqual([
      [10, 50],
      [110, 45],
    ]);
  });
});
