import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const css = readFileSync("web/style/tokens.css", "utf8");

/** The colours of one light, by token; what stands for both lights is in each. */
function tokensOf(light: "light" | "dark"): ReadonlyMap<string, string> {
  const blocks = [...css.matchAll(/(:root[^{]*)\{([^}]*)\}/g)];
  const own = blocks.filter(([, selector = ""]) => !selector.includes("dark") || light === "dark");
  const colours = own.flatMap(([, , body = ""]) => [...body.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/g)]);
  return new Map(colours.map(([, name = "", colour = ""]) => [name, colour]));
}

/**
 * Contrast ratio of two colours, WCAG 2.2 (W3C, 2023), definitions "relative luminance" and "contrast ratio":
 * (L1 + 0.05) / (L2 + 0.05), L = 0.2126 R + 0.7152 G + 0.0722 B of the linear channels.
 */
function contrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((from) => {
    const share = Number.parseInt(colour.slice(from, from + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** Success criteria 1.4.3 (text) and 1.4.11 (what is needed to know controls and drawings). */
const TEXT = 4.5;
const GRAPHIC = 3;

const PAGES = ["paper", "sheet", "grid"];
const TINTS = ["tint-1", "tint-2", "tint-3", "tint-4", "tint-5", "tint-6"];
const words = ["ink", "pencil", "mark", "warn", "stop", "ok"];

/** The tint of a part as it is laid over the sheet. */
const TINT_SHARE = 0.35;
function over(sheet: string, tint: string): string {
  const channel = (from: number) => {
    const [below, above] = [sheet, tint].map((colour) => Number.parseInt(colour.slice(from, from + 2), 16));
    const mixed = Math.round((below ?? 0) * (1 - TINT_SHARE) + (above ?? 0) * TINT_SHARE);
    return mixed.toString(16).padStart(2, "0");
  };
  return `#${[1, 3, 5].map(channel).join("")}`;
}

describe.each(["light", "dark"] as const)("the colours of the %s page", (light) => {
  const tokens = tokensOf(light);
  const colour = (name: string): string => {
    const found = tokens.get(name);
    if (found === undefined) throw new Error(`There is no colour ${name}.`);
    return found;
  };

  it("knows black on white as 21 to 1 and like on like as 1", () => {
    expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 6);
    expect(contrast("#767676", "#ffffff")).toBeCloseTo(4.54, 2);
    expect(contrast(colour("ink"), colour("ink"))).toBe(1);
  });

  it.each(PAGES.flatMap((page) => words.map((word) => [word, page] as const)))(
    "%s reads on %s",
    (word, page) => expect(contrast(colour(word), colour(page))).toBeGreaterThanOrEqual(TEXT),
  );

  it("the word on the one primary action reads", () =>
    expect(contrast(colour("on-mark"), colour("mark"))).toBeGreaterThanOrEqual(TEXT));

  it.each(TINTS)("ink reads on a part in %s", (tint) =>
    expect(contrast(colour("ink"), over(colour("sheet"), colour(tint)))).toBeGreaterThanOrEqual(TEXT),
  );

  it.each(PAGES)("focus and handles show on %s", (page) =>
    expect(contrast(colour("mark"), colour(page))).toBeGreaterThanOrEqual(GRAPHIC),
  );
});
