/** The line kinds of the drawing, after the drawing standards: widths and dashes in px. */
export const pens = {
  outline: 2,
  chosen: 2.5,
  derived: 1.25,
  thin: 1,
  handle: 1.5,
} as const;

export const dashes = {
  /** Centre line: long, short. */
  centre: [18, 4, 4, 4],
  /** What lies hidden under a sheet. */
  hidden: [8, 5],
  /** A fold, and what is only thought: thin chain. */
  chain: [12, 3, 2, 3],
  /** What is not there yet. */
  draft: [5, 4],
} as const;

/** Sizes of handles and letters on the canvas, px. */
export const sizes = {
  node: 9,
  quietNode: 5,
  label: 12,
  code: 15,
  caption: 12,
} as const;
