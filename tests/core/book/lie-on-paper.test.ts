import { describe, expect, it } from "vitest";
import { drawBook } from "../../../core/book/index.ts";
import { layLines } from "../../../core/book/lay-lines.ts";
import { designTray } from "../../../core/design.ts";
import { assert, wordProblem } from "../../../core/foundation/index.ts";
import type { Project } from "../../../core/project/index.ts";
import { readFonts } from "../../read-fonts.ts";
import { rectangle, section, sideNode, tray } from "../trays.ts";

const fonts = readFonts();

/** A floor with a bend in its middle, on ribs 300 apart. */
function floor(asBuilt?: NonNullable<Project["asBuilt"]>) {
  const profile = [
    sideNode("a", 0, 100),
    sideNode("b", 600, 100, { radiusMm: 900 }),
    sideNode("c", 1200, 220),
  ];
  const project = tray({ p: profile }, [section(1, rectangle(0, 1200, 0, 400))], { thicknessMm: 10 });
  return designTray({ ...project, ...(asBuilt && { asBuilt }) });
}

const sheetsOf = (design: ReturnType<typeof floor>): readonly string[] =>
  drawBook(design, fonts).pages.map(({ marks }) =>
    marks.flatMap((mark) => (mark.kind === "text" ? [mark.text] : [])).join(" "),
  );

describe("the book of a tray on its ribs", () => {
  const design = floor();
  const [worst] = design.lie.worst;

  it("shows how the foam lies, with its worst place and what every rib gives", () => {
    const [page] = sheetsOf(design).filter((words) => words.includes("How the foam lies on the ribs"));
    expect(Math.abs(worst?.errorMm ?? 0)).toBeGreaterThan(1);
    expect(page).toContain(`At worst it lies ${Math.abs(worst?.errorMm ?? 0).toFixed(1)} mm`);
    expect(page).toContain("What every rib gives");
    for (const { id } of design.jig.ribs) expect(page).toContain(id);
  });

  it("has a row to measure at for every place, filled in where it is measured, and the shims then", () => {
    const words = sheetsOf(design)
      .filter((page) => page.includes("Check the laid foam"))
      .join(" ");
    for (const { drawnMm } of design.lie.checks) expect(words).toContain(drawnMm.toFixed(1));
    expect(words).not.toContain("What was measured");
    const measured = design.lie.checks.map(({ at: { x, y }, drawnMm, ribId }) => ({
      x,
      y,
      heightMm: drawnMm + (ribId === "A3" ? -4 : 0),
    }));
    const filled = sheetsOf(floor(measured)).join(" ");
    expect(filled).toContain("What was measured");
    expect(filled).toContain("A3: raise by");
  });

  it("names a part that lies off its shape, where, why, and what helps", () => {
    const [problem] = design.problems.filter(({ kind }) => kind === "foam-off-shape");
    const words = problem ? wordProblem(problem) : "";
    expect(words).toContain("the drawn shape on the jig between ribs");
    expect(words).toContain("it would rather stay straight");
    expect(words).toContain("the form tolerance is 1.0 mm");
  });
});

describe("the book of a tray whose bend reaches its rear edge", () => {
  const profile = [
    sideNode("a", 0, 100),
    sideNode("b", 500, 100, { radiusMm: 900 }),
    sideNode("c", 1200, 380),
  ];
  const design = designTray(
    tray({ p: profile }, [section(1, rectangle(0, 560, 0, 400))], { thicknessMm: 10 }),
  );
  const words = sheetsOf(design).join(" ");

  it("says on the strip's page and on the jig's what runs past, over which rib, and when to trim it", () => {
    const [past] = design.lie.pasts;
    expect(past?.ribId).toBe("E1");
    expect(words).toContain(`runs ${past?.lengthMm.toFixed(1)} mm past it, trim after the first skin`);
    expect(words).toContain("Trim it along the net line after the first skin.");
    expect(words).toContain("over rib E1: hold it down there.");
    expect(words).toContain("Dashed: as the foam would lie if it ended at the trim line.");
  });

  it("draws the outboard rib on the pattern as far past the edge as it stands", () => {
    const [strip] = design.strips;
    const [part] = design.parts;
    assert(strip !== undefined && part !== undefined, "it is cut");
    const rib = design.jig.ribs.find(({ isOutboard }) => isOutboard);
    const edgeU = Math.max(...strip.outlineMm.map(({ u }) => u));
    const lines = layLines(design, part, []).filter(({ words: name }) => name === "rib E1");
    expect(lines.length).toBeGreaterThan(0);
    // The tangent at the edge, from the arc of R 900 that begins where its fillet does.
    const rise = Math.atan2(280, 700);
    const turnRad = Math.asin((560 - (500 - 900 * Math.tan(rise / 2))) / 900);
    // The face on the ribs ends square under the drawn edge.
    const { skins, jig } = design.project;
    const depthMm = skins.lowerMm + (jig.attitude === "upright" ? 0 : 10);
    const outMm = ((rib?.atMm ?? 0) - (560 - depthMm * Math.sin(turnRad))) / Math.cos(turnRad);
    for (const { line } of lines) for (const { x } of line.points) expect(x - edgeU).toBeCloseTo(outMm, 1);
  });
});
