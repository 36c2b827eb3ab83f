import { describe, expect, it } from "vitest";
import { curvesAndCorners } from "../../../core/book/curves-and-corners.ts";
import {
  type Design,
  drawPiecePages,
  drawTemplates,
  planTemplates,
  templateCounts,
} from "../../../core/book/index.ts";
import { designTray } from "../../../core/design.ts";
import type { Project, TemplateWay } from "../../../core/project/index.ts";
import { readProject, writeProject } from "../../../core/project/index.ts";
import { writePdf } from "../../../core/writers/index.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";
import { readPages } from "../writers/read-pages.ts";

const fonts = readFonts();
const demo = designTray(readExample("hill-climb-floor"));

const inWay = (changes: Partial<Project["paper"]>): Design => ({
  ...demo,
  project: { ...demo.project, paper: { ...demo.project.paper, ...changes } },
});

const piecesOf = (design: Design) =>
  (planTemplates(design).plan?.layouts ?? []).flatMap(({ pieces }) => pieces.map(({ piece }) => piece.id));

describe("what must be had at true size of a line", () => {
  const cut = (points: readonly (readonly [number, number])[], closed: boolean) =>
    curvesAndCorners({
      kind: "line",
      points: points.map(([x, y]) => ({ x, y })),
      closed,
      style: "cut",
    });
  const lengthOf = (lines: ReturnType<typeof cut>) =>
    lines.reduce(
      (sum, { points }) =>
        sum +
        points
          .slice(1)
          .reduce((part, p, i) => part + Math.hypot(p.x - (points[i]?.x ?? 0), p.y - (points[i]?.y ?? 0)), 0),
      0,
    );

  it("is 15 mm on both sides of each corner of a rectangle, and nothing of its sides", () => {
    const lines = cut(
      [
        [0, 0],
        [250, 0],
        [500, 0],
        [500, 300],
        [0, 300],
      ],
      true,
    );
    expect(lengthOf(lines)).toBeCloseTo(8 * 15, 6);
  });

  it("is all of a circle, and all of a run that is shorter than 100 mm", () => {
    const circle = Array.from({ length: 240 }, (_, k): [number, number] => [
      200 * Math.cos((k * Math.PI) / 120),
      200 * Math.sin((k * Math.PI) / 120),
    ]);
    expect(lengthOf(cut(circle, true))).toBeCloseTo(240 * 2 * 200 * Math.sin(Math.PI / 240), 6);
    const small = [
      [0, 0],
      [90, 0],
      [90, 60],
      [0, 60],
    ] as const;
    expect(lengthOf(cut(small, true))).toBeCloseTo(300, 6);
  });
});

