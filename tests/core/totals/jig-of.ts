import type { Jig, Rib } from "../../../core/jig/index.ts";
import { bareJig } from "../jig/bare-rib.ts";

/** A jig of these ribs on a small baseboard. */
export const jigOf = (ribs: readonly Rib[]): Jig =>
  bareJig(ribs, {
    levelZMm: 0,
    corners: [
      { x: 0, y: 0 },
      { x: 1, y: 1 },
    ],
  });
