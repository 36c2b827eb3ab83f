import { describe, expect, it } from "vitest";
import type { DrawingPage, DrawingSet } from "../../../core/book/index.ts";
import { changedPages, goldenPages, readGolden } from "./golden-pages.ts";
import { printedSets } from "./printed-demo.ts";

it("every page of the demo tray's book and templates is as it was looked at last", {
  timeout: 240_000,
}, () => {
  const lines = goldenPages(printedSets()).map(({ line }) => line);
  expect(changedPages(readGolden(), lines), "look at them: npm run golden-pages").toEqual([]);
});

describe("a page that is compared with what it was", () => {
  const text = (words: string, x = 10) =>
    ({
      kind: "text",
      at: { x, y: 20 },
      text: words,
      heightMm: 2.5,
      face: "sans",
      anchor: "start",
      turnRad: 0,
    }) as const;
  const page = (name: string, ...words: readonly string[]): DrawingPage => ({
    name,
    widthMm: 210,
    heightMm: 297,
    marks: words.map((one) => text(one)),
  });
  const linesOf = (...pages: readonly DrawingPage[]) => {
    const set: DrawingSet = { title: "", issuedOn: "2026-01-01", projectId: "p", pages };
    return goldenPages({ book: set }).map(({ line }) => line);
  };
  const before = linesOf(page("Jig", "a", "2 / 3"), page("Jig", "b"), page("Log", "c"));

  it("is named where a word or a place is another, by two hundredths of a mm", () => {
    expect(changedPages(before, before)).toEqual([]);
    const moved = { ...page("Jig", "b"), marks: [text("b", 10.02)] };
    expect(changedPages(before, linesOf(page("Jig", "a", "2 / 3"), moved, page("Log", "d")))).toEqual([
      "book, Jig, 2",
      "book, Log, 1",
    ]);
  });

  it("is the same with noise in its last digits, and when only the number of pages is another", () => {
    const noisy = { ...page("Jig", "b"), marks: [text("b", 10 + 1e-9)] };
    expect(changedPages(before, linesOf(page("Jig", "a", "2 / 4"), noisy, page("Log", "c")))).toEqual([]);
  });

  it("is named where it is new or gone", () => {
    expect(changedPages(before, linesOf(page("Jig", "a", "2 / 3"), page("Jig", "b"), page("Cover")))).toEqual(
      ["book, Cover, 1", "book, Log, 1"],
    );
  });
});
