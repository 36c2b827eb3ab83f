/** What keys do on the drawing board. */
export const boardKeys: readonly { readonly keys: readonly string[]; readonly explains: string }[] = [
  { keys: ["0 to 9"], explains: "Type where the next node goes" },
  { keys: ["Enter"], explains: "Finish the line that is drawn, or go to the numbers of what is chosen" },
  { keys: ["N", "P"], explains: "Choose the next or the previous node, or an edge for a transition" },
  { keys: ["Arrow keys"], explains: "Move the chosen node by 1 mm, with Shift by 10 mm" },
  { keys: ["I"], explains: "Put a node into the middle of the chosen edge" },
  { keys: ["C"], explains: "Make the chosen edge a curve, or straight again" },
  { keys: ["Delete"], explains: "Delete what is chosen" },
  { keys: ["Escape"], explains: "Leave off, and put back what was there" },
  { keys: ["F"], explains: "Show the whole tray" },
  { keys: ["+", "−"], explains: "Look closer, or from further away" },
];
