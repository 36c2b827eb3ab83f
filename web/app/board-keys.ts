/** What keys do on the drawing board. */
export const boardKeys: readonly { readonly keys: readonly string[]; readonly explains: string }[] = [
  { keys: ["Arrow keys"], explains: "Move what is chosen by one step of the grid" },
  { keys: ["Enter"], explains: "Finish the line that is being drawn" },
  { keys: ["Escape"], explains: "Leave off, and put back what was there" },
  { keys: ["Delete"], explains: "Delete what is chosen" },
];
