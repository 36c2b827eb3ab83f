import { describe, expect, it } from "vitest";
import {
  type Design,
  type DrawingPage,
  drawBook,
  drawTemplates,
  planTemplates,
} from "../../../core/book/index.ts";
import { designTray } from "../../../core/design.ts";
import { at } from "../../../core/foundation/index.ts";
import { readFonts } from "../../read-fonts.ts";
import { freeEdge, rectangle, section, straightProfile, stretchOf, transition, tray } from "../trays.ts";

const fonts = readFonts();
const SLOW_MS = 60_000;

/** A level sheet with a lip that rises 20 on 60 from its outer edge: one fold of atan(1/3) = 18.43°. */
const lipped: Design = designTray(
  tray({ p: straightProfile(0, 100, 1000, 100) }, [
    section(1, rectangle(0, 1000, 0, 300)),
    transition(1, stretchOf("s1", "outer", "front"), freeEdge([1000, 360, 120], [0, 360, 120])),
  ]),
);
const plain: Design = designTray(
  tray({ p: straightProfile(0, 100, 1000, 100) }, [section(1, rectangle(0, 1000, 0, 300))]),
);
const FOLD_DEG = (Math.atan(1 / 3) * 180) / Math.PI;

const textsOf = (page: DrawingPage) =>
  page.marks.flatMap((mark) => (mark.kind === "text" ? [mark.text] : []));

describe("bevels on paper", { timeout: SLOW_MS }, () => {
  const { paper } = lipped.project;
  const whole = {
    ...lipped,
    project: { ...lipped.project, paper: { ...paper, templateWay: "full" as const } },
  };
  const pages = drawTemplates(whole, fonts).set.pages;

  it("have a gauge at true size after the map, and none where every edge is square", () => {
    const gauges = pages.filter(({ name }) => name.startsWith("Bevel gauges"));
    expect(gauges).toHaveLength(1);
    expect(pages.map(({ name }) => name).indexOf("Bevel gauges")).toBe(1);
    expect(drawTemplates(plain, fonts).set.pages.some(({ name }) => name.startsWith("Bevel"))).toBe(false);
    expect(pages).toHaveLength(planTemplates(whole).plan?.pageCount ?? 0);
  });

  it("show on the gauge the angle that the joint needs, to half a degree, as a card's leaning side", () => {
    const [gauge] = pages.filter(({ name }) => name === "Bevel gauges");
    const needed = Math.round(FOLD_DEG / 2 / 0.5) * 0.5;
    expect(textsOf(gauge ?? at(pages, 0))).toContain(`${needed.toFixed(1)}°`);
    const cards = gauge?.marks.filter((mark) => mark.kind === "line" && mark.style === "cut") ?? [];
    const card = cards[0];
    if (card?.kind !== "line") throw new Error("no card");
    const [low, , , high] = card.points;
    const lean = Math.atan2((high?.x ?? 0) - (low?.x ?? 0), (high?.y ?? 0) - (low?.y ?? 0));
    expect((lean * 180) / Math.PI).toBeCloseTo(needed, 9);
  });

  it("are told at the same numbers on the templates of both strips", () => {
    const figure = `${(FOLD_DEG / 2).toFixed(1)}° air`;
    const numbers = pages
      .flatMap(textsOf)
      .filter((text) => text.endsWith(figure))
      .map((text) => Number(text.split(" ")[0]))
      .sort((a, b) => a - b);
    expect([...new Set(numbers)]).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9]);
    for (const number of new Set(numbers))
      expect(numbers.filter((one) => one === number).length).toBeGreaterThanOrEqual(2);
  });

  it("say in the book on which face the line lies and how far from mid-thickness", () => {
    const words = drawBook(lipped, fonts).pages.flatMap(textsOf);
    const all = words.join(" ");
    expect(all).toContain("marks on the upper face");
    expect(all).toContain("Draw that line alone, and tilt the blade by the bevel.");
    // 10 tan(9.217°) = 1.62 mm inside, since the core lies inside this fold and the air face is the longer one.
    expect(words).toContain(`−${(10 * Math.tan((FOLD_DEG * Math.PI) / 360)).toFixed(1)}`);
    expect(all).toContain("Developable");
  });
});