describe("ways of marking out", { timeout: 120_000 }, () => {
  it("take fewer pages by curves and corners than whole, and none by the table; the first is what a tray begins with", () => {
    const count = (templateWay: TemplateWay) => planTemplates(inWay({ templateWay })).plan?.pageCount ?? 0;
    expect(count("curves")).toBeLessThan(0.85 * count("full"));
    expect(count("table")).toBe(0);
    expect(planTemplates(demo).plan?.pageCount).toBe(count("curves"));
  });

  it("can be chosen for one part: the others stay as they are, and its drawing is made all the same", () => {
    const design = inWay({ templateWays: [{ partId: "S1", way: "table" }] });
    const all = piecesOf(demo);
    expect(all).toContain("S1-b");
    expect([...piecesOf(design)].sort()).toEqual(all.filter((id) => !id.startsWith("S1-")).sort());
    expect(drawPiecePages(design, fonts).map(({ name }) => name)).toContain("S1-b");
    const reading = readProject(writeProject(design.project));
    expect(reading.ok && reading.project.paper.templateWays).toEqual([{ partId: "S1", way: "table" }]);
  });

  it("a code that no part has changes nothing", () => {
    expect(piecesOf(inWay({ templateWays: [{ partId: "nobody", way: "table" }] }))).toEqual(piecesOf(demo));
  });

  it("count a part's pages as they are when it is printed alone", () => {
    const s1 = templateCounts(demo).find(({ partId }) => partId === "S1");
    const alone = (templateWay: TemplateWay) =>
      demo.strips
        .filter(({ partId }) => partId === "S1")
        .reduce((sum, strip) => {
          const own = {
            ...inWay({ templateWay }),
            strips: [strip],
            plates: [],
            jig: { ...demo.jig, ribs: [] },
          };
          const layouts = planTemplates(own).plan?.layouts ?? [];
          return sum + layouts.reduce((pages, { tiles }) => pages + tiles.length, 0);
        }, 0);
    expect(s1?.fullPages).toBe(alone("full"));
    expect(s1?.curvesPages).toBe(alone("curves"));
    // A4, 10 minutes a square metre.
    expect(s1?.fullMinutes).toBeCloseTo(alone("full") * 0.21 * 0.297 * 10, 6);
  });

  it("show every corner of a strip, and lay each page by crosses whose figures agree with each other", async () => {
    const strip = demo.strips.find(({ id }) => id === "S1-b");
    const own = {
      ...demo,
      strips: strip === undefined ? [] : [strip],
      plates: [],
      jig: { ...demo.jig, ribs: [] },
    };
    const { paper } = demo.project;
    const pages = (await readPages(writePdf(drawTemplates(own, fonts).set, fonts))).flatMap((page) => {
      const words = page.texts.map(({ text }) => text).join(" ");
      const found = /tile origin u ([\d.]+) v ([\d.]+)/.exec(words);
      return found === null ? [] : [{ page, origin: { x: Number(found[1]), y: Number(found[2]) } }];
    });
    const toLayout = (origin: { x: number; y: number }, p: { x: number; y: number }) => ({
      x: p.x - paper.marginMm + origin.x,
      y: p.y - paper.marginMm + origin.y,
    });
    // A cross is two thin lines of 8 mm with one middle; its figures stand 1.4 mm above it (here all are level).
    const crosses = pages.flatMap(({ page, origin }) => {
      const arms = page.lines.filter(
        ({ widthMm, points: [a, b] }) =>
          Math.abs(widthMm - 0.25) < 0.001 && a && b && Math.abs(Math.hypot(b.x - a.x, b.y - a.y) - 8) < 0.01,
      );
      const middles = arms.map(({ points: [a, b] }) => ({
        x: ((a?.x ?? 0) + (b?.x ?? 0)) / 2,
        y: ((a?.y ?? 0) + (b?.y ?? 0)) / 2,
      }));
      return middles
        .filter((p, i) => middles.slice(0, i).some((q) => Math.hypot(p.x - q.x, p.y - q.y) < 0.01))
        .flatMap((at) => {
          const beside = page.texts
            .filter(({ x, y }) => Math.abs(y - at.y - 1.4) < 0.05 && x > at.x && x < at.x + 45)
            .sort((a, b) => a.x - b.x);
          const words = beside.map(({ text }) => text).join(" ");
          const figures = /along\s+([\u2212\d]+)\s*,\s*mark\s+([\u2212\d]+)/.exec(words);
          if (figures === null) return [];
          const number = (word = "") => Number(word.replace("\u2212", "-"));
          return [{ at: toLayout(origin, at), along: number(figures[1]), mark: number(figures[2]) }];
        });
    });
    expect(crosses.length).toBeGreaterThanOrEqual(2 * pages.length - 2);
    const [first] = crosses;
    for (const cross of crosses.slice(1)) {
      const apart = Math.hypot(cross.at.x - (first?.at.x ?? 0), cross.at.y - (first?.at.y ?? 0));
      const told = Math.hypot(cross.along - (first?.along ?? 0), cross.mark - (first?.mark ?? 0));
      expect(Math.abs(apart - told)).toBeLessThan(0.02);
    }
    // The corners of the line to cut by, turned by a quarter or not, are all on some page.
    const thick = pages.flatMap(({ page, origin }) =>
      page.lines
        .filter(({ widthMm }) => Math.abs(widthMm - 0.5) < 0.001)
        .flatMap(({ points }) => points.map((p) => toLayout(origin, p))),
    );
    const table = demo.marking.find(({ stripId }) => stripId === "S1-b");
    expect(table).toBeDefined();
    const seen = new Set(thick.map((p) => `${Math.round(p.x)}/${Math.round(p.y)}`));
    expect(seen.size).toBeGreaterThan(8);
    const spans = (pick: (p: { x: number; y: number }) => number) =>
      Math.max(...thick.map(pick)) - Math.min(...thick.map(pick));
    const outline = strip?.outlineMm ?? [];
    const size = (pick: (p: { u: number; v: number }) => number) =>
      Math.max(...outline.map(pick)) - Math.min(...outline.map(pick));
    const printed = [spans((p) => p.x), spans((p) => p.y)].sort((a, b) => a - b);
    const drawn = [size((p) => p.u), size((p) => p.v)].sort((a, b) => a - b);
    // Bevels move the lines on the face shown by some mm at most.
    printed.forEach((one, i) => {
      expect(Math.abs(one - (drawn[i] ?? 0))).toBeLessThan(3);
    });
  });
});
