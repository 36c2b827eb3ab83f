import { describe, expect, it } from "vitest";
import { drawBook } from "../../../core/book/index.ts";
import { designTray } from "../../../core/design.ts";
import { writePdf } from "../../../core/writers/index.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";
import { type ReadPage, readPages } from "../writers/read-pages.ts";

const fonts = readFonts();
const demo = designTray(readExample("hill-climb-floor"));
const reading = readPages(writePdf(drawBook(demo, fonts), fonts));

/** Capitals of 3.5 mm and of 5 mm stand in ems of this size and more (0.698 of the em). */
const HEADING_EM_MM = 3.5 / 0.698 - 0.05;

const headings = (pages: readonly ReadPage[]): readonly string[] =>
  pages.flatMap(({ texts }) =>
    texts
      .filter(({ emMm, y }) => emMm > HEADING_EM_MM && y > BLOCK_TOP_MM)
      .map(({ text }) => text.replaceAll(/ +/g, " ")),
  );

/** The title block of a page ends at this height. */
const BLOCK_TOP_MM = 37;

/** The pages with this supplementary title in their title block: in its lowest row, at its left. */
const titled = (pages: readonly ReadPage[], title: string): readonly ReadPage[] =>
  pages.filter(({ texts }) => texts.some(({ text, x, y }) => text === title && x < 22 && y < 13));

/** How often each of the wanted words is among those found. */
const times = (wanted: readonly string[], found: readonly string[]) =>
  Object.fromEntries(wanted.map((one) => [one, found.filter((other) => other === one).length]));

const once = (wanted: readonly string[]) => Object.fromEntries(wanted.map((one) => [one, 1]));

/** What stands in the first column of a table, mono: at the left edge of the frame. */
const firstCells = (pages: readonly ReadPage[]): readonly string[] =>
  pages.flatMap(({ texts }) => texts.filter(({ x }) => x > 23.5 && x < 25.5).map(({ text }) => text));

describe("the build book of the demo tray, read back", { timeout: 240_000 }, () => {
  it("has the sheet of every strip and of every plate once", async () => {
    const nameOf = (partId: string) => demo.parts.find(({ id }) => id === partId)?.name ?? "";
    const wanted = [
      ...demo.strips.map(({ id, partId }) => `${id} ${nameOf(partId)}`),
      ...demo.plates.map(({ id, name }) => `${id} ${name}`),
    ];
    expect(wanted.length).toBeGreaterThan(15);
    expect(times(wanted, headings(await reading))).toEqual(once(wanted));
  });

  it("lists every part once", async () => {
    const pages = titled(await reading, "Parts and their codes");
    const wanted = [
      ...demo.parts.map(({ id }) => id),
      ...demo.plates.flatMap(({ parts }) => parts.map(({ id }) => id)),
    ];
    expect(times(wanted, firstCells(pages))).toEqual(once(wanted));
  });

  it("says of every rib once where it stands, and draws every shaped one once with its heights", async () => {
    const pages = await reading;
    const stands = [
      ["Jig", "Rib heights", demo.jig.ribs],
      ["Cradle", "Cradle rib heights", demo.jig.cradle?.ribs ?? []],
    ] as const;
    for (const [title, heights, ribs] of stands) {
      const ids = ribs.map(({ id }) => id);
      const standing = titled(pages, title).flatMap(({ texts }) => {
        const stops = texts.filter(({ text }) => /^[xy]$/.test(text)).map(({ y }) => y);
        return texts.filter(
          ({ text, y }) => ids.includes(text) && stops.some((row) => Math.abs(row - y) < 0.1),
        );
      });
      expect(
        times(
          ids,
          standing.map(({ text }) => text),
        ),
        title,
      ).toEqual(once(ids));
      const shaped = ribs.filter(({ straightTop }) => !straightTop).map(({ id }) => id);
      const drawn = headings(titled(pages, heights))
        .filter((words) => words.startsWith("Rib "))
        .flatMap((words) => words.match(/\b[A-Z]+\d+[RL]?\b/g) ?? []);
      expect(times(shaped, drawn), heights).toEqual(once(shaped));
    }
  });

  it("has every step of the glue-up once, in order", async () => {
    const wanted = demo.glueUp.map(({ step, title }) => `${step} ${title}`);
    expect(wanted.length).toBeGreaterThan(8);
    const found = headings(await reading).filter((words) => /^\d+ \S/.test(words));
    expect(found).toEqual(wanted);
  });
});
