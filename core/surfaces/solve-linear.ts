import { at } from "../foundation/index.ts";

/** The x with matrix · x = right, by elimination with exchange of rows; an unknown that nothing fixes stays near 0. */
export function solveLinear(
  matrix: readonly (readonly number[])[],
  right: readonly number[],
): readonly number[] {
  const rows = matrix.map((row, i) => [...row, at(right, i)]);
  const count = rows.length;
  for (let column = 0; column < count; column++) {
    let pivot = column;
    for (let row = column + 1; row < count; row++)
      if (Math.abs(at(at(rows, row), column)) > Math.abs(at(at(rows, pivot), column))) pivot = row;
    const [lead, other] = [at(rows, pivot), at(rows, column)];
    rows[pivot] = other;
    rows[column] = lead;
    const head = at(lead, column) || 1;
    for (let row = column + 1; row < count; row++) {
      const factor = at(at(rows, row), column) / head;
      rows[row] = at(rows, row).map((value, k) => value - factor * at(lead, k));
    }
  }
  const solution = new Array<number>(count).fill(0);
  for (let row = count - 1; row >= 0; row--) {
    const line = at(rows, row);
    const rest = solution.reduce((sum, value, k) => (k > row ? sum + value * at(line, k) : sum), 0);
    solution[row] = (at(line, count) - rest) / (at(line, row) || 1);
  }
  return solution;
}
