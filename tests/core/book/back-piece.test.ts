import { describe, expect, it } from "vitest";
import { drawBook } from "../../../core/book/index.ts";
import type { Piece } from "../../../core/book/piece.ts";
import { templatePieces } from "../../../core/book/template-pieces.ts";
import { designTray } from "../../../core/design.ts";
import type { Project } from "../../../core/project/index.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";

const demo = readExample("hill-climb-floor");
const cutWith = (tool: Project["cutting"]["tool"], thicknessMm = 10) =>
  designTray({
    ...demo,
    cutting: { ...demo.cutting, tool },
    core: { ...demo.core, thicknessMm },
    stock: demo.stock.map((sheet) => ({ ...sheet, thicknessMm })),
  });
const cutsOf = (pieces: readonly Piece[], id: string) =>
  pieces
    .filter((piece) => piece.id === id)
    .flatMap(({ lines }) => lines.filter(({ layer }) => layer === "cut").flatMap(({ points }) => points));

describe("templates for a hot wire", () => {
  it("a bevelled plank has one for each face: the lines lie apart by the thickness times the tangent of the bevel", () => {
    const design = cutWith("hot-wire");
    const pieces = templatePieces(design);
    const strip = design.strips.find(({ id }) => id === "S3-c");
    const bevels = strip?.edges.flatMap(({ role, bevelRad }) => (role === "seam" ? [bevelRad[0]] : [])) ?? [];
    expect(bevels).toHaveLength(2);
    const width = (id: string, v: number) => {
      // On its back the plank is seen as its mirror image, so the same place lies at −v.
      const us = cutsOf(pieces, id)
        .filter(({ y }) => Math.abs(y - v) < 250)
        .map(({ x }) => x);
      return Math.max(...us) - Math.min(...us);
    };
    const narrower = bevels.reduce((sum, bevel) => sum + 10 * Math.tan(bevel), 0);
    expect(Math.abs(narrower)).toBeGreaterThan(1.9);
    expect(width("S3-c-back", 0) - width("S3-c", 0)).toBeCloseTo(narrower, 1);
  });

  it("the one for the back is the mirror image, its arrow still toward the front", () => {
    const pieces = templatePieces(cutWith("hot-wire"));
    const ys = (id: string) => cutsOf(pieces, id).map(({ y }) => y);
    expect(Math.min(...ys("S2R-b-back"))).toBeCloseTo(-Math.max(...ys("S2R-b")), 0);
    const back = pieces.find(({ id }) => id === "S2R-b-back");
    const front = pieces.find(({ id }) => id === "S2R-b");
    expect(back?.face).toBe("lower face up, right hand");
    expect(back?.arrow.turnRad).toBeCloseTo(-(front?.arrow.turnRad ?? 0), 12);
    expect(back?.centreTurnRad).toBeCloseTo(-(front?.centreTurnRad ?? 0), 12);
  });

  it("square strips have one in thin foam, two in thick foam, and one for a knife", () => {
    const isBack = ({ id }: Piece) => id.endsWith("-back");
    const square = cutWith("hot-wire").strips.filter(({ edges }) =>
      edges.every(({ bevels }) => bevels.length === 0),
    );
    const thin = templatePieces(cutWith("hot-wire"))
      .filter(isBack)
      .map(({ id }) => id);
    expect(square.length).toBeGreaterThan(0);
    for (const { id } of square) expect(thin).not.toContain(`${id}-back`);
    const thick = cutWith("hot-wire", 25);
    expect(templatePieces(thick).filter(isBack)).toHaveLength(thick.strips.length);
    expect(templatePieces(cutWith("knife", 25)).filter(isBack)).toEqual([]);
  });

  it("the strip's page says how the wire is led", () => {
    const words = drawBook(cutWith("hot-wire"), readFonts())
      .pages.filter(({ name }) => name === "Strip S3-c")
      .flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === "text" ? [mark.text] : [])))
      .join(" ");
    expect(words).toContain("S3-c-back on the lower face");
  });
});
