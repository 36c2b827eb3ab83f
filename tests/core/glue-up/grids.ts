import { glueBonds } from "../../../core/glue-up/glue-bonds.ts";
import { glueUnits } from "../../../core/glue-up/glue-units.ts";
import { groundOf } from "../../../core/glue-up/plan-order.ts";
import { gluingOf, type Item, type Project } from "../../../core/project/index.ts";
import { box, section, straightProfile } from "../jig/jig-trays.ts";
import { planOf } from "./glue-trays.ts";

const long = straightProfile("level", [
  [-100, 150],
  [9000, 150],
]);

/** Level sheets in rows and columns, a sheet each 400 by 200 mm, the last row not always full. */
export const grid = (columns: number, rows: number, count = columns * rows): readonly Item[] =>
  Array.from({ length: count }, (_, i) => {
    const [column, row] = [i % columns, Math.floor(i / columns)];
    return section(
      `s${i}`,
      i + 1,
      box(column * 400, column * 400 + 400, row * 200, row * 200 + 200),
      "level",
    );
  });

/** Every edge between two sheets of such a grid. */
function joinedIn(count: number, columns: number): Project["joints"]["joined"] {
  return Array.from({ length: count }, (_, i) => {
    const beside = i % columns < columns - 1 && i + 1 < count ? [["n2", i + 1, "n4"] as const] : [];
    const above = i + columns < count ? [["n3", i + columns, "n1"] as const] : [];
    return [...beside, ...above].map(([own, other, edgeId]) => ({
      first: { itemId: `s${i}`, edgeId: own },
      second: { itemId: `s${other}`, edgeId },
    }));
  }).flat();
}

/** What the order of a grid is looked for in, and its steps. */
export function groundOfGrid(columns: number, count: number, changes: Partial<Project> = {}) {
  const joints = { toleranceMm: 0.5, joined: joinedIn(count, columns), cuts: [] };
  return groundFor(grid(columns, Math.ceil(count / columns), count), { joints, ...changes });
}

/** What the order of a tray is looked for in, and its steps. */
export function groundFor(items: readonly Item[], changes: Partial<Project> = {}) {
  const { project, sources, steps } = planOf({ profiles: [long], items, symmetry: "none", ...changes });
  const gluing = gluingOf(project);
  const units = glueUnits({ ...sources, mostCarriedMm: gluing.mostCarriedMm });
  const bonds = glueBonds(units, sources.joints, sources.seams);
  return { ground: groundOf(units, bonds, project, gluing), steps };
}
