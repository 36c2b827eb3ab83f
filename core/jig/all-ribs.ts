import type { Jig, Rib, RibPiece } from "./types.ts";

/** The ribs of the jig, then those of its cradle. */
export const allRibs = ({ ribs, cradle }: Pick<Jig, "ribs" | "cradle">): readonly Rib[] => [
  ...ribs,
  ...(cradle?.ribs ?? []),
];

/** Everything that is sawn from board: ribs, the pieces of spliced ones, and the plates over their joints. */
export const boardPieces = (jig: Pick<Jig, "ribs" | "cradle">): readonly RibPiece[] =>
  allRibs(jig).flatMap(({ pieces, splices }) => [
    ...pieces,
    ...splices.flatMap(({ plate }) => (plate === undefined ? [] : [plate])),
  ]);
