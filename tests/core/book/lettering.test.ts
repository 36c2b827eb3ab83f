import { describe, expect, it } from "vitest";
import { readLettering } from "../../../core/book/index.ts";
import { readFonts } from "../../read-fonts.ts";

const lettering = readLettering(readFonts());

describe("lettering", () => {
  it("measures tabular digits as equally wide", () => {
    for (const face of ["sans", "bold", "mono"] as const) {
      const widths = [..."0123456789"].map((digit) => lettering.widthMm(digit, face, 2.5));
      for (const width of widths) expect(width).toBeCloseTo(widths[0] ?? 0, 9);
    }
  });

  it("takes heights as heights of capitals: the mono face is 0.73 of its em", () => {
    expect(lettering.emMm("mono", 7.3)).toBeCloseTo(10, 6);
    expect(lettering.widthMm("MM", "mono", 7.3)).toBeCloseTo(12, 6);
  });

  it("replaces signs that a face lacks by ones that can be seen", () => {
    expect(lettering.legible("20 ⌀ 漢", "mono")).toBe("20 Ø □");
    expect(lettering.legible("漢", "sans")).toBe("?");
    expect(lettering.legible("12\u2009mm", "mono")).toBe("12 mm");
    expect(lettering.legible("\u22123.5° → Ø µ", "sans")).toBe("\u22123.5° → Ø µ");
  });
});
