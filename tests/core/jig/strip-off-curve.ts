import { at } from "../../../core/foundation/index.ts";

/**
 * A straight strip that ribs bend to a drawn curve, by a beam of finite elements of the tests' own: it wants to be straight,
 * is held on every rib, and ends free. What it stands off the curve, at every element; `curvatureAt` is the curve's.
 */
export function stripOffCurve(
  ribs: readonly number[],
  fromMm: number,
  toMm: number,
  curvatureAt: (alongMm: number) => number,
): readonly (readonly [number, number])[] {
  const stepMm = 1;
  const count = Math.round((toMm - fromMm) / stepMm);
  const size = count + 1;
  // Unknown: w at every node. Energy: sum of (w'' + curvature)² over inner nodes, ribs by a great penalty.
  const rows = Array.from({ length: size }, () => new Float64Array(size + 1));
  const add = (i: number, k: number, value: number) => {
    const row = at(rows, i);
    row[k] = (row[k] ?? 0) + value;
  };
  const weights = [1, -2, 1].map((one) => one / stepMm ** 2);
  for (let i = 1; i < count; i++)
    for (const [a, wa] of weights.entries()) {
      for (const [b, wb] of weights.entries()) add(i - 1 + a, i - 1 + b, wa * wb);
      add(i - 1 + a, size, -wa * curvatureAt(fromMm + i * stepMm));
    }
  for (const rib of ribs) add(Math.round((rib - fromMm) / stepMm), Math.round((rib - fromMm) / stepMm), 1e6);
  for (let c = 0; c < size; c++) {
    let pivot = c;
    for (let r = c; r < Math.min(size, c + 4); r++)
      if (Math.abs(at(rows, r)[c] ?? 0) > Math.abs(at(rows, pivot)[c] ?? 0)) pivot = r;
    const swapped = at(rows, c);
    rows[c] = at(rows, pivot);
    rows[pivot] = swapped;
    for (let r = c + 1; r < Math.min(size, c + 6); r++) {
      const ratio = (at(rows, r)[c] ?? 0) / (at(rows, c)[c] ?? 1);
      if (ratio === 0) continue;
      for (const k of [...Array.from({ length: 9 }, (_, i) => c + i).filter((i) => i < size), size])
        add(r, k, -ratio * (at(rows, c)[k] ?? 0));
    }
  }
  const off = new Float64Array(size);
  for (let c = size - 1; c >= 0; c--) {
    let rest = at(rows, c)[size] ?? 0;
    for (let k = c + 1; k < Math.min(size, c + 9); k++) rest -= (at(rows, c)[k] ?? 0) * (off[k] ?? 0);
    off[c] = rest / (at(rows, c)[c] ?? 1);
  }
  return Array.from(off, (w, i) => [fromMm + i * stepMm, w] as const);
}
