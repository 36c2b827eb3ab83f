import type { Design } from "../../core/design.ts";
import type { GlueStep } from "../../core/glue-up/index.ts";
import { allRibs, type Rib, type RibHeight } from "../../core/jig/index.ts";
import type { MarkingRow, MarkingTable } from "../../core/marking/index.ts";
import type { Part } from "../../core/patterns/index.ts";
import type { SkinPlan, SkinSession } from "../../core/skins/index.ts";

/** The chapters of the bench, in the order of the work there. */
export const Chapters = { marks: "Mark and cut", ribs: "Ribs", glue: "Glue", skins: "Skins" } as const;
export type Chapter = keyof typeof Chapters;

/** One of several cards that one table takes: 1 of 3. */
export interface Sheaf {
  readonly number: number;
  readonly of: number;
}

/** What is read at once. Tables that are longer than a card go on, on the next. */
export type BenchCard =
  | { readonly chapter: "marks"; readonly kind: "edges"; readonly part: Part }
  | {
      readonly chapter: "marks";
      readonly kind: "marks";
      readonly table: MarkingTable;
      readonly rows: readonly MarkingRow[];
      readonly sheaf: Sheaf;
    }
  | {
      readonly chapter: "ribs";
      readonly kind: "rib";
      readonly rib: Rib;
      readonly heights: readonly RibHeight[];
      readonly sheaf: Sheaf;
    }
  | { readonly chapter: "glue"; readonly kind: "step"; readonly step: GlueStep }
  | { readonly chapter: "skins"; readonly kind: "session"; readonly session: SkinSession };

/** So many rows of big print stand on a phone without scrolling. */
export const ROWS_ON_A_CARD = 6;

/**
 * Everything that is read at the bench, a card at a time: for each part the lengths and bevels of its edges and the
 * marks of its strips, then the heights of each rib that is cut for itself, then the steps of the glue-up
 * and the sessions of the skins.
 */
export function benchCards({ parts, strips, marking, jig, glueUp, skins }: Design): readonly BenchCard[] {
  const marks = parts.flatMap((part): readonly BenchCard[] => {
    const ids = strips.filter(({ partId }) => partId === part.id).map(({ id }) => id);
    const tables = marking.filter(({ stripId }) => ids.includes(stripId));
    return [{ chapter: "marks", kind: "edges", part }, ...tables.flatMap(cardsOfTable)];
  });
  const steps = glueUp.map((step): BenchCard => ({ chapter: "glue", kind: "step", step }));
  const sessions = sessionsInOrder(skins).map(
    (session): BenchCard => ({ chapter: "skins", kind: "session", session }),
  );
  return [...marks, ...allRibs(jig).flatMap(cardsOfRib), ...steps, ...sessions];
}

/** The sessions of all faces in the order in which they are laid. */
function sessionsInOrder({ faces, tasks }: Pick<SkinPlan, "faces" | "tasks">): readonly SkinSession[] {
  const placeOf = ({ id }: SkinSession) => tasks.findIndex((task) => task.id === `skin ${id}`);
  return faces.flatMap(({ sessions }) => [...sessions]).toSorted((a, b) => placeOf(a) - placeOf(b));
}

const cardsOfTable = (table: MarkingTable): readonly BenchCard[] =>
  sheaves(table.rows).map(({ rows, sheaf }) => ({ chapter: "marks", kind: "marks", table, rows, sheaf }));

const cardsOfRib = (rib: Rib): readonly BenchCard[] =>
  sheaves(rib.heights).map(({ rows, sheaf }) => ({
    chapter: "ribs",
    kind: "rib",
    rib,
    heights: rows,
    sheaf,
  }));

/** A long list in pieces of at most a card each, as even as they come; one piece even of nothing. */
function sheaves<Row>(
  rows: readonly Row[],
): readonly { readonly rows: readonly Row[]; readonly sheaf: Sheaf }[] {
  const of = Math.max(1, Math.ceil(rows.length / ROWS_ON_A_CARD));
  const share = Math.ceil(rows.length / of);
  return Array.from({ length: of }, (_, index) => ({
    rows: rows.slice(index * share, (index + 1) * share),
    sheaf: { number: index + 1, of },
  }));
}
