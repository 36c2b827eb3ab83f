import { describe, expect, it } from "vitest";
import { drawBook } from "../../../core/book/index.ts";
import { designTray } from "../../../core/design.ts";
import { at, toDegrees } from "../../../core/foundation/index.ts";
import type { Rib, RibSet } from "../../../core/jig/index.ts";
import { writePdf } from "../../../core/writers/index.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";
import { type ReadPage, readPages } from "../writers/read-pages.ts";

const demo = readExample("hill-climb-floor");
const fonts = readFonts();

/** Texts on one line of a page, from left to right, pages one after the other. */
type Row = readonly string[];

function rowsOf(pages: readonly ReadPage[]): readonly Row[] {
  return pages.flatMap(({ texts }) => {
    const lines = new Map<number, { readonly x: number; readonly text: string }[]>();
    for (const { x, y, text } of texts) {
      const key = [...lines.keys()].find((other) => Math.abs(other - y) < 0.3) ?? y;
      lines.set(key, [...(lines.get(key) ?? []), { x, text }]);
    }
    return [...lines.entries()]
      .toSorted(([a], [b]) => b - a)
      .map(([, row]) => row.toSorted((a, b) => a.x - b.x).map(({ text }) => text.trim()));
  });
}

/** A printed number: a true minus, one decimal and at most a degree sign. */
const NUMBER = /^−?\d+(\.\d+)?°?$/;
const numberOf = (text: string): number => {
  expect(text).toMatch(NUMBER);
  return Number(text.replace("−", "-").replace("°", ""));
};

/** One decimal is printed: a half of it, and rounding noise, is all that a figure may be off. */
const PRINTED = 0.05 + 1e-6;
const expectNear = (text: string, value: number, what: string) =>
  expect(Math.abs(numberOf(text) - value), `${what}: ${text} is ${value}`).toBeLessThanOrEqual(PRINTED);

/** Where a rib stands: place, distance from the board's edge, its ends, station face, body, top. */
const STANDS =
  /^\S+ +[xy] +(−?[\d.]+) +(?:front|left) +(−?[\d.]+) +(−?[\d.]+) +(−?[\d.]+) +(\w+) +(\w+) +(square|bevel)/;

interface Sheets {
  readonly rows: readonly Row[];
  readonly words: string;
}

/** The pages of one set as they are read from the file: its jig page and its pages of heights. */
function sheetsOf(pages: readonly ReadPage[], titles: readonly string[]): Sheets {
  const own = pages.filter(
    ({ texts }) =>
      texts.some(({ text }) => text.trim() === "jig") &&
      texts.some(({ text }) => titles.includes(text.trim())),
  );
  expect(own.length).toBeGreaterThan(1);
  const rows = rowsOf(own);
  return { rows, words: rows.flat().join(" ").replaceAll("\u2009", " ") };
}

/** The rows that follow a heading of one rib up to that of the next one: down the left column, then down the right. */
function heightRows({ rows }: Sheets, heading: string): readonly Row[] {
  const from = rows.findIndex(([first]) => first?.startsWith(heading));
  expect(from, heading).toBeGreaterThanOrEqual(0);
  const rest = rows.slice(from + 1);
  const to = rest.findIndex(([first = ""]) => /^(Rib C?[ALE]\d|Posts)/.test(first));
  const own = rest.slice(0, to < 0 ? rest.length : to);
  const cells = own.map(heightCells);
  return [0, 1].flatMap((column) =>
    cells.flatMap((columns) => columns.slice(column, column + 1)).filter(({ length }) => length === 5),
  );
}

/** A row of both columns as one for each: four figures, and what is carried, in one text as some readers divide it. */
function heightCells(row: Row): readonly Row[] {
  const columns: string[][] = [];
  for (const text of row) {
    const last = columns.at(-1);
    if (NUMBER.test(text) && (last === undefined || last.length > 4)) columns.push([text]);
    else if (last === undefined) return [];
    else if (last.length < 5) last.push(text);
    else last[4] += ` ${text}`;
  }
  return columns.filter((cells) => cells.slice(0, 4).every((text) => NUMBER.test(text)));
}

/** A rib in the order of the first of its shape. */
const shownRibs = ({ ribs }: RibSet): readonly Rib[] => ribs.filter(({ id, sameAs }) => id === sameAs);

