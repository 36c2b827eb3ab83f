import type { Jig, Rib } from "../../../core/jig/index.ts";

/** A jig of these ribs on a small baseboard. */
export const jigOf = (ribs: readonly Rib[]): Jig => ({
  ribs,
  baseboard: {
    attitude: "upright",
    levelZMm: 0,
    corners: [
      { x: 0, y: 0 },
      { x: 1, y: 1 },
    ],
    lines: [],
  },
  assembly: [],
});
