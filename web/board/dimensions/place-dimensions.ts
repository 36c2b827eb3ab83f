import type { Vec2 } from "../../../core/foundation/index.ts";
import type { Box } from "../viewport.ts";
import { clipToBox } from "./clip-to-box.ts";

/** A dimension in px, before it has a place. */
export interface DimensionToPlace {
  readonly id: string;
  readonly kind: "straight" | "arc" | "radius" | "axis";
  readonly from: Vec2;
  readonly to: Vec2;
  readonly middle: Vec2 | undefined;
  /** Unit, on the screen. */
  readonly outward: Vec2;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** An arrow head: its tip, and the unit direction in which it points. */
export interface Arrow {
  readonly tip: Vec2;
  readonly points: Vec2;
}

/** A dimension as it is drawn: the box of its number, thin lines, and arrow heads. */
export interface PlacedDimension {
  readonly id: string;
  readonly box: Box;
  readonly lines: readonly (readonly [Vec2, Vec2])[];
  readonly arrows: readonly Arrow[];
}

/** Dimension lines stand so far off, first the nearest outside, then farther out, then inside. */
const NEAREST_PX = 24;
const NEXT_PX = [0, 22, 44];
/** A number keeps so far off what it measures, that this can be grabbed. */
const OFF_PX = 9;
/** Where along its line a number is tried. */
const SHARES = [0.5, 0.32, 0.68, 0.2, 0.8];
/** Numbers keep this clear of each other. */
const CLEAR_PX = 3;
/** Extension lines begin and end so far from what is measured and past the dimension line. */
const GAP_PX = 4;
const PAST_PX = 5;
/** Shorter than this nothing is measured: it is looked at closer. */
const LEAST_PX = 16;

/**
 * Gives every dimension of a view a place where its number covers no other and nothing reserved (`boxOfNode`), and stays on the view. What finds
 * none is left out: closer up it has room. The order is that of importance.
 */
export function placeDimensions(
  dimensions: readonly DimensionToPlace[],
  view: Box,
  reserved: readonly Box[],
): readonly PlacedDimension[] {
  const taken: Box[] = [...reserved];
  return dimensions.flatMap((dimension) => {
    const placed = candidatesFor(dimension, view).find(
      ({ box }) => isWithin(box, view) && !taken.some((other) => overlaps(box, other)),
    );
    if (!placed) return [];
    taken.push(placed.box);
    return [placed];
  });
}

/** What the handle of a node takes of the view. */
export const boxOfNode = ([x, y]: Vec2): Box => ({ leftPx: x - 7, topPx: y - 7, widthPx: 14, heightPx: 14 });

export const overlaps = (a: Box, b: Box): boolean =>
  a.leftPx < b.leftPx + b.widthPx + CLEAR_PX &&
  b.leftPx < a.leftPx + a.widthPx + CLEAR_PX &&
  a.topPx < b.topPx + b.heightPx + CLEAR_PX &&
  b.topPx < a.topPx + a.heightPx + CLEAR_PX;

const isWithin = (box: Box, view: Box): boolean =>
  box.leftPx >= view.leftPx &&
  box.topPx >= view.topPx &&
  box.leftPx + box.widthPx <= view.leftPx + view.widthPx &&
  box.topPx + box.heightPx <= view.topPx + view.heightPx;

function candidatesFor(dimension: DimensionToPlace, view: Box): readonly PlacedDimension[] {
  switch (dimension.kind) {
    case "straight":
      return offsetsFor(dimension).flatMap((offset) =>
        SHARES.flatMap((share) => straight(dimension, { offset, share }, view)),
      );
    case "arc":
      return offsetsFor(dimension).flatMap((offset) => beside(dimension, offset, false));
    case "radius":
      return [30, 52, 74, -30].flatMap((offset) => beside(dimension, offset, true));
    case "axis":
      return SHARES.flatMap((share) =>
        [0, 14, -14].flatMap((aside) => onAxis(dimension, { share, aside }, view)),
      );
  }
}

/** First outside, then inside; a wide number beside an upright edge stands farther off. */
function offsetsFor({ outward, widthPx, heightPx }: DimensionToPlace): readonly number[] {
  const ownPx = (Math.abs(outward[0]) * widthPx + Math.abs(outward[1]) * heightPx) / 2;
  const nearestPx = Math.max(NEAREST_PX, ownPx + OFF_PX);
  return [1, -1].flatMap((side) => NEXT_PX.map((next) => side * (nearestPx + next)));
}

/** Extension lines square to what is measured, a dimension line between them with arrows at both ends. */
function straight(
  dimension: DimensionToPlace,
  { offset, share }: { readonly offset: number; readonly share: number },
  view: Box,
): readonly PlacedDimension[] {
  const { from, to, outward } = dimension;
  const lengthPx = distance(from, to);
  if (lengthPx < LEAST_PX) return [];
  const [a, b] = [moved(from, outward, offset), moved(to, outward, offset)];
  // Of a long line only what the view shows is written on.
  const seen = clipToBox(a, b, view);
  if (!seen) return [];
  const along = unit(a, b);
  const sign = Math.sign(offset);
  return [
    {
      id: dimension.id,
      box: boxAbout(between(seen[0], seen[1], share), dimension),
      lines: [
        [moved(from, outward, GAP_PX * sign), moved(a, outward, PAST_PX * sign)],
        [moved(to, outward, GAP_PX * sign), moved(b, outward, PAST_PX * sign)],
        [a, b],
      ],
      arrows: arrowsBetween(a, b, along),
    },
  ];
}

/** Beside a curve or a corner, with a leader to it. */
function beside(dimension: DimensionToPlace, offset: number, hasArrow: boolean): readonly PlacedDimension[] {
  const { middle, outward, from, to, kind } = dimension;
  if (!middle || (kind === "arc" && distance(from, to) < LEAST_PX)) return [];
  const centre = moved(middle, outward, offset);
  const sign = Math.sign(offset);
  return [
    {
      id: dimension.id,
      box: boxAbout(centre, dimension),
      lines: [[middle, centre]],
      arrows: hasArrow ? [{ tip: middle, points: [-outward[0] * sign, -outward[1] * sign] }] : [],
    },
  ];
}

/** From the axis to a node, in the node's own level. */
function onAxis(
  dimension: DimensionToPlace,
  { share, aside }: { readonly share: number; readonly aside: number },
  view: Box,
): readonly PlacedDimension[] {
  const { from, to, outward } = dimension;
  const seen = clipToBox(from, to, view);
  if (!seen || distance(seen[0], seen[1]) < LEAST_PX) return [];
  const along = unit(from, to);
  return [
    {
      id: dimension.id,
      box: boxAbout(moved(between(seen[0], seen[1], share), outward, aside), dimension),
      lines: [[from, to]],
      arrows: arrowsBetween(from, to, along),
    },
  ];
}

const arrowsBetween = (from: Vec2, to: Vec2, along: Vec2): readonly Arrow[] => [
  { tip: from, points: [-along[0], -along[1]] },
  { tip: to, points: along },
];

const boxAbout = ([x, y]: Vec2, { widthPx, heightPx }: DimensionToPlace): Box => ({
  leftPx: x - widthPx / 2,
  topPx: y - heightPx / 2,
  widthPx,
  heightPx,
});

const moved = (at: Vec2, by: Vec2, px: number): Vec2 => [at[0] + by[0] * px, at[1] + by[1] * px];
const between = (a: Vec2, b: Vec2, share: number): Vec2 => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
];
const distance = (a: Vec2, b: Vec2): number => Math.hypot(b[0] - a[0], b[1] - a[1]);
function unit(a: Vec2, b: Vec2): Vec2 {
  const length = distance(a, b) || 1;
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
}
