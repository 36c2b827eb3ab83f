import type { Project } from "./schema.ts";

/** How ribs and baseboard are made, as the document says. */
export type TypedMaking = NonNullable<Project["jig"]["making"]>;

/** The same with every default filled in. */
export type Making = Required<Omit<TypedMaking, "cradle" | "baseZMm">> &
  Pick<TypedMaking, "cradle" | "baseZMm">;

/** All are common practice. */
export const MAKING_DEFAULTS: Making = {
  slotClearanceMm: 0.2,
  foot: "straight",
  holeMm: 0,
  spliceBy: "plate",
  reliefMm: 12,
  filletMm: 8,
  baseThicknessMm: 18,
  baseLengthMm: 2440,
  baseWidthMm: 1220,
  boardHeights: [],
};

/** Padding between a skinned face and the ribs of its cradle, mm (common practice: felt or carpet). */
export const PADDING_MM = 4;

/** How the ribs of a project are made: what was chosen, and the default for all else. */
export const makingOf = ({ jig }: Pick<Project, "jig">): Making => ({ ...MAKING_DEFAULTS, ...jig.making });
