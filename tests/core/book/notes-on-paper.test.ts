import { expect, it } from "vitest";
import { drawBook } from "../../../core/book/index.ts";
import { designTray } from "../../../core/design.ts";
import type { Note, Project } from "../../../core/project/index.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";

const piece = readExample("practice-piece");
const fonts = readFonts();

const note = (id: string, view: Note["view"], x: number, up: number, text: string): Note => ({
  id,
  view,
  text,
  widthMm: 60,
  pin: { kind: "place", at: { x, up } },
  leader: { x: 20, up: 20 },
});

const bookWith = (notes: Project["notes"]) => drawBook(designTray({ ...piece, notes }), fonts).pages;
const wordsOf = (page: ReturnType<typeof bookWith>[number] | undefined) =>
  (page?.marks ?? []).flatMap((mark) => (mark.kind === "text" ? [mark.text] : []));

it("prints the number of each note at its pin and its words on a page of their own", () => {
  const pages = bookWith([
    note("a", "plan", 200, 100, "Here the exhaust comes close"),
    note("b", "side", 400, 60, "Skid block\nheld by four screws"),
  ]);
  const arrangement = pages.find(({ name }) => name === "General arrangement");
  const rings = (arrangement?.marks ?? []).filter((mark) => mark.kind === "circle" && mark.layer === "notes");
  expect(rings).toHaveLength(4);
  expect(wordsOf(arrangement)).toEqual(expect.arrayContaining(["1", "2"]));
  const words = wordsOf(pages.find(({ name }) => name === "Notes"));
  expect(words).toContain("1: Plan, x 200.0, y 100.0");
  expect(words).toContain("Here the exhaust comes close");
  expect(words).toEqual(
    expect.arrayContaining(["2: Side view, x 400.0, z 60.0", "Skid block", "held by four screws"]),
  );
});

it("sets the ring at one end of a leader and the pin at the other, to scale", () => {
  const [first, second] = [
    bookWith([note("a", "plan", 200, 100, "x")]),
    bookWith([note("a", "plan", 300, 100, "x")]),
  ];
  const pinOf = (pages: typeof first) =>
    (pages.find(({ name }) => name === "General arrangement")?.marks ?? []).flatMap((mark) =>
      mark.kind === "line" && mark.layer === "notes" ? mark.points.slice(0, 1) : [],
    )[0];
  const scale = Number(
    /1:(\d+)/.exec(JSON.stringify(wordsOf(first.find(({ name }) => name === "General arrangement"))))?.[1],
  );
  expect((pinOf(second)?.x ?? 0) - (pinOf(first)?.x ?? 0)).toBeCloseTo(100 / scale, 6);
});

it("prints no page of notes where nothing is noted, and never two rings on each other", () => {
  expect(bookWith([]).map(({ name }) => name)).not.toContain("Notes");
  const crowd = Array.from({ length: 8 }, (_, i) => note(`n${i}`, "plan", 200 + i, 100, "x"));
  const rings = (bookWith(crowd).find(({ name }) => name === "General arrangement")?.marks ?? []).flatMap(
    (mark) => (mark.kind === "circle" && mark.layer === "notes" && mark.radiusMm > 1 ? [mark.centre] : []),
  );
  const apart = rings.flatMap((a, i) => rings.slice(i + 1).map((b) => Math.hypot(a.x - b.x, a.y - b.y)));
  expect(Math.min(...apart)).toBeGreaterThan(4.8);
});
