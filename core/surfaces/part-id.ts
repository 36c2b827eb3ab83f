import type { Hand } from "./types.ts";

/** The code of a part: the sheet's id and the letter of its hand (`S2R`, `S2.1L`; no letter when whole). */
export const partIdOf = (sheetId: string, hand: Hand): string =>
  hand === "whole" ? sheetId : `${sheetId}${hand === "right" ? "R" : "L"}`;
