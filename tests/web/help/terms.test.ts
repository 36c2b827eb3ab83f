import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type TermName, termNames, termOf } from "../../../web/help/terms.ts";

const MOST_LETTERS = 200;

/** Every term that a help mark on some screen asks for. */
function termsOnScreen(): readonly string[] {
  const files = readdirSync("web", { recursive: true, encoding: "utf8" });
  const sources = files
    .filter((name) => name.endsWith(".tsx"))
    .map((name) => readFileSync(`web/${name}`, "utf8"));
  return sources.flatMap((source) =>
    [...source.matchAll(/(?:<HelpMark\s+term|<SettingsGroup\s[^>]*help)="([^"]+)"/g)].map(
      ([, term = ""]) => term,
    ),
  );
}

describe("the words of the trade", () => {
  it.each(termNames)("%s is told in one short sentence with a picture of its own", (name: TermName) => {
    const { word, sentence, picture } = termOf(name);
    expect(word.trim()).not.toBe("");
    expect(sentence).toMatch(/^[A-Z].*\.$/);
    expect(sentence.length).toBeLessThanOrEqual(MOST_LETTERS);
    expect(picture.some(([pen]) => pen === "mark")).toBe(true);
    for (const [, path] of picture)
      for (const [x, y] of cornersOf(path)) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(120);
        expect(y).toBeLessThanOrEqual(64);
      }
  });

  it("have sentence and picture wherever a screen has a mark for them, and most stand on a screen", () => {
    const onScreen = termsOnScreen();
    for (const term of onScreen) expect(termNames).toContain(term);
    expect(new Set(onScreen).size).toBeGreaterThanOrEqual(20);
  });

  it("have no two pictures alike", () => {
    const drawn = termNames.map((name) => JSON.stringify(termOf(name).picture));
    expect(new Set(drawn).size).toBe(termNames.length);
  });
});

/** The points of the straight and quadratic strokes of a path, absolute; arcs are left out. */
function cornersOf(path: string): readonly (readonly [number, number])[] {
  const points = [...path.matchAll(/[MLQ]([\d. ]+)/g)].flatMap(([, numbers = ""]) => {
    const values = numbers.trim().split(/\s+/).map(Number);
    return values.flatMap((value, index) =>
      index % 2 === 0 ? [[value, values[index + 1] ?? 0] as const] : [],
    );
  });
  return points;
}
