import type { PackingProblem } from "../packing/index.ts";

/** Outlines count as the same when every point agrees to a hundredth of a millimetre. */
const PLACES = 100;

/** A short name for everything that a layout is computed from: pieces, their angles, sheets, clearance and margin. */
export function fingerprintOf({ pieces, stock, clearanceMm, marginMm }: PackingProblem): string {
  const text = JSON.stringify(
    [pieces.map(({ lockedAt: _, ...piece }) => piece), stock, clearanceMm, marginMm],
    (_key, value: unknown) => (typeof value === "number" ? Math.round(value * PLACES) / PLACES : value),
  );
  return [0x811c9dc5, 0x01000193].map((seed) => hashOf(text, seed).toString(16).padStart(8, "0")).join("");
}

/** FNV-1a (G. Fowler, L. C. Noll, K.-P. Vo; draft-eastlake-fnv), 32 bits, begun with a seed. */
function hashOf(text: string, seed: number): number {
  let hash = seed;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}
