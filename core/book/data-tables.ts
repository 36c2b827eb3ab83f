import { levelOf, wordProblem } from "../foundation/index.ts";
import type { DataTable } from "./data-table.ts";
import type { Design } from "./design.ts";
import { jigDataTables } from "./jig-data-tables.ts";
import { type PaperWork, paperWork } from "./paper-work.ts";
import { partDataTables } from "./part-data-tables.ts";
import { shoppingTable } from "./shopping-data-table.ts";
import { skinDataTables } from "./skin-data-tables.ts";
import { calendarTable, glueUpTable, panelsTable, stockTable } from "./work-data-tables.ts";

/** Every list of the design as a table, in the order of the work. */
export function dataTables(design: Design, work: PaperWork = paperWork(design)): readonly DataTable[] {
  return [
    ...partDataTables(design),
    ...jigDataTables(design),
    glueUpTable(design),
    ...skinDataTables(design),
    calendarTable(design),
    panelsTable(design),
    stockTable(design),
    shoppingTable(design, work),
    problemsTable(design),
  ];
}

const problemsTable = (design: Design): DataTable => ({
  name: "problems",
  header: ["level", "kind", "name", "words"],
  rows: design.problems.map((problem) => [
    levelOf(problem),
    problem.kind,
    problem.name,
    wordProblem(problem),
  ]),
});
