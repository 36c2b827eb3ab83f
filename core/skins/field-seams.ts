import { at } from "../foundation/index.ts";
import { cellAt } from "./cut-region.ts";
import type { FieldGraph } from "./group-fields.ts";
import type { FaceJoint } from "./joint-lines.ts";
import type { CutFace } from "./lay-face.ts";
import { areaMm2, overlapOf, stripeAlong } from "./polygons.ts";

/** Places along a joint at which the fields on both sides are looked up. */
const PLACES = 48;

/** The seams between fields: inside a face along the lines of its grid, between faces along their joints, mm. */
export function fieldSeams(faces: readonly CutFace[], joints: readonly FaceJoint[]): FieldGraph["seams"] {
  const starts = faces.map((_, i) => faces.slice(0, i).reduce((sum, { fields }) => sum + fields.length, 0));
  const fieldAt = (face: number, column: number, row: number): number | undefined => {
    const index = at(faces, face).fields.findIndex(({ cell }) => cell.column === column && cell.row === row);
    return index < 0 ? undefined : at(starts, face) + index;
  };
  const lengths = new Map<string, { readonly fields: readonly [number, number]; lengthMm: number }>();
  const add = (a: number | undefined, b: number | undefined, lengthMm: number) => {
    if (a === undefined || b === undefined || a === b || !(lengthMm > 0)) return;
    const fields = a < b ? ([a, b] as const) : ([b, a] as const);
    const known = lengths.get(fields.join());
    if (known) known.lengthMm += lengthMm;
    else lengths.set(fields.join(), { fields, lengthMm });
  };
  for (const [face, { grid, fields, region }] of faces.entries()) {
    for (const { cell } of fields) {
      const { column, row } = cell;
      const ahead = grid.uMm[column];
      const beside = grid.vMm[row];
      const own = { rows: edgesOf(grid.vMm, row), columns: edgesOf(grid.uMm, column) };
      if (ahead !== undefined)
        add(
          fieldAt(face, column, row),
          fieldAt(face, column + 1, row),
          lineLength(overlapOf(region.area, stripeAlong(Math.PI / 2, ...own.rows)), 0, ahead),
        );
      if (beside !== undefined)
        add(
          fieldAt(face, column, row),
          fieldAt(face, column, row + 1),
          lineLength(overlapOf(region.area, stripeAlong(0, ...own.columns)), Math.PI / 2, beside),
        );
    }
  }
  for (const { regions, lines, lengthMm } of joints) {
    const sides = regions.map((region) => faces.findIndex((face) => face.region === region));
    for (let k = 0; k < PLACES; k++) {
      const [a, b] = [0, 1].map((side) => {
        const face = faces[at(sides, side)];
        if (!face) return undefined;
        const { column, row } = cellAt(face.grid, pointAt(at(lines, side), (k + 0.5) / PLACES));
        return fieldAt(at(sides, side), column, row);
      });
      add(a, b, lengthMm / PLACES);
    }
  }
  return [...lengths.values()];
}

const edgesOf = (lines: readonly number[], i: number): readonly [number, number] => [
  lines[i - 1] ?? Number.NEGATIVE_INFINITY,
  lines[i] ?? Number.POSITIVE_INFINITY,
];

/** How much of a line lies in an area: what a stripe of 1 mm along it covers. */
const lineLength = (area: Parameters<typeof areaMm2>[0], angleRad: number, mm: number): number =>
  areaMm2(overlapOf(area, stripeAlong(angleRad, mm - 0.5, mm + 0.5)));

/** The point at a share of a line's length. */
function pointAt(line: FaceJoint["lines"][number], share: number) {
  const lengths = line.slice(1).map((to, i) => Math.hypot(to.u - at(line, i).u, to.v - at(line, i).v));
  let left = share * lengths.reduce((sum, mm) => sum + mm, 0);
  for (const [i, mm] of lengths.entries()) {
    if (left <= mm && mm > 0) {
      const [a, b] = [at(line, i), at(line, i + 1)];
      return { u: a.u + ((b.u - a.u) * left) / mm, v: a.v + ((b.v - a.v) * left) / mm };
    }
    left -= mm;
  }
  return at(line, -1);
}
