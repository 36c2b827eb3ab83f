import { describe, expect, it } from "vitest";
import { drawTemplates } from "../../../core/book/index.ts";
import { designTray } from "../../../core/design.ts";
import { at } from "../../../core/foundation/index.ts";
import { allRibs, type Rib } from "../../../core/jig/index.ts";
import { writePdf } from "../../../core/writers/index.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";
import { depthsOf, isPlain, sliceMesh } from "../jig/mesh-slice.ts";
import { type ReadPage, readPages } from "../writers/read-pages.ts";

/** A rib on paper may miss by so much, all in all. */
const PAPER_MM = 0.02;
const SLOW_MS = 120_000;

type Point = { readonly x: number; readonly y: number };
type Lines = readonly (readonly Point[])[];

const fonts = readFonts();
const demo = readExample("hill-climb-floor");
/** On a roll each rib is one line on a page, however it is turned. */
const design = designTray({
  ...demo,
  paper: { ...demo.paper, size: "roll", rollWidthMm: 914, templateWay: "full" },
});

/** What is cut along on a page, mm. */
const cutLines = ({ lines }: ReadPage): Lines =>
  lines.filter(({ widthMm }) => Math.abs(widthMm - 0.5) < 0.001).map(({ points }) => points);

function boxOf(points: readonly Point[]) {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}

/** The paper rib set on the board: turned and moved so that its ends and its foot are where the rib's are; none where it is another's. */
function setUp(print: Lines, rib: Rib): Lines | undefined {
  const own = boxOf(rib.outlineMm.map(({ u, v }) => ({ x: u, y: v })));
  const quarter = ({ x, y }: Point): Point => ({ x: y, y: -x });
  const turns = [0, 1, 2, 3].map((count) =>
    print.map((line) =>
      line.map((p) => Array.from({ length: count }).reduce<Point>((turned) => quarter(turned), p)),
    ),
  );
  return turns
    .map((lines) => {
      const box = boxOf(lines.flat());
      return lines.map((line) =>
        line.map(({ x, y }) => ({ x: x - box.left + own.left, y: y - box.bottom + own.bottom })),
      );
    })
    .find((lines) => {
      const box = boxOf(lines.flat());
      const corners = rib.outlineMm.map(({ u, v }) => ({ x: u, y: v }));
      return (
        Math.abs(box.right - own.right) < 0.1 &&
        Math.abs(box.top - own.top) < 0.1 &&
        corners.every((corner) => lines.flat().some((p) => Math.hypot(p.x - corner.x, p.y - corner.y) < 0.1))
      );
    });
}

/** How high the paper reaches at a place along it. */
function topAt(lines: Lines, alongMm: number): number {
  const heights = lines.flatMap((line) =>
    line.slice(1).flatMap((b, i) => {
      const a = line[i] ?? b;
      if (a.x > alongMm === b.x > alongMm) return [];
      return [a.y + ((alongMm - a.x) / (b.x - a.x)) * (b.y - a.y)];
    }),
  );
  return Math.max(...heights);
}

describe("ribs cut out of the printed templates and stood on the baseboard", { timeout: SLOW_MS }, () => {
  it("carry the demo's tray: a fine mesh of its resting face lies on the paper", async () => {
    const pages = await readPages(writePdf(drawTemplates(design, fonts).set, fonts));
    const prints = pages.flatMap(cutLines).map((line) => [line]);
    const { attitude, levelZMm } = design.jig.baseboard;
    const sign = attitude === "upright" ? 1 : -1;
    const [stood, misses]: [string[], number[]] = [[], []];
    for (const rib of design.jig.ribs) {
      const printed = allRibs(design.jig).find(({ id }) => id === rib.sameAs) ?? rib;
      const paper = prints.map((lines) => setUp(lines, printed)).find((lines) => lines !== undefined);
      if (paper === undefined) continue;
      stood.push(rib.id);
      for (const part of design.parts.filter(({ kind }) => kind !== "fence")) {
        const { coreLowerMm, coreUpperMm } = depthsOf(design, part);
        const depthMm = attitude === "upright" ? coreLowerMm : coreUpperMm;
        for (const { alongMm, zMm } of sliceMesh(design, part, {
          runs: rib.runs,
          planeMm: rib.atMm,
          depthMm,
        })) {
          if (!isPlain(rib, part.id, alongMm)) continue;
          const shift = boxOf(rib.outlineMm.map(({ u, v }) => ({ x: u, y: v }))).left;
          const from = boxOf(printed.outlineMm.map(({ u, v }) => ({ x: u, y: v }))).left;
          misses.push(topAt(paper, alongMm - shift + from) - sign * (zMm - levelZMm));
        }
      }
    }
    const spliced = design.jig.ribs.filter(({ splices }) => splices.length > 0).map(({ id }) => id);
    const flat = design.jig.ribs.filter(({ straightTop }) => straightTop).map(({ id }) => id);
    expect([...new Set([...stood, ...spliced, ...flat])].toSorted()).toEqual(
      design.jig.ribs.map(({ id }) => id).toSorted(),
    );
    expect(misses.length).toBeGreaterThan(60);
    expect(Math.max(...misses.map(Math.abs))).toBeLessThan(PAPER_MM);
    expect(at(stood, 0)).toBeDefined();
  });
});
