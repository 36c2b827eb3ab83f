import { at } from "../foundation/index.ts";
import type { Box } from "./boxes.ts";
import type { Lettering } from "./lettering.ts";
import { circleMark, filledMark, lineMark, loopMark, paper, textMark } from "./marks.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** A place of a picture that a balloon names. */
export interface NamedPlace {
  readonly code: string;
  readonly at: PaperPoint;
}

const HEIGHT_MM = 7;
const ROOM_MM = 2;
const DOT_MM = 0.5;

/** The room that a row of balloons takes over or under a picture, mm. */
export const BALLOON_ROW_MM = HEIGHT_MM + 8;

/**
 * A balloon with its code for every place (ISO 6433: item references, each with a leader that ends in a dot on the part),
 * in a row over the picture and a row under it, as wide as `row`; leaders of a row do not cross.
 */
export function balloonMarks(
  places: readonly NamedPlace[],
  picture: Box,
  row: Pick<Box, "left" | "right">,
  lettering: Lettering,
): readonly Mark[] {
  const byHeight = [...places].sort((a, b) => b.at.y - a.at.y || a.at.x - b.at.x);
  const half = Math.ceil(byHeight.length / 2);
  const rows = [
    { places: byHeight.slice(0, half), y: picture.top + BALLOON_ROW_MM - HEIGHT_MM / 2, side: -1 },
    { places: byHeight.slice(half), y: picture.bottom - BALLOON_ROW_MM + HEIGHT_MM / 2, side: 1 },
  ];
  return rows.flatMap(({ places: own, y, side }) => {
    const sized = own.map((place) => ({ ...place, widthMm: balloonWidth(place.code, lettering) }));
    const inOrder = uncrossed(
      [...sized].sort((a, b) => a.at.x - b.at.x),
      row,
      y,
    );
    const xs = spread(inOrder, row);
    return inOrder.flatMap((place, i) => balloon(place, paper(at(xs, i), y), side));
  });
}

interface SizedPlace extends NamedPlace {
  readonly widthMm: number;
}

const balloonWidth = (code: string, lettering: Lettering): number =>
  Math.max(HEIGHT_MM, lettering.widthMm(code, "mono", 2.5) + 4);

/** Middles of the balloons in their order, each as near over its place as its neighbours leave it. */
function spread(places: readonly SizedPlace[], row: Pick<Box, "left" | "right">): readonly number[] {
  const xs = places.map((place) => place.at.x);
  const gap = (i: number) => (at(places, i - 1).widthMm + at(places, i).widthMm) / 2 + ROOM_MM;
  for (let turn = 0; turn < 60; turn++) {
    for (let i = 1; i < xs.length; i++) {
      const over = at(xs, i - 1) + gap(i) - at(xs, i);
      if (over <= 0) continue;
      xs[i - 1] = at(xs, i - 1) - over / 2;
      xs[i] = at(xs, i) + over / 2;
    }
  }
  return pushedIn(xs, places, row);
}

/** The same between the ends of the row, without overlap: from the left, then back from the right. */
function pushedIn(
  xs: readonly number[],
  places: readonly SizedPlace[],
  row: Pick<Box, "left" | "right">,
): readonly number[] {
  const halfOf = (i: number) => at(places, i).widthMm / 2;
  const moved = [...xs];
  moved.forEach((x, i) => {
    const least = i === 0 ? row.left + halfOf(i) : at(moved, i - 1) + halfOf(i - 1) + halfOf(i) + ROOM_MM;
    moved[i] = Math.max(x, least);
  });
  for (let i = moved.length - 1; i >= 0; i--) {
    const most =
      i === moved.length - 1 ? row.right - halfOf(i) : at(moved, i + 1) - halfOf(i + 1) - halfOf(i) - ROOM_MM;
    moved[i] = Math.min(at(moved, i), most);
  }
  return moved;
}

/** The places in an order in which no two leaders cross: two that do change places. */
function uncrossed(
  places: readonly SizedPlace[],
  row: Pick<Box, "left" | "right">,
  y: number,
): readonly SizedPlace[] {
  const order = [...places];
  for (let turn = 0; turn < order.length * order.length; turn++) {
    const xs = spread(order, row);
    const crossing = pairs(order.length).find(([i, j]) =>
      cross(paper(at(xs, i), y), at(order, i).at, paper(at(xs, j), y), at(order, j).at),
    );
    if (crossing === undefined) break;
    const [i, j] = crossing;
    [order[i], order[j]] = [at(order, j), at(order, i)];
  }
  return order;
}

const pairs = (count: number): readonly (readonly [number, number])[] =>
  Array.from({ length: count }, (_, i) =>
    Array.from({ length: count - i - 1 }, (_unused, k) => [i, i + k + 1] as const),
  ).flat();

/** Whether two lines cross between their ends. */
function cross(a: PaperPoint, b: PaperPoint, c: PaperPoint, d: PaperPoint): boolean {
  const side = (p: PaperPoint, q: PaperPoint, r: PaperPoint) =>
    Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** An oval with its code, and the leader from its lower or upper side to a dot. */
function balloon(place: SizedPlace, middle: PaperPoint, side: number): readonly Mark[] {
  const { code, at: foot, widthMm } = place;
  const radius = HEIGHT_MM / 2;
  const flat = widthMm / 2 - radius;
  const arc = (centreX: number, fromRad: number) =>
    Array.from({ length: 13 }, (_, k) => {
      const angle = fromRad + (k * Math.PI) / 12;
      return paper(centreX + radius * Math.cos(angle), middle.y + radius * Math.sin(angle));
    });
  const oval =
    flat < 0.01
      ? circleMark(middle, radius, "thin", "balloons")
      : loopMark(
          [...arc(middle.x + flat, -Math.PI / 2), ...arc(middle.x - flat, Math.PI / 2)],
          "thin",
          "balloons",
        );
  const dot = filledMark(
    Array.from({ length: 8 }, (_, k) =>
      paper(foot.x + DOT_MM * Math.cos((k * Math.PI) / 4), foot.y + DOT_MM * Math.sin((k * Math.PI) / 4)),
    ),
    "ink",
    "thin",
  );
  return [
    oval,
    textMark(paper(middle.x, middle.y - 1.25), code, { face: "mono", anchor: "middle", layer: "balloons" }),
    lineMark([paper(middle.x, middle.y + side * radius), foot], "station", "balloons"),
    dot,
  ];
}
