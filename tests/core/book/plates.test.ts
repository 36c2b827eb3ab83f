import { describe, expect, it } from "vitest";
import {
  type DrawingPage,
  drawBook,
  drawPiecePages,
  drawTemplates,
  type Mark,
  readLettering,
  reportOf,
} from "../../../core/book/index.ts";
import { designTray } from "../../../core/design.ts";
import type { Plate } from "../../../core/project/index.ts";
import { readFonts } from "../../read-fonts.ts";
import { plateOf, projectOf, rectangle, wing } from "../plates/plates.ts";

const fonts = readFonts();
const lettering = readLettering(fonts);
const PAPER_MM = 1e-6;
/** A4 inside its frame: 20 mm at the left, 10 mm else. */
const FRAME = { left: 20, right: 200, bottom: 10, top: 287 };

const designOf = (plate: Plate) =>
  designTray(projectOf(plate, { symmetry: "mirrored", metal: { leastRadiusRatio: 1.5, kFactor: 0.407 } }));

/** A tray on the right, and so on the left; and one that lies across the centre line. */
const aside = designOf(
  plateOf(rectangle(100, 400, 60, 260), [
    wing("r"),
    wing("o", { angleRad: -0.5, startTaperRad: 0.3 }),
    wing("f", { angleRad: 2, lengthMm: 30 }),
  ]),
);
const across = designOf(
  plateOf(rectangle(0, 700, 0, 200), [wing("r"), wing("o")], { bond: { lineMm: 0.5, step: "rebate" } }),
);

const textsOf = (page: DrawingPage) =>
  page.marks.filter((mark): mark is Extract<Mark, { kind: "text" }> => mark.kind === "text");
const wordsOf = (pages: readonly DrawingPage[]) =>
  pages.flatMap((page) => textsOf(page).map(({ text }) => text)).join(" ");
const plateSheets = (design: typeof aside) =>
  drawBook(design, fonts).pages.filter(({ name }) => name.startsWith("Plate"));

describe("the sheets of a plate", () => {
  it("are one for each hand, and one for the work", () => {
    expect(aside.problems).toEqual([]);
    expect(plateSheets(aside).map(({ name }) => name)).toEqual([
      "Plate P1R",
      "Plate P1L",
      "Plate P1: folding and bonding",
    ]);
    expect(plateSheets(across).map(({ name }) => name)).toEqual([
      "Plate P1",
      "Plate P1: folding and bonding",
    ]);
  });

  it("say which face and hand is shown, that the left is the image, and that bend lines are never scribed", () => {
    const [right, left] = plateSheets(aside);
    if (!right || !left) throw new Error("two hands");
    expect(wordsOf([right])).toContain("Drawn with the upper face toward you. Right hand.");
    expect(wordsOf([left])).toContain("mirror image of the right hand");
    for (const page of [right, left]) expect(wordsOf([page])).toMatch(/in pencil\. Never scribe them/);
  });

  it("list each bend with its figures", () => {
    const words = wordsOf(plateSheets(aside).slice(0, 1));
    const [up, down] = aside.plates[0]?.parts[0]?.bends ?? [];
    if (!up || !down) throw new Error("bends");
    expect(words).toContain("wing 1 up 90.0° 3.0 0.407");
    expect(words).toContain(`wing 2 down 28.6° 3.0 0.407 ${down.figures.allowanceMm.toFixed(2)}`);
    // (3 + 0.407 · 2) π / 2
    expect(up.figures.allowanceMm).toBeCloseTo((3.814 * Math.PI) / 2, 9);
    expect(words).toContain(" 5.99 ");
  });

  it("draw the middle of each bend as a chain line and its tangents thin", () => {
    const [page] = plateSheets(aside);
    const layers = page?.marks.filter((mark) => mark.kind === "line" && mark.layer === "bend") ?? [];
    const styles = layers.map((mark) => (mark.kind === "line" ? mark.style : ""));
    expect(styles).toEqual([
      "fold",
      "station",
      "station",
      "fold",
      "station",
      "station",
      "fold",
      "station",
      "station",
    ]);
  });

  it("tell the work in its order, each caution at its step", () => {
    const words = wordsOf(plateSheets(aside).slice(-1));
    const steps = [
      "folding order",
      "under the foam",
      "Degrease",
      "vapour",
      "Abrade",
      "goggles",
      "Coat and abrade wet",
      "sensitise",
      "Bond at once",
      "Fasten the edges",
    ];
    const places = steps.map((step) => words.indexOf(step));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
  });

  it("say the step of the foam and what is done about it", () => {
    // 2 mm metal and 0.5 mm bond line against 0.8 mm of skin.
    expect(wordsOf(plateSheets(aside))).toMatch(
      /Step 1\.7 mm: fill under the foam beside the plate .* over 34\.0 mm/,
    );
    expect(wordsOf(plateSheets(across))).toMatch(
      /rebate 1\.7 mm deep into the lower face of the foam over the plate/,
    );
  });

  it("keep every word inside the frame and clear of every other", () => {
    for (const page of [...plateSheets(aside), ...plateSheets(across)]) {
      const boxes = textsOf(page).map((mark) => ({ mark, box: boxOf(mark) }));
      for (const { mark, box } of boxes) {
        const where = `${page.name}: ${mark.text}`;
        expect(box.left, where).toBeGreaterThan(FRAME.left);
        expect(box.right, where).toBeLessThan(FRAME.right);
        expect(box.bottom, where).toBeGreaterThan(FRAME.bottom);
        expect(box.top, where).toBeLessThan(FRAME.top);
      }
      for (const [i, one] of boxes.entries()) {
        for (const other of boxes.slice(i + 1)) {
          const meets =
            Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left) > 0.2 &&
            Math.min(one.box.top, other.box.top) - Math.max(one.box.bottom, other.box.bottom) > 0.2;
          expect(meets, `${page.name}: ${one.mark.text} | ${other.mark.text}`).toBe(false);
        }
      }
    }
  });
});

