import { at } from "../foundation/index.ts";
import { type Box, boxOf, heightOf, widthOf } from "./boxes.ts";
import type { SeenPoint } from "./eye.ts";
import { paper } from "./marks.ts";
import { type Pair, pairsOf, triplesOf } from "./mesh-lists.ts";
import type { PaperPoint } from "./types.ts";

/** A closed body as it is seen: its vertices in the picture, three of them a triangle, two of them a line to be drawn. */
export interface SeenBody {
  readonly spots: readonly SeenPoint[];
  readonly triangles: ArrayLike<number>;
  readonly outline: ArrayLike<number>;
}

/** What lies less than this before a line does not hide it: bodies that touch, and rounding, mm. */
const TOUCHING_MM = 0.6;
/** Ends of a visible stretch are found by halving so often. */
const HALVINGS = 8;

/**
 * The lines of bodies that are seen, as stretches of the picture: the drawn edges, and the silhouettes of bent faces, each
 * without what lies behind a face. A line is looked at every `stepMm`; shorter gaps are missed.
 */
export function visibleLines(
  bodies: readonly SeenBody[],
  stepMm: number,
): readonly (readonly PaperPoint[])[] {
  const isHidden = hiddenBehind(bodies.flatMap(facesToward));
  return bodies.flatMap((body) =>
    [...pairsOf(body.outline), ...silhouettesOf(body)].flatMap(([a, b]) =>
      visibleStretches(at(body.spots, a), at(body.spots, b), { isHidden, stepMm }),
    ),
  );
}

/** Whether a place of the picture lies behind a face. */
export const hiddenIn = (bodies: readonly SeenBody[]): ((p: SeenPoint) => boolean) =>
  hiddenBehind(bodies.flatMap(facesToward));

type Face = readonly [SeenPoint, SeenPoint, SeenPoint];

/** Twice the area in the picture: positive where the face looks toward the eye. */
const turnOf = ([a, b, c]: Face): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

const facesOf = ({ spots, triangles }: SeenBody): readonly Face[] =>
  triplesOf(triangles).map(([a, b, c]): Face => [at(spots, a), at(spots, b), at(spots, c)]);

/** Of closed bodies only these hide anything. */
const facesToward = (body: SeenBody): readonly Face[] => facesOf(body).filter((face) => turnOf(face) > 1e-9);

/** Sides between a face toward the eye and one away from it, where no edge is drawn. */
function silhouettesOf(body: SeenBody): readonly Pair[] {
  const key = (a: number, b: number) => Math.min(a, b) * body.spots.length + Math.max(a, b);
  const drawn = new Set(pairsOf(body.outline).map(([a, b]) => key(a, b)));
  const faces = facesOf(body);
  const toward = new Map<number, boolean>();
  const pairs: Pair[] = [];
  triplesOf(body.triangles).forEach(([a, b, c], i) => {
    const isToward = turnOf(at(faces, i)) > 0;
    for (const [from, to] of [
      [a, b],
      [b, c],
      [c, a],
    ] as const) {
      const side = key(from, to);
      if (drawn.has(side)) continue;
      const other = toward.get(side);
      if (other === undefined) toward.set(side, isToward);
      else if (other !== isToward) pairs.push([from, to]);
    }
  });
  return pairs;
}

/** Faces are looked up in a grid of so many cells each way. */
const CELLS = 64;

function hiddenBehind(faces: readonly Face[]): (p: SeenPoint) => boolean {
  const whole = boxOf(faces.flat().map(({ x, y }) => paper(x, y)));
  const [stepX, stepY] = [widthOf(whole) / CELLS || 1, heightOf(whole) / CELLS || 1];
  const cellOf = (x: number, y: number): Pair => [
    Math.min(CELLS - 1, Math.max(0, Math.floor((x - whole.left) / stepX))),
    Math.min(CELLS - 1, Math.max(0, Math.floor((y - whole.bottom) / stepY))),
  ];
  const cells = new Map<number, Face[]>();
  for (const face of faces) {
    const box: Box = boxOf(face.map(({ x, y }) => paper(x, y)));
    const [low, high] = [cellOf(box.left, box.bottom), cellOf(box.right, box.top)];
    for (let i = low[0]; i <= high[0]; i++) {
      for (let j = low[1]; j <= high[1]; j++) {
        const cell = cells.get(i * CELLS + j);
        if (cell === undefined) cells.set(i * CELLS + j, [face]);
        else cell.push(face);
      }
    }
  }
  return (p) => {
    const [i, j] = cellOf(p.x, p.y);
    return (cells.get(i * CELLS + j) ?? []).some((face) => isBefore(face, p));
  };
}

/** Whether a face lies over a place of the picture, nearer to the eye. */
function isBefore([a, b, c]: Face, p: SeenPoint): boolean {
  const whole = turnOf([a, b, c]);
  const [wa, wb] = [turnOf([p, b, c]) / whole, turnOf([a, p, c]) / whole];
  const wc = 1 - wa - wb;
  if (wa < 0 || wb < 0 || wc < 0) return false;
  return wa * a.nearer + wb * b.nearer + wc * c.nearer > p.nearer + TOUCHING_MM;
}

interface Looking {
  readonly isHidden: (p: SeenPoint) => boolean;
  readonly stepMm: number;
}

function visibleStretches(
  a: SeenPoint,
  b: SeenPoint,
  { isHidden, stepMm }: Looking,
): readonly PaperPoint[][] {
  const lengthMm = Math.hypot(b.x - a.x, b.y - a.y);
  if (lengthMm < 1e-6) return [];
  const count = Math.max(2, Math.ceil(lengthMm / stepMm));
  const spot = (t: number): SeenPoint => ({
    x: a.x + (b.x - a.x) * t,
    y: a.y + (b.y - a.y) * t,
    nearer: a.nearer + (b.nearer - a.nearer) * t,
  });
  const seenAt = (t: number) => !isHidden(spot(t));
  /** Where seeing begins or ends between two places of which the first alone is seen. */
  const border = (seen: number, hidden: number): number => {
    let [near, far] = [seen, hidden];
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (near + far) / 2;
      if (seenAt(middle)) near = middle;
      else far = middle;
    }
    return near;
  };
  const stretches: PaperPoint[][] = [];
  let start: number | undefined;
  const end = (t: number) => {
    if (start !== undefined && t > start) stretches.push([start, t].map(spot).map(({ x, y }) => paper(x, y)));
    start = undefined;
  };
  let before: { readonly t: number; readonly isSeen: boolean } | undefined;
  for (let i = 0; i < count; i++) {
    // Ends touch their neighbours: a line is looked at in the middle of its steps.
    const t = (i + 0.5) / count;
    const isSeen = seenAt(t);
    if (isSeen && start === undefined) start = before === undefined ? 0 : border(t, before.t);
    if (!isSeen && before?.isSeen === true) end(border(before.t, t));
    before = { t, isSeen };
  }
  if (before?.isSeen === true) end(1);
  return stretches;
}
