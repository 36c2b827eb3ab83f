/** What a place can snap to, in the order of the list. */
export const SnapKinds = [
  "nodes",
  "middles",
  "crossings",
  "lines",
  "tangents",
  "squares",
  "centreLine",
  "stations",
  "aligned",
  "otherView",
  "grid",
] as const;
export type SnapKind = (typeof SnapKinds)[number];

/** Each kind on or off, all of them on or off, and how wide the grid is. */
export type SnapSettings = Readonly<Record<SnapKind, boolean>> & {
  readonly isOn: boolean;
  readonly gridMm: number;
};

/** Everything on, on a grid of 10 mm. */
export const ALL_SNAPS: SnapSettings = {
  nodes: true,
  middles: true,
  crossings: true,
  lines: true,
  tangents: true,
  squares: true,
  centreLine: true,
  stations: true,
  aligned: true,
  otherView: true,
  grid: true,
  isOn: true,
  gridMm: 10,
};

/** What each kind is called, and what it does, in words. */
export const SNAP_WORDS: Readonly<Record<SnapKind, { readonly word: string; readonly explains: string }>> = {
  nodes: { word: "node", explains: "onto a node of another line" },
  middles: { word: "middle", explains: "halfway along an edge, by its length" },
  crossings: { word: "crossing", explains: "where two lines cross or one ends on the other" },
  lines: { word: "on line", explains: "onto an edge" },
  tangents: { word: "tangent", explains: "where the segment just touches a curve, or goes straight on" },
  squares: { word: "square", explains: "where the segment meets an edge, or leaves one, at a right angle" },
  centreLine: { word: "centre line", explains: "onto y 0 in plan" },
  stations: { word: "station", explains: "onto the hairline or a numbered station of the ruler" },
  aligned: { word: "in line", explains: "the same x, y or height as a node of the line in hand" },
  otherView: {
    word: "other view",
    explains: "the x of a node in side view, or the height of what is chosen in plan",
  },
  grid: { word: "grid", explains: "onto whole steps" },
};