function expectSheets(set: RibSet, sheets: Sheets): number {
  const { baseboard, ribs, posts } = set;
  let read = 0;
  for (const rib of ribs) {
    const [, place = "", board = "", from = "", to = "", face, toward, top] =
      sheets.rows
        .filter(([first]) => first === rib.id)
        .map((row) => STANDS.exec(row.join(" ").replaceAll("\u2009", " ")))
        .find((found) => found !== null) ?? [];
    const us = rib.outlineMm.map(({ u }) => u);
    const edge = rib.runs === "across" ? "x" : "y";
    expectNear(place, rib.atMm, `${rib.id} stands`);
    expectNear(
      board,
      rib.atMm - Math.min(...baseboard.corners.map((corner) => corner[edge])),
      `${rib.id} from the board's edge`,
    );
    expectNear(from, Math.min(...us), `${rib.id} from`);
    expectNear(to, Math.max(...us), `${rib.id} to`);
    expect(face).toBe(rib.stationFace);
    expect(toward).toBe(baseboard.lines.find(({ ribId }) => ribId === rib.id)?.toward);
    expect(top).toBe(rib.cut);
    read += 4;
  }
  for (const rib of shownRibs(set)) {
    const rows = heightRows(sheets, `Rib ${rib.id} (`);
    // Places that print the same are one row, which names all that is carried there.
    const told = new Set<Row>();
    let from = 0;
    for (const [i, height] of rib.heights.entries()) {
      const figures = [height.atMm, height.stationFaceMm, height.farFaceMm, toDegrees(height.bevelRad)];
      const place = rows.findIndex(
        (row) =>
          figures.every((figure, k) => Math.abs(numberOf(at(row, k)) - figure) <= PRINTED) &&
          at(row, 4).split(" ").includes(height.partId),
      );
      const row = rows[place];
      expect(row, `${rib.id} row ${i + 1}: ${figures.join(" ")} ${height.partId}`).toBeDefined();
      expect(place).toBeGreaterThanOrEqual(from);
      if (row) told.add(row);
      from = place;
      read += 4;
    }
    expect(told.size, `rows of ${rib.id}`).toBe(rows.length);
  }
  for (const post of posts) {
    const row = sheets.rows.find(([first, on]) => first === post.id && on === post.ribId);
    const [, , x = "", y = "", height = "", along = "", across = ""] = row ?? [];
    expectNear(x, post.at.x, post.id);
    expectNear(y, post.at.y, post.id);
    expectNear(height, post.heightMm, post.id);
    expectNear(along, toDegrees(post.slopeAlongRad), post.id);
    expectNear(across, toDegrees(post.slopeAcrossRad), post.id);
    read += 5;
  }
  const [least, most] = baseboard.corners;
  const size = /Baseboard ([\d.]+) × ([\d.]+) mm/.exec(sheets.words);
  expectNear(size?.[1] ?? "", most.x - least.x, "board length");
  expectNear(size?.[2] ?? "", most.y - least.y, "board width");
  expectNear(/each is ([\d.]+) mm/.exec(sheets.words)?.[1] ?? "", diagonalOf(set), "diagonal");
  expectNear(/string, ([\d.]+) mm from the edge/.exec(sheets.words)?.[1] ?? "", -least.y, "centre line");
  expectNear(/which is at z (−?[\d.]+)/.exec(sheets.words)?.[1] ?? "", baseboard.levelZMm, "level");
  return read + 5;
}

/** Corner to corner of the board, its marks 20 mm inside. */
function diagonalOf({ baseboard: { corners } }: RibSet): number {
  const [least, most] = corners;
  return Math.hypot(most.x - least.x - 40, most.y - least.y - 40);
}

/** A whole book with jig and cradle is written and read. */
const SLOW_MS = 240_000;

describe("the jig sheets of the demo, read back from the written file", { timeout: SLOW_MS }, () => {
  it("say every place, height, bevel, post and size of jig and cradle as the model has it", async () => {
    const design = designTray({
      ...demo,
      jig: {
        ...demo.jig,
        along: { kind: "typed", atMm: [250] },
        making: {
          cradle: { paddingMm: 4 },
          foot: "tabs",
          boardHeights: [0, 1000, 2000].flatMap((x) =>
            [-500, 0, 500].map((y) => ({ x, y, heightMm: x / 1000 - y / 500 })),
          ),
        },
      },
    });
    const pages = await readPages(writePdf(drawBook(design, fonts), fonts));
    const jig = sheetsOf(pages, ["Jig", "Rib heights"]);
    const read = expectSheets(design.jig, jig);
    expect(read).toBeGreaterThan(500);
    for (const { ribId, at: p, boardMm, packingMm } of design.jig.baseboard.shims) {
      const row = jig.rows.find(
        ([id, x = "", y = ""]) =>
          id === ribId &&
          NUMBER.test(x) &&
          NUMBER.test(y) &&
          Math.abs(numberOf(x) - p.x) < PRINTED &&
          Math.abs(numberOf(y) - p.y) < PRINTED,
      );
      expect(row, `packing of ${ribId}`).toBeDefined();
      expectNear(row?.[3] ?? "", boardMm, `${ribId} board`);
      expectNear(row?.[4] ?? "", packingMm, `${ribId} packing`);
    }
    for (const { ribId, corners } of design.jig.baseboard.slots) {
      const [least] = design.jig.baseboard.corners;
      const xs = corners.map(({ x }) => x - least.x);
      const ys = corners.map(({ y }) => y - least.y);
      const figures = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
      const row = jig.rows.find(
        ([id, ...cells]) =>
          id === ribId &&
          cells.length === 4 &&
          cells.every((cell, i) => NUMBER.test(cell) && Math.abs(numberOf(cell) - at(figures, i)) <= PRINTED),
      );
      expect(row, `slot of ${ribId} at ${figures.join(" ")}`).toBeDefined();
    }
    const { cradle } = design.jig;
    expect(cradle).toBeDefined();
    if (cradle) expectSheets(cradle, sheetsOf(pages, ["Cradle", "Cradle rib heights"]));
  });
});
