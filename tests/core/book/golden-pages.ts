import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import type { DrawingPage, DrawingSet, Mark } from "../../../core/book/index.ts";

/** The lines that were looked at last, one for each page. */
export const GOLDEN_FILE = "tests/core/book/demo-pages.txt";

/** A page with its line: where it stands, what is on it, and a digest of that. */
export interface GoldenPage {
  readonly key: string;
  readonly line: string;
  readonly page: DrawingPage;
}

/**
 * A line for each page of the sets, by name: pages of one name are counted, so that a page more changes no line of others.
 * What a page says of its own number and of the number of pages is left out.
 */
export function goldenPages(sets: Readonly<Record<string, DrawingSet>>): readonly GoldenPage[] {
  return Object.entries(sets).flatMap(([set, { pages }]) => {
    const counts = new Map<string, number>();
    return pages.map((page) => {
      const count = (counts.get(page.name) ?? 0) + 1;
      counts.set(page.name, count);
      const key = `${set}, ${page.name}, ${count}`;
      return { key, page, line: `${key}: ${wordsOf(page)}` };
    });
  });
}

/** The pages that are new, gone, or not as they were, by their keys; the same in the same order is nothing. */
export function changedPages(before: readonly string[], now: readonly string[]): readonly string[] {
  const keyOf = (line: string) => line.slice(0, line.lastIndexOf(": "));
  const [was, is] = [before, now].map((lines) => new Map(lines.map((line) => [keyOf(line), line])));
  const keys = [...new Set([...now, ...before].map(keyOf))];
  return keys.filter((key) => was?.get(key) !== is?.get(key));
}

/** The lines of the file as they were looked at last. */
export const readGolden = (): readonly string[] =>
  readFileSync(GOLDEN_FILE, "utf8")
    .split("\n")
    .filter((line) => line !== "");

function wordsOf({ widthMm, heightMm, marks }: DrawingPage): string {
  const texts = marks.filter(({ kind }) => kind === "text").length;
  const digest = createHash("sha256").update(marks.map(drawn).join("\n")).digest("hex").slice(0, 10);
  return `${widthMm.toFixed(1)} x ${heightMm.toFixed(1)} mm, ${marks.length - texts} lines, ${texts} texts, ${digest}`;
}

/** What is seen of a mark. */
function drawn(mark: Mark): string {
  switch (mark.kind) {
    case "line": {
      const points = mark.points.map(({ x, y }) => `${hundredth(x)},${hundredth(y)}`).join(" ");
      return `${mark.style} ${mark.fill ?? ""} ${mark.closed ? "closed" : "open"} ${points}`;
    }
    case "circle":
      return `${mark.style} ${hundredth(mark.centre.x)},${hundredth(mark.centre.y)} ${hundredth(mark.radiusMm)}`;
    case "text": {
      const turn = Math.round(mark.turnRad * 1000 + OFF_TIES);
      const words = mark.text.replace(/^\d+ \/ \d+$|^page \d+ of \d+$/, "");
      return `${mark.face} ${mark.heightMm} ${mark.anchor} ${turn} ${hundredth(mark.at.x)},${hundredth(mark.at.y)} ${words}`;
    }
  }
}

/** Places on paper are often whole halves of what they are rounded to: off those, the last bit of a sum decides nothing. */
const OFF_TIES = 0.137;
const hundredth = (mm: number): number => Math.round(mm * 100 + OFF_TIES);
