/** What keys do on the tray in 3D. */
export const lookKeys: readonly { readonly keys: readonly string[]; readonly explains: string }[] = [
  { keys: ["Arrow keys"], explains: "Turn the tray, with Shift move it" },
  { keys: ["+", "−"], explains: "Look closer, or from further away" },
  { keys: ["0"], explains: "Show the whole tray" },
];
