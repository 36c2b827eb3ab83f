import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { wordBend } from "../../../core/jig/index.ts";
import type { BendMethod, Project } from "../../../core/project/index.ts";
import { arcProfile, rectangle, section, tray } from "../trays.ts";

/** What is said of a bend of R 400 in 20 mm foam, its hollow side up, made in one of the ways. */
function said(method: BendMethod, attitude: Project["jig"]["attitude"] = "inverted"): string {
  const project = tray(
    { p: arcProfile([0, 100], 400, 0.6, 1) },
    [section(1, rectangle(0, 220, 0, 300), { bends: [{ atMm: 100, method }] })],
    { drawnFace: "neutral" },
  );
  const design = designTray({ ...project, jig: { ...project.jig, attitude } });
  const [zone] = design.parts[0]?.zones ?? [];
  if (!zone) throw new Error("no bend");
  return wordBend(zone, design.holds[0], design.project, (u) => u).join(" ");
}

describe("what is said of a bend", () => {
  it("tells the limit of the foam and where it comes from", () => {
    expect(said("bend cold")).toContain("R 1200 (common practice)");
    expect(said("bend cold")).toContain("You chose: bend cold.");
  });

  it("tells which way slots look on the jig", () => {
    // Its upper face is inside the bend: closing slots go there. An inverted jig carries that face.
    expect(said("closing slots", "inverted")).toContain("the slots look down: the upper face is on the ribs");
    expect(said("closing slots", "upright")).toContain("the slots look up: the upper face is up");
    expect(said("opening slots", "upright")).toContain("the slots look down: the lower face is on the ribs");
  });

  it("tells hold-down and springback of cold bends only", () => {
    expect(said("bend cold")).toContain("sandbag");
    expect(said("bend cold")).toContain("Leave it on the jig until the second skin has cured.");
    expect(said("planks")).not.toContain("sandbag");
    expect(said("planks")).toContain("each flat and a strip of its own");
  });
});
