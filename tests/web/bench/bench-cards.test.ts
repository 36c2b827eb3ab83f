import { describe, expect, it } from "vitest";
import { designTray } from "../../../core/design.ts";
import { benchCards, ROWS_ON_A_CARD } from "../../../web/bench/bench-cards.ts";
import { readExample } from "../../read-example.ts";

const design = designTray(readExample("practice-piece"));
const cards = benchCards(design);

describe("the cards of the bench", () => {
  it("show every row of every table once, in order, and no more than a card holds", () => {
    const shown = cards.flatMap((card) => (card.kind === "marks" ? [card] : []));
    for (const table of design.marking)
      expect(shown.filter((card) => card.table === table).flatMap(({ rows }) => rows)).toEqual(table.rows);
    const heights = cards.flatMap((card) => (card.kind === "rib" ? [card] : []));
    for (const rib of design.jig.ribs)
      expect(heights.filter((card) => card.rib === rib).flatMap((card) => card.heights)).toEqual(rib.heights);
    for (const { rows } of shown) expect(rows.length).toBeLessThanOrEqual(ROWS_ON_A_CARD);
    expect(shown.length).toBeGreaterThan(design.marking.length);
  });

  it("have the edges of each part before its marks, ribs next, gluing with all its steps, and every session of the skins last", () => {
    expect(cards.filter(({ kind }) => kind === "edges").length).toBe(design.parts.length);
    const chapters = cards.map(({ chapter }) => chapter);
    expect([...new Set(chapters)]).toEqual(["marks", "ribs", "glue", "skins"]);
    expect(chapters.toSorted((a, b) => ORDER.indexOf(a) - ORDER.indexOf(b))).toEqual(chapters);
    const steps = cards.flatMap((card) => (card.kind === "step" ? [card.step] : []));
    expect(steps).toEqual(design.glueUp);
    const sessions = cards.flatMap((card) => (card.kind === "session" ? [`skin ${card.session.id}`] : []));
    const planned = design.skins.tasks.filter(({ kind }) => kind === "session").map(({ id }) => id);
    expect(planned.length).toBeGreaterThan(1);
    expect(sessions).toEqual(planned);
  });
});

const ORDER = ["marks", "ribs", "glue", "skins"];
