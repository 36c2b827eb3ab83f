import type { Lie } from "./types.ts";

/** Which ribs stand where an opening is, and what of it; nothing where all stand clear. */
export const wordOpenings = ({ inOpenings }: Pick<Lie, "inOpenings">): readonly string[] =>
  inOpenings.length === 0
    ? []
    : [
        `${inOpenings.length === 1 ? "Rib" : "Ribs"} ${inOpenings.join(", ")} ${inOpenings.length === 1 ? "stands" : "stand"} where an opening is, and ${inOpenings.length === 1 ? "carries" : "carry"} the foam beside it only: clear of it one rib more would be needed, or the opening is too long to stand clear of.`,
      ];