/** From the base line to the top of the capitals. */
function boxOf(mark: Extract<Mark, { kind: "text" }>) {
  const width = lettering.widthMm(mark.text, mark.face, mark.heightMm);
  const start = mark.anchor === "start" ? 0 : mark.anchor === "middle" ? -width / 2 : -width;
  const corners = [start, start + width].flatMap((along) =>
    [0, mark.heightMm].map((up) => ({
      x: mark.at.x + along * Math.cos(mark.turnRad) - up * Math.sin(mark.turnRad),
      y: mark.at.y + along * Math.sin(mark.turnRad) + up * Math.cos(mark.turnRad),
    })),
  );
  const [xs, ys] = [corners.map(({ x }) => x), corners.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
}

describe("the template of a plate", () => {
  it("is true to size, the left hand the mirror image of the right", () => {
    const [right, left] = drawPiecePages(aside, fonts).filter(({ name }) => name.startsWith("P1"));
    if (!right || !left) throw new Error("two hands");
    const cut = (page: DrawingPage) => {
      const line = page.marks.find((mark) => mark.kind === "line" && mark.style === "cut");
      if (line?.kind !== "line") throw new Error("a cut line");
      const [x, y] = [Math.min(...line.points.map((p) => p.x)), Math.min(...line.points.map((p) => p.y))];
      return line.points.map((p) => ({ x: p.x - x, y: p.y - y }));
    };
    const [part] = aside.plates[0]?.parts ?? [];
    const [cutRight, cutLeft] = [cut(right), cut(left)];
    const heightMm = Math.max(...cutRight.map(({ y }) => y));
    expect(Math.max(...cutRight.map(({ x }) => x))).toBeCloseTo(part?.lengthMm ?? 0, 6);
    expect(heightMm).toBeCloseTo(part?.widthMm ?? 0, 6);
    for (const { x, y } of cutLeft) {
      const nearest = Math.min(...cutRight.map((p) => Math.hypot(p.x - x, heightMm - p.y - y)));
      expect(nearest).toBeLessThan(PAPER_MM);
    }
  });

  it("says face, hand, metal, each bend's way, and that lines are in pencil", () => {
    const pages = drawPiecePages(aside, fonts);
    const words = wordsOf(pages.filter(({ name }) => name === "P1L"));
    for (const said of [
      "upper face up, left hand",
      "2.0 mm Sheet",
      "never scribed",
      "wing 1: bend up 90.0°, R 3.0",
      "wing 2: bend down 28.6°, R 3.0",
      "forward",
      "centre line",
    ]) {
      expect(words).toContain(said);
    }
  });

  it("is printed in tiles with the words for metal", () => {
    const { set, problems } = drawTemplates(across, fonts);
    expect(problems).toEqual([]);
    const tiles = set.pages.slice(1);
    expect(tiles.length).toBeGreaterThan(2);
    for (const page of tiles) expect(wordsOf([page])).toContain("bend lines in pencil, never scribed");
  });
});

describe("the report of a plate", () => {
  const report = reportOf(aside);

  it("has a plate for each hand with blank, bends, folding order and the foam over it", () => {
    expect(report.plates.map(({ id, hand, plateId }) => [id, hand, plateId])).toEqual([
      ["P1R", "right", "P1"],
      ["P1L", "left", "P1"],
    ]);
    const [right] = report.plates;
    expect(right?.bends.map(({ wingId, direction }) => [wingId, direction])).toEqual([
      ["w-r", "up"],
      ["w-o", "down"],
      ["w-f", "up"],
    ]);
    expect(right?.folding.map(({ bendIds }) => bendIds.join())).toEqual(["w-f", "w-r", "w-o"]);
    expect(right?.underFoam?.stepMm).toBe(1.7);
    expect(right?.massKg).toBeCloseTo((right?.flatAreaMm2 ?? 0) * 2 * 2700e-9, 6);
    const sum = (right?.baseAreaMm2 ?? 0) + (right?.bendAreaMm2 ?? 0) + (right?.wingAreaMm2 ?? 0);
    expect(sum).toBeCloseTo(right?.flatAreaMm2 ?? 0, 4);
  });

  it("is rounded to a millionth", () => {
    const numbers: number[] = [];
    JSON.stringify(report.plates, (_, value: unknown) => {
      if (typeof value === "number") numbers.push(value);
      return value;
    });
    expect(numbers.length).toBeGreaterThan(100);
    for (const value of numbers) expect(Math.abs(value * 1e6 - Math.round(value * 1e6))).toBeLessThan(1e-3);
  });
});
