import type { SpacePoint } from "../../core/foundation/index.ts";
import { rulingAt } from "../../core/rulings/index.ts";
import type { TransitionSheet } from "../../core/surfaces/index.ts";

/** The two edges of a transition in space, mm, both from its start to its end. */
export interface EdgesInSpace {
  readonly first: readonly SpacePoint[];
  readonly second: readonly SpacePoint[];
}

const SAMPLES = 48;
const known = new WeakMap<TransitionSheet, EdgesInSpace>();

/** The edges as the side view draws them, taken along the rulings; computed once for each sheet. */
export function edgesOfTransition(sheet: TransitionSheet): EdgesInSpace {
  const before = known.get(sheet);
  if (before) return before;
  const { surface } = sheet.chart;
  const even = Array.from({ length: SAMPLES + 1 }, (_, index) => (surface.lengthSMm * index) / SAMPLES);
  const places = [...new Set([...even, ...sheet.rulings.map(({ sMm }) => sMm)])].sort((a, b) => a - b);
  const rulings = places.map((sMm) => rulingAt(surface, sMm));
  const edges = { first: rulings.map(({ from }) => from), second: rulings.map(({ to }) => to) };
  known.set(sheet, edges);
  return edges;
}
