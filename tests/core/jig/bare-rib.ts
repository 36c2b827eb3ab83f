import type { Baseboard, Jig, Rib } from "../../../core/jig/index.ts";

type Bare =
  | "stand"
  | "attitude"
  | "isOutboard"
  | "holesMm"
  | "laps"
  | "notches"
  | "reliefs"
  | "standsOn"
  | "tabs"
  | "pieces"
  | "splices";

/** A rib of an upright jig without laps, notches, holes or splices, sawn in one piece. */
export const bareRib = (rib: Omit<Rib, Bare> & Partial<Rib>): Rib => ({
  stand: "jig",
  attitude: "upright",
  isOutboard: false,
  holesMm: [],
  laps: [],
  notches: [],
  reliefs: [],
  standsOn: [],
  tabs: [],
  pieces: [{ id: rib.id, outlineMm: rib.outlineMm, holesMm: [] }],
  splices: [],
  ...rib,
});

/** A jig of these ribs, as they stand on a bare board. */
export function bareJig(
  ribs: readonly Rib[],
  board: Pick<Baseboard, "corners" | "levelZMm"> & Partial<Baseboard>,
): Jig {
  const [least, most] = board.corners;
  return {
    ribs,
    baseboard: {
      attitude: "upright",
      lines: [],
      thicknessMm: 18,
      sheets: [{ id: "B1", corners: board.corners }],
      square: {
        marks: [least, { x: least.x, y: most.y }, most, { x: most.x, y: least.y }],
        diagonalMm: Math.hypot(most.x - least.x, most.y - least.y),
      },
      slots: [],
      shims: [],
      ...board,
    },
    assembly: ribs.map(({ id }) => ({ ribId: id, over: [], lockedBy: [] })),
    posts: [],
    fenceStands: [],
    release: { direction: "straight up from the board", steepestRad: 0, locks: [] },
  };
}
